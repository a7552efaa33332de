using HarnessDraw.Cli;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Tests.Cli;

public class DiagnosticTextTests
{
    [Fact]
    public void A_message_shows_place_code_line_caret_and_hint()
    {
        var text = Said(new Diagnostic("unknown-key", Severity.Error, "circuit horn has no key 'colur'", new("van.yaml", 2, 3, 5)) { Hint = "did you mean 'colour'?" }, "  colur: RD");
        Assert.Equal("van.yaml:2:3: error unknown-key: circuit horn has no key 'colur'\n      colur: RD\n      ^^^^^\n    hint: did you mean 'colour'?\n", text);
    }

    [Fact]
    public void Control_and_direction_characters_of_the_input_do_not_reach_the_terminal()
    {
        var text = Said(new Diagnostic("c", Severity.Warning, "\u001b[2J\u202Etxt\r", new("f\u0007", 1, 1)), "\u001b]0;title\u0007\u2066");
        Assert.DoesNotContain('\u001b', text);
        Assert.DoesNotContain('\u0007', text);
        Assert.DoesNotContain('\u202E', text);
        Assert.DoesNotContain('\u2066', text);
        Assert.DoesNotContain('\r', text);
    }

    [Fact]
    public void A_very_long_line_is_cut_round_the_place()
    {
        var line = new string('a', 100_000) + "HERE" + new string('b', 100_000);
        var text = Said(new Diagnostic("c", Severity.Error, "m", new("f", 1, 100_001, 4)), line);
        Assert.True(text.Length < 600);
        Assert.Contains("HERE", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(9)]
    public void A_place_beyond_the_line_shows_no_line(int column) =>
        Assert.Equal("f:1:" + column + ": advice c: m\n", Said(new Diagnostic("c", Severity.Advice, "m", new("f", 1, column)), "short"));

    private static string Said(Diagnostic diagnostic, string line)
    {
        using var messages = new StringWriter();
        DiagnosticText.Say(new Terminal(Stream.Null, messages, TextReader.Null), [diagnostic], (_, _) => line);
        return messages.ToString();
    }
}
