using System.Runtime.CompilerServices;
using HarnessDraw.Checking;
using HarnessDraw.Reading;

namespace HarnessDraw.Tests.Checking;

public class RuleTableTests
{
    /// <summary>Set HARNESSDRAW_ACCEPT=1 to write the page anew.</summary>
    [Fact]
    public void The_page_of_rules_is_current()
    {
        var page = System.IO.Path.Combine(Root(), "src", "HarnessDraw", "Checking", "README.md");
        if (Environment.GetEnvironmentVariable("HARNESSDRAW_ACCEPT") == "1")
        {
            File.WriteAllText(page, RuleCatalogue.Markdown());
        }

        Assert.Equal(RuleCatalogue.Markdown(), File.ReadAllText(page).ReplaceLineEndings("\n"));
    }

    [Fact]
    public void The_rule_file_shown_on_the_page_is_read_without_a_message()
    {
        var text = RuleCatalogue.Markdown().Split("```yaml\n")[1].Split("```")[0];
        var read = RuleFileReader.Read("shown.yaml", new MemoryFiles(new Dictionary<string, string> { ["shown.yaml"] = text }));
        Assert.Empty(RuleFileResolver.Resolve(read.Value!).Diagnostics);
    }

    private static string Root([CallerFilePath] string path = "")
    {
        // deterministic builds map the source path away: look upwards from where the tests run
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(System.IO.Path.Combine(at.FullName, "HarnessDraw.sln")))
            {
                return at.FullName;
            }
        }

        throw new InvalidOperationException($"no solution above {AppContext.BaseDirectory} ({path})");
    }
}
