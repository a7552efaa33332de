using System.Text.RegularExpressions;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Tracing;
using HarnessDraw.Writing.Pdf;

namespace HarnessDraw.Tests.Writing;

/// <summary>Poppler reads our PDF: every wire is found by its id on every sheet that should carry it, and every face is embedded as a subset.</summary>
public partial class PdfToolTests
{
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Pdftotext_finds_every_wire_on_every_sheet_that_should_carry_it(string name)
    {
        var tool = OutsideTool.Find("pdftotext");
        var plan = ExamplePlans.Of(name);
        foreach (var (kind, wires) in Carried(plan).Where(c => c.Wires.Count > 0))
        {
            var sheets = SheetKinds.Compose(kind, plan, [], new()).Sheets;
            var found = Word().Matches(Read(tool, sheets)).Select(m => m.Value).ToHashSet(StringComparer.Ordinal);
            Assert.True(wires.All(found.Contains), $"{kind}: {string.Join(", ", wires.Where(w => !found.Contains(w)).Take(5))}");
        }
    }

    [Fact]
    public void Pdffonts_shows_every_face_of_every_kind_embedded_as_a_subset()
    {
        var tool = OutsideTool.Find("pdffonts");
        var plan = ExamplePlans.Of("brackmere-six");
        foreach (var kind in SheetKinds.All)
        {
            var lines = Read(tool, SheetKinds.Compose(kind, plan, [], new()).Sheets).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2).ToList();
            Assert.NotEmpty(lines);
            Assert.All(lines, l => Assert.Matches(@"\byes yes (yes|no)\b", l));
        }
    }

    // ISO 32000-1, 14.11.2: what is shown and what is left after trimming are the medium: each box is said, not left to be guessed
    [Fact]
    public void Pdfinfo_shows_every_box_of_a_page_as_the_whole_paper()
    {
        var lines = Read(OutsideTool.Find("pdfinfo"), [new("s", "S", PaperSizes.Find("A3")!, [new TextItem("x", new(30, 30), 5)])], "-box").Split('\n');
        foreach (var box in new[] { "MediaBox", "CropBox", "BleedBox", "TrimBox", "ArtBox" })
        {
            var edges = lines.Single(l => l.StartsWith(box + ":", StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries)[1..].Select(e => double.Parse(e, System.Globalization.CultureInfo.InvariantCulture) / 72 * 25.4).ToList();
            Assert.Equal(420, edges[2] - edges[0], 0.01);
            Assert.Equal(297, edges[3] - edges[1], 0.01);
        }
    }

    private static IEnumerable<(string Kind, IReadOnlyList<string> Wires)> Carried(Plan plan)
    {
        var all = plan.Wires.Select(w => w.Id).ToList();
        foreach (var kind in new[] { SheetKinds.CutList, SheetKinds.Labels, SheetKinds.BenchTest, SheetKinds.LayOrder, SheetKinds.FoundWires })
        {
            yield return (kind, all);
        }

        yield return (SheetKinds.Connectors, [.. plan.Cavities.Select(c => c.Wire).OfType<string>().Distinct()]);
        yield return (SheetKinds.SpliceTable, [.. plan.Splices.SelectMany(s => s.Wires).Distinct()]);
        var tracer = new CircuitTracer(plan);
        var traced = plan.Harness.Circuits.Where(c => !c.IsReturn && plan.Wires.Any(w => w.Circuit == c.Id)).SelectMany(c => tracer.Of(c.Id).Value!.Ways).SelectMany(w => w.Hops).Select(h => h.Wire).OfType<string>().Distinct().ToList();
        yield return (SheetKinds.Trace, traced);
        yield return (SheetKinds.Projector, traced);
    }

    private static string Read(string tool, IEnumerable<Sheet> sheets, params string[] options)
    {
        var folder = OutsideTool.FolderWithFaces();
        try
        {
            var file = Path.Combine(folder, "set.pdf");
            File.WriteAllBytes(file, PdfWriter.Write(sheets, new("Set")));
            var start = new System.Diagnostics.ProcessStartInfo(tool, [.. options, file, .. tool.EndsWith("pdftotext", StringComparison.Ordinal) ? new[] { "-" } : []]) { RedirectStandardOutput = true };
            using var process = System.Diagnostics.Process.Start(start)!;
            var text = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.Equal(0, process.ExitCode);
            return text;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [GeneratedRegex(@"[A-Za-z0-9]+", RegexOptions.CultureInvariant)]
    private static partial Regex Word();
}
