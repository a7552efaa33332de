using HarnessDraw.Diagnostics;
using HarnessDraw.Reading;

namespace HarnessDraw.Tests.Reading;

public sealed class ExampleFilesTests
{
    public static TheoryData<string> Examples => [.. NamesIn("examples").Where(n => n != "my-parts.yaml")];

    public static TheoryData<string> Layouts => [.. NamesIn("layouts")];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_example_fits_the_keys_of_a_description(string name) => AssertFits(System.IO.Path.Combine(Folder("examples"), name), DescriptionShapes.Description);

    [Theory]
    [MemberData(nameof(Layouts))]
    public void Every_layout_fits_its_keys(string name) => AssertFits(System.IO.Path.Combine(Folder("layouts"), name), LayoutShapes.Layout);

    [Theory]
    [MemberData(nameof(Layouts))]
    public void No_path_of_a_layout_is_shorter_than_the_straight_line_between_its_ends(string name)
    {
        var root = (InputMap)YamlNodeReader.Read(name, File.ReadAllText(System.IO.Path.Combine(Folder("layouts"), name)), new DiagnosticBag())!;
        new ShapeChecker(new DiagnosticBag()).Check(root, LayoutShapes.Layout, "the layout");
        var places = root.Map("places")!.Entries.ToDictionary(e => e.Key.Value, e => ((InputMap)e.Value).TextNodes("at").Select(t => t.Number!.Value).ToArray());
        foreach (var path in root.List("paths").OfType<InputMap>())
        {
            var (a, b) = (places[path.Text("from")!], places[path.Text("to")!]);
            var straightMm = Math.Sqrt(a.Zip(b, (p, q) => (p - q) * (p - q)).Sum());
            Assert.InRange((path.Number("measured") ?? path.Number("estimated"))!.Value, straightMm, (straightMm * 1.5) + 60);
        }
    }

    [Fact]
    public void The_example_of_a_users_parts_file_adds_connectors_and_replaces_a_plug()
    {
        var outcome = CatalogueReader.Read([("my-parts.yaml", File.ReadAllText(System.IO.Path.Combine(Folder("examples"), "my-parts.yaml")))]);
        Assert.Empty(outcome.Diagnostics);
        var builtIn = CatalogueReader.BuiltIn;
        Assert.Equal(builtIn.Connectors.Length + 3, outcome.Value!.Connectors.Length);
        Assert.Equal(builtIn.Plugs.Length, outcome.Value.Plugs.Length);
        Assert.Contains("own stock", outcome.Value.Plugs.Single(p => p.Id == "plug-2.8").Source, StringComparison.Ordinal);
    }

    [Fact]
    public void The_parts_file_shown_in_the_catalogues_read_me_is_read_without_a_message()
    {
        var text = File.ReadAllText(System.IO.Path.Combine(Folder("shared"), "README.md"));
        var start = text.IndexOf("```yaml", StringComparison.Ordinal) + "```yaml".Length;
        var outcome = CatalogueReader.Read([("my-parts.yaml", text[start..text.IndexOf("```", start, StringComparison.Ordinal)])]);
        Assert.Empty(outcome.Diagnostics);
        Assert.Contains(outcome.Value!.Connectors, c => c.Id == "pump-2");
    }

    private static void AssertFits(string file, Shape shape)
    {
        var bag = new DiagnosticBag();
        new ShapeChecker(bag).Check(YamlNodeReader.Read(System.IO.Path.GetFileName(file), File.ReadAllText(file), bag)!, shape, "the file");
        Assert.Empty(bag.ToSorted().Select(d => $"{d.At?.File}:{d.At?.Line}:{d.At?.Column}: {d.Message}"));
    }

    private static IEnumerable<string> NamesIn(string folder) =>
        new DirectoryInfo(Folder(folder)).GetFiles("*.yaml").Select(f => f.Name).Order(StringComparer.Ordinal);

    private static string Folder(string name)
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(System.IO.Path.Combine(at.FullName, "HarnessDraw.sln")))
        {
            at = at.Parent ?? throw new InvalidOperationException("the tests run outside the repository");
        }

        return System.IO.Path.Combine(at.FullName, name);
    }
}
