using HarnessDraw.Reading;
using HarnessDraw.Tests.Conventions;

namespace HarnessDraw.Tests.Reading;

public class KeyReferenceTests
{
    private const string Start = "<!-- keys: made from the reader's own tables, do not edit -->\n";
    private const string End = "<!-- end of keys -->\n";

    /// <summary>Set HARNESSDRAW_ACCEPT=1 to write the tables into the pages.</summary>
    [Theory]
    [InlineData("examples/README.md")]
    [InlineData("layouts/README.md")]
    public void The_key_tables_in_the_documentation_are_those_of_the_reader(string page)
    {
        var file = Repository.PathOf(page.Split('/'));
        var text = File.ReadAllText(file);
        var from = text.IndexOf(Start, StringComparison.Ordinal) + Start.Length;
        var to = text.IndexOf(End, StringComparison.Ordinal);
        var wanted = "\n" + KeyReference.Markdown(page.StartsWith("examples", StringComparison.Ordinal) ? DescriptionShapes.Description : LayoutShapes.Layout) + "\n";
        if (Environment.GetEnvironmentVariable("HARNESSDRAW_ACCEPT") == "1")
        {
            File.WriteAllText(file, text[..from] + wanted + text[to..]);
            return;
        }

        Assert.Equal(wanted, text[from..to]);
    }
}
