using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using HarnessDraw.Diagnostics;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Tracing;

/// <summary>
/// A wire as it is found in a vehicle: by colour, size and a place it is near, in any order: 'BN/WH 1 mm2 near headlamp left', 'a brown wire with white tracer'.
/// </summary>
internal static partial class SoughtWires
{
    // a worn label or another maker's table may say a tenth more or less
    private const double SizeShare = 0.1;
    private static readonly ImmutableHashSet<string> Fillers = ImmutableHashSet.Create(StringComparer.OrdinalIgnoreCase, "a", "an", "the", "wire", "with", "tracer", "stripe", "and", "in", "of");

    /// <summary>Wires that fit the words, or null when no colour is among them.</summary>
    public static ImmutableArray<Wire>? Find(Plan plan, string words)
    {
        var near = NearPart().Match(words);
        var rest = near.Success ? words[..near.Index] : words;
        var size = SizePart().Match(rest);
        rest = size.Success ? rest.Remove(size.Index, size.Length) : rest;
        var codes = rest.Split([' ', ',', '/', '-'], StringSplitOptions.RemoveEmptyEntries).Where(w => !Fillers.Contains(w)).Select(Code).ToArray();
        if (codes.Length is 0 or > 2 || codes.Contains(null))
        {
            return null;
        }

        var colour = string.Join('/', codes);
        return
        [
            .. plan.Wires.Where(w => (w.Colour == colour || (codes.Length == 1 && w.Colour.StartsWith(colour + "/", StringComparison.Ordinal)))
                && (!size.Success || HasSize(w, size)) && (!near.Success || IsNear(plan, w, near.Groups[1].Value.Trim()))),
        ];
    }

    private static string? Code(string word) =>
        ColourCodes.Find(word.ToUpperInvariant())?.Code ?? ColourCodes.All.FirstOrDefault(c => string.Equals(c.Word, word, StringComparison.OrdinalIgnoreCase))?.Code;

    private static bool HasSize(Wire wire, Match size)
    {
        var figure = double.Parse(size.Groups[1].Value.Replace(',', '.'), CultureInfo.InvariantCulture);
        return size.Groups[2].Value.StartsWith('m') || size.Groups[2].Value.StartsWith('M')
            ? Math.Abs(wire.AreaMm2 - figure) <= SizeShare * figure
            : wire.Awg is { } awg && LeadingNumber().Match(awg).Value == size.Groups[1].Value;
    }

    /// <summary>One of its ends, the place of one, or a place that its bundle passes has all the words in its name.</summary>
    private static bool IsNear(Plan plan, Wire wire, string words)
    {
        var wanted = words.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries).Where(w => !Fillers.Contains(w)).ToArray();
        var names = new[] { wire.From.At, wire.To.At }.SelectMany(at => plan.Harness.Things.Where(t => t.Id == at).SelectMany(t => new[] { t.Id, t.Label, t.Place }))
            .Concat(plan.Tree.Segments.Where(s => wire.Segments.Contains(s.Id)).SelectMany(s => new[] { s.From, s.To }));
        return names.Any(n => wanted.All(w => n.Contains(w, StringComparison.OrdinalIgnoreCase)));
    }

    /// <summary>The wires that fit, a line each, for a message.</summary>
    public static Diagnostic Several(string words, ImmutableArray<Wire> wires)
    {
        const int Most = 12;
        var told = wires.Take(Most).Select(w => $"{w.Id} ({w.Colour}, {(w.Awg is null ? w.SizeLabel + " mm2" : w.SizeLabel)}, {w.Circuit}, {PointWords.Of(w.From)} to {PointWords.Of(w.To)})");
        return new(DiagnosticCodes.Ambiguous, Severity.Error, $"'{words}' fits {wires.Length} wires", null)
        {
            Hint = $"name one of them, or say what it is near ('near headlamp left') or its size: {string.Join("; ", told)}{(wires.Length > Most ? $"; and {wires.Length - Most} more" : "")}",
        };
    }

    [GeneratedRegex(@"\b(?:near|at|by|beside)\s+(.+)$", RegexOptions.IgnoreCase)]
    private static partial Regex NearPart();

    [GeneratedRegex(@"(\d+(?:[.,]\d+)?)\s*(mm2|mm²|mm\^2|mm|AWG|gauge|ga)\b?", RegexOptions.IgnoreCase)]
    private static partial Regex SizePart();

    [GeneratedRegex(@"\d+")]
    private static partial Regex LeadingNumber();
}
