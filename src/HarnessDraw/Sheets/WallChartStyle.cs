using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Layout;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>Sizes of letters and columns of one wall chart, mm, and the way small things are drawn on it.</summary>
internal sealed class WallChartStyle
{
    public const double TextMm = 2.5;
    public const double FlagCapMm = 7;
    private readonly WallChartSubject subject;
    private readonly Dictionary<string, string> letters = new(StringComparer.Ordinal);

    public WallChartStyle(WallChartSubject subject, double nameMm, bool blackInk, double columnMm)
    {
        this.subject = subject;
        NameMm = nameMm;
        BlackInk = blackInk;
        Metrics = new() { ColumnMm = columnMm };
        foreach (var card in subject.Cards)
        {
            foreach (var row in card.Rows.Values)
            {
                Measure(row.Wire, row.Pin);
            }

            foreach (var stub in card.Stubs)
            {
                Measure(stub.Wire, stub.Pin);
            }
        }

        PinMm = Math.Min(PinMm, 22);
        CardMm = Math.Max(PinMm + 1.8 + IdMm + 1.8 + 5.6 + 1.6 + CodeMm + 2 + SizeMm + 2.4 + CutMm + 1.8 + OptionMm, 9 * nameMm);
        LetterOptions();
        // a word of a name is not broken unless it alone is wider than any card should be
        CardMm = Math.Max(CardMm, Math.Min(16 * nameMm, subject.Cards.Max(WordRoomMm)));
        CardMm = Math.Ceiling(CardMm * 2) / 2;
    }

    public double NameMm { get; }
    public bool BlackInk { get; }
    public ChartMetrics Metrics { get; }
    public double PinMm { get; private set; } = 6.6;
    public double IdMm { get; private set; } = 7;
    public double CodeMm { get; private set; } = 8;
    public double SizeMm { get; private set; } = 5;
    public double CutMm { get; private set; } = 7;
    public double OptionMm { get; private set; }
    public double CardMm { get; }

    /// <summary>Letter of every option condition in use, in the order they are first met.</summary>
    public IEnumerable<KeyValuePair<string, string>> Options => letters.OrderBy(l => l.Value, StringComparer.Ordinal);

    public string? LetterOf(BuildCondition condition) => condition.IsAlways ? null : letters.GetValueOrDefault(condition.ToString());

    public static double Width(string text, double cap = TextMm, FaceWeight weight = FaceWeight.Medium) => TextMeasure.PlanWidth(text, cap, weight);

    public static string Number(double? mm) => mm is { } v ? v.ToString("0", System.Globalization.CultureInfo.InvariantCulture) : "?";

    /// <summary>The length of an edge as it is printed: '640', '390 E', '?' when unknown.</summary>
    public static string Caption(ChartEdge edge) =>
        edge.Segments.IsEmpty ? "" : edge.LengthMm is { } mm ? Number(mm) + (edge.IsEstimated ? " E" : "") : "? mm";

    /// <summary>Lines of a card's name beside its marks.</summary>
    public ImmutableArray<string> NameLines(ChartCardSubject card)
    {
        var room = CardMm - 4 - MarksMm(card);
        var lines = TextFit.Wrap(card.Name, room, NameMm, FaceWeight.Bold);
        return lines.Length <= 4 ? lines : [.. lines.Take(3), TextFit.Ellipsis(string.Join(' ', lines.Skip(3)), room, NameMm, FaceWeight.Bold)];
    }

    private double MarksMm(ChartCardSubject card) => (card.SideMark is null ? 0 : NameMm + 3.4) + (LetterOf(card.OnlyWith) is null ? 0 : NameMm + 3.6);

    private double WordRoomMm(ChartCardSubject card) => 4.1 + MarksMm(card) + card.Name.Split(' ').Max(w => Width(w, NameMm, FaceWeight.Bold));

    public double HeadMm(int lines) => Math.Ceiling(((NameMm * 1.36 * lines) + 2.4) * 10) / 10;

    public double StubMm(ChartCardSubject card)
    {
        var widest = 0.0;
        foreach (var stub in card.Stubs)
        {
            widest = Math.Max(widest, 8.6 + Width(StubText(stub)));
        }

        return widest;
    }

    public static string StubText(ChartStub stub) => TextFit.Ellipsis(stub.To, 34, TextMm);

    private void Measure(Wire wire, string pin)
    {
        PinMm = Math.Max(PinMm, Width(pin, TextMm, FaceWeight.Bold) + 2.4);
        IdMm = Math.Max(IdMm, Width(wire.Id, TextMm, FaceWeight.Bold));
        CodeMm = Math.Max(CodeMm, Width(wire.Colour));
        SizeMm = Math.Max(SizeMm, Width(wire.SizeLabel));
        CutMm = Math.Max(CutMm, Width(CutText(wire)));
        if (!wire.Builds.IsAlways)
        {
            OptionMm = 8.4;
        }
    }

    public static string CutText(Wire wire) => Number(wire.CutLengthMm) + (wire.Estimated ? " E" : "");

    private void LetterOptions()
    {
        foreach (var condition in subject.Cards.Select(c => c.OnlyWith).Concat(subject.Plan.Wires.Select(w => w.Builds)))
        {
            var words = condition.ToString();
            if (!condition.IsAlways && !letters.ContainsKey(words))
            {
                letters[words] = letters.Count < 26 ? ((char)('A' + letters.Count)).ToString() : "Z" + (letters.Count - 25);
            }
        }
    }
}
