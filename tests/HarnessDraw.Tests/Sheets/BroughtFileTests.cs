using System.Text;
using HarnessDraw.Checking;
using HarnessDraw.Diagnostics;
using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Reading;
using HarnessDraw.Writing;

namespace HarnessDraw.Tests.Sheets;

/// <summary>Files that a user brings: body lines and a logo as SVG, a face for scripts that the shipped faces lack.</summary>
public sealed class BroughtFileTests
{
    private const string Head = "harness: Test\nvehicle: Small van\nvehicle-layout: van.yaml\nsheet-title: { number: T-1, logo: logo.svg }\n";
    private const string Logo = """<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 10"><rect x="1" y="1" width="18" height="8" fill="#123456"/></svg>""";
    private const string Body = """<svg xmlns="http://www.w3.org/2000/svg" viewBox="-1500 -800 1600 1600"><path d="M0 -700 H-1300 V700 H0" fill="none" stroke="#000"/></svg>""";

    [Fact]
    public void A_logo_stands_in_the_title_block_of_every_sheet_and_keeps_its_colours()
    {
        var set = Draw(new SmallVehicle { Head = Head }, ("d/logo.svg", Logo));
        Assert.NotEmpty(set.Sheets);
        Assert.All(set.Sheets, s => Assert.Contains(Paths(s.Items), p => p.Fill == Rgb.Hex("123456")));
    }

    [Fact]
    public void Body_lines_drawn_elsewhere_lie_in_vehicle_coordinates()
    {
        var vehicle = new SmallVehicle();
        vehicle = vehicle with { Layout = vehicle.Layout + "outline: body.svg\n" };
        var line = Assert.Single(Planned(vehicle, ("d/body.svg", Body)).Value!.Plan.Harness.Layout.Outline);
        Assert.False(line.Closed);
        Assert.Equal((0, 1300, -700, 700), (line.Points.Min(p => p.Xmm), line.Points.Max(p => p.Xmm), line.Points.Min(p => p.Ymm), line.Points.Max(p => p.Ymm)));
        Assert.Equal(700, line.Points[0].Ymm); // the drawing's top is the vehicle's right
        Assert.Contains(Paths(Draw(vehicle, ("d/body.svg", Body)).Sheets.First(s => s.Name == SheetKinds.WallChart).Items), p => p is { Role: ItemRole.Backdrop, Stroke: not null });
    }

    [Theory]
    [InlineData(DiagnosticCodes.FileMissing, "logo: none.svg")]
    [InlineData(DiagnosticCodes.OutlineSvg, "logo: logo.txt")]
    [InlineData(DiagnosticCodes.FontFile, "font: logo.txt")]
    public void A_file_that_is_not_there_or_not_what_it_should_be_is_a_message(string code, string title)
    {
        var outcome = Planned(new SmallVehicle { Head = Head.Replace("logo: logo.svg", title, StringComparison.Ordinal) }, ("d/logo.txt", "no picture"));
        Assert.True(outcome.Failed);
        Assert.Equal(code, Assert.Single(outcome.Diagnostics).Code);
    }

    [Fact]
    public void A_brought_file_is_part_of_what_the_sheets_say_they_were_made_from()
    {
        var vehicle = new SmallVehicle { Head = Head };
        var (one, other) = (Planned(vehicle, ("d/logo.svg", Logo)), Planned(vehicle, ("d/logo.svg", Logo.Replace("123456", "654321", StringComparison.Ordinal))));
        Assert.NotEqual(one.Value!.Plan.Harness.SourceHash, other.Value!.Plan.Harness.SourceHash);
    }

    [Fact]
    public void Letters_that_no_face_has_are_named()
    {
        var vehicle = new SmallVehicle { Head = "harness: Test\nvehicle: 小型货车\nvehicle-layout: van.yaml\n" };
        var found = Assert.Single(Draw(vehicle).SheetFindings, f => f.Rule == "letters-missing");
        Assert.Contains("小 (U+5C0F)", found.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Draw(new SmallVehicle { Head = "harness: Жгут\nvehicle: Όχημα\nvehicle-layout: van.yaml\n" }).SheetFindings, f => f.Rule == "letters-missing");
    }

    private static DrawingSet Draw(SmallVehicle vehicle, params (string Path, string Text)[] files)
    {
        var outcome = Planned(vehicle, files);
        Assert.Empty(outcome.Diagnostics.Select(d => d.Message));
        return HarnessCompiler.LayOut(outcome.Value!, HarnessCompiler.Complete(new DrawOrder(), outcome.Value!));
    }

    private static Outcome<CheckedPlan> Planned(SmallVehicle vehicle, params (string Path, string Text)[] files) =>
        HarnessCompiler.Plan(SmallVehicle.File, vehicle.Files(files.ToDictionary(f => f.Path, f => Encoding.UTF8.GetBytes(f.Text), StringComparer.Ordinal)), RuleSettings.BuiltIn);

    private static IEnumerable<PathItem> Paths(IEnumerable<Item> items) =>
        items.SelectMany(i => i switch { PathItem path => [path], GroupItem group => Paths(group.Items), _ => (IEnumerable<PathItem>)[] });
}
