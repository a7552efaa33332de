using HarnessDraw.Cli;
using HarnessDraw.Diagnostics;
using HarnessDraw.Reading;

namespace HarnessDraw.Tests.Cli;

public class DiagnosticTextTests
{
    private static readonly Diagnostic Mistake = new("unknown-key", Severity.Error, "circuit horn has no key 'colur'", new("van.yaml", 2, 3, 5)) { Hint = "did you mean 'colour'?" };

    [Fact]
    public void A_message_shows_place_code_line_caret_and_hint() =>
        Assert.Equal("van.yaml:2:3: error unknown-key: circuit horn has no key 'colur'\n      colur: RD\n      ^^^^^\n    hint: did you mean 'colour'?\n", Said(colour: false));

    [Fact]
    public void Colour_falls_on_the_severity_and_its_code_only() =>
        Assert.StartsWith("van.yaml:2:3: \u001b[1;31merror unknown-key:\u001b[0m circuit horn has no key 'colur'\n", Said(colour: true), StringComparison.Ordinal);

    [Fact]
    public void Control_and_direction_characters_do_not_reach_the_terminal() =>
        Assert.Equal("\uFFFD[2J\uFFFDtxt\uFFFD", DiagnosticText.Plain("\u001b[2J\u202Etxt\r"));

    private static string Said(bool colour)
    {
        using var messages = new StringWriter();
        var files = new MemoryFiles(new Dictionary<string, string>(StringComparer.Ordinal) { ["van.yaml"] = "circuits:\n  colur: RD\n" });
        DiagnosticText.Say(new Terminal(Stream.Null, messages, TextReader.Null) { Colour = colour }, [Mistake], files);
        return messages.ToString();
    }
}
