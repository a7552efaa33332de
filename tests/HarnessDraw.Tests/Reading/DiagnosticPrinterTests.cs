using HarnessDraw.Diagnostics;

namespace HarnessDraw.Tests.Reading;

public class DiagnosticPrinterTests
{
    [Fact]
    public void A_message_shows_its_line_a_caret_and_a_hint()
    {
        var vehicle = new SmallVehicle { Circuits = "circuits:\n  dipped beam: { form: F7, enters-by: firewall, feeds: headlamp left.56b }\n" };
        var printed = DiagnosticPrinter.Print(vehicle.Read().Diagnostics, f => f == "d/van-harness.yaml" ? vehicle.Text : null);
        Assert.Equal("""
            d/van-harness.yaml:19:18: error unknown-key: dipped beam has no key 'form'
                  dipped beam: { form: F7, enters-by: firewall, feeds: headlamp left.56b }
                                 ^^^^
                hint: did you mean 'from'?

            """, printed, ignoreLineEndingDifferences: true);
    }

    [Fact]
    public void Lines_of_any_length_are_cut_around_the_place()
    {
        var line = new string('x', 5000) + "WRONG" + new string('y', 5000);
        var printed = DiagnosticPrinter.Print([new Diagnostic("choice", Severity.Error, "m", new SourceSpan("f", 1, 5001, 5))], _ => line).Split('\n');
        Assert.Equal("f:1:5001: error choice: m", printed[0]);
        Assert.Equal(printed[1].IndexOf("WRONG", StringComparison.Ordinal), printed[2].IndexOf('^'));
        Assert.True(printed[1].Length < 130);
    }

    [Fact]
    public void Control_characters_and_direction_marks_do_not_reach_the_terminal()
    {
        var printed = DiagnosticPrinter.Print([new Diagnostic("choice", Severity.Warning, "a\u001b[31m\u202eb", new SourceSpan("f", 1, 1))], _ => "\u001b]0;x\u0007\u2066y");
        Assert.DoesNotContain(printed, c => c != '\n' && (char.IsControl(c) || c is '\u202e' or '\u2066'));
    }

    [Fact]
    public void A_second_place_and_a_message_without_a_place_are_printed()
    {
        var printed = DiagnosticPrinter.Print([new Diagnostic("choice", Severity.Advice, "m", null) { Other = new SourceSpan("g", 3, 4) }], _ => null);
        Assert.Equal("advice choice: m\n    see:  g:3:4\n", printed);
    }

    [Fact]
    public void The_nearest_name_counts_a_swap_as_one()
    {
        Assert.Equal(1, NearestName.Distance("form", "from"));
        Assert.Equal(3, NearestName.Distance("kitten", "sitting"));
        Assert.Equal("horn", NearestName.Of("hron", ["horn", "hood", "thorn"]));
        Assert.Equal("Horn", NearestName.Of("horn", ["Horn", "born"]));
        Assert.Null(NearestName.Of("horn", ["alternator"]));
        Assert.Null(NearestName.Of(new string('x', 100_000), ["alternator"]));
    }
}
