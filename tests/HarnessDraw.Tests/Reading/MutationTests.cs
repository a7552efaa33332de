using CsCheck;
using HarnessDraw.Diagnostics;
using HarnessDraw.Reading;
using HarnessDraw.Tests.Conventions;

namespace HarnessDraw.Tests.Reading;

public class MutationTests
{
    private const int Rounds = 400;

    private static readonly string[] Pieces = ["{", "}", "[", "]", ":", ",", "- ", "\n", "  ", "'", "\"", "&a ", "*a", "unknown", "7E05", "~", "|", "#", "\t", "\u202e", "firewall", ".", "12 V", "? ", "!!int ", "---\n", "é", "\U0001F600"];

    [Fact]
    public void A_damaged_description_gives_messages_and_never_throws()
    {
        var text = File.ReadAllText(Repository.PathOf("examples", "dunmarrow-18.yaml"));
        var layout = File.ReadAllText(Repository.PathOf("layouts", "small-tractor.yaml"));
        Damage(text).Sample(damaged => Holds(damaged, layout), iter: Rounds);
        Damage(layout).Sample(damaged => Holds(text, damaged), iter: Rounds);
    }

    [Fact]
    public void Words_that_change_places_give_messages_and_never_throw()
    {
        var vehicle = new SmallVehicle();
        var words = vehicle.Text.Split(' ');
        Gen.Select(Gen.Int[0, words.Length - 1], Gen.Int[0, words.Length - 1]).Sample((a, b) =>
        {
            var changed = words.ToArray();
            (changed[a], changed[b]) = (changed[b], changed[a]);
            return Holds(string.Join(' ', changed), vehicle.Layout);
        }, iter: Rounds);
    }

    private static Gen<string> Damage(string text) =>
        Gen.Select(Gen.Int[0, text.Length - 1], Gen.Int[0, 6], Gen.Int[0, Pieces.Length - 1]).Array[1, 3].Select(cuts => cuts.Aggregate(text, (t, c) =>
        {
            var at = Math.Min(c.Item1, t.Length);
            return t[..at] + Pieces[c.Item3] + t[Math.Min(t.Length, at + c.Item2)..];
        }));

    private static bool Holds(string description, string layout)
    {
        var files = new Dictionary<string, string>(StringComparer.Ordinal) { ["d/x.yaml"] = description, ["layouts/small-tractor.yaml"] = layout, ["d/van.yaml"] = layout };
        var outcome = HarnessReader.Read("d/x.yaml", new MemoryFiles(files));
        var printed = DiagnosticPrinter.Print(outcome.Diagnostics, files.GetValueOrDefault);
        return (outcome.Value is not null || outcome.Diagnostics.Any(d => d.Severity == Severity.Error))
            && outcome.Diagnostics.All(d => DiagnosticCodes.Explain(d.Code) is not null && d.At is null or { Line: >= 1, Column: >= 1 })
            && (outcome.Diagnostics.IsEmpty || printed.Length > 0);
    }
}
