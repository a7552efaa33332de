using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Layout;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>How cards are put in columns: the highest column, the height up to which cards of a place stand on one side, and whether those of a bundle's last place are stacked at its end.</summary>
internal readonly record struct CardColumnRule(double HighestMm, double OneSideMm, bool AtEnds = false)
{
    /// <summary>In the order in which they are tried: the first are the truest to the vehicle.</summary>
    public static ReadOnlySpan<CardColumnRule> All => new CardColumnRule[] { new(170, 85), new(170, 40), new(110, 55), new(85, 40), new(170, 85, AtEnds: true), new(110, 55, AtEnds: true) };
}

/// <summary>Sizes of letters and columns of one wall chart, mm, and the way small things are drawn on it.</summary>
internal sealed class WallChartStyle
{
    public const double TextMm = 2.5;
    public const double FlagCapMm = 7;

    /// <summary>A triangle before a word, with the gaps on both sides.</summary>
    public const double TriangleMm = 4.6;
    private const double ElsewhereMm = 4;

    // the disc of a branch, and what it is wider than its number
    private const double LeastDiscMm = 6.4;
    private const double DiscRimMm = 1.4;
    private const int MostNameLines = 4;

    /// <summary>Widest head of a card made for its name alone, in cap heights of the name.</summary>
    private const double WidestHeadMm = 15.5;
    private readonly WallChartSubject subject;
    private readonly Dictionary<string, string> letters;
    private readonly Dictionary<ChartCardSubject, CardColumns> columns;
    private readonly Dictionary<ChartCardSubject, ImmutableArray<string>> nameLines;

    public WallChartStyle(WallChartSubject subject, double nameMm, bool blackInk)
    {
        this.subject = subject;
        NameMm = nameMm;
        BlackInk = blackInk;
        letters = subject.Whole.OptionLetters;
        columns = subject.Cards.ToDictionary(c => c, ColumnsOf);
        IdMm = columns.Values.Max(c => c.IdMm);
        CodeMm = columns.Values.Max(c => c.CodeMm);
        nameLines = subject.Cards.ToDictionary(c => c, LinesOf);
        var number = subject.BranchNumbers.Values.Select(n => Width(n, weight: FaceWeight.Bold)).DefaultIfEmpty(0).Max();
        Metrics = new() { DiscMm = Math.Max(LeastDiscMm, number + DiscRimMm), BandOver = subject.Whole.BandOver };
    }

    public double NameMm { get; }
    public bool BlackInk { get; }

    /// <summary>Distances that do not depend on how cards are put in columns.</summary>
    public ChartMetrics Metrics { get; }

    /// <summary>Those of cards in columns by the rule given.</summary>
    public ChartMetrics MetricsBy(CardColumnRule rule) => Metrics with { ColumnMm = rule.HighestMm, OneSideMm = rule.OneSideMm, StacksAtEnds = rule.AtEnds };

    /// <summary>Widest wire id and widest colour code of all cards.</summary>
    public double IdMm { get; }
    public double CodeMm { get; }

    /// <summary>Columns of the card, and its width.</summary>
    public CardColumns Columns(ChartCardSubject card) => columns[card];

    // the head is as narrow as the fewest lines of the name allow; a word is broken only when it alone is wider than any head should be
    private CardColumns ColumnsOf(ChartCardSubject card)
    {
        var widest = WidestHeadMm * NameMm;
        var head = Enumerable.Range(1, MostNameLines)
            .Select(lines => HeadRoomMm(card, TextFit.NarrowestMm(card.Name, lines, NameMm, FaceWeight.Bold)))
            .Append(widest)
            .First(mm => mm <= widest);
        var elsewhere = card.Elsewhere is null ? 0 : Width(card.Elsewhere) + 4;
        return CardColumns.Of(card.Rows.Values.Concat(card.Stubs.Select(s => new ChartRow(s.Wire, s.Pin))), Math.Max(Math.Max(8 * NameMm, elsewhere), head), MarkMm);
    }

    /// <summary>Letter of every option condition in use, in the order they are first met.</summary>
    public IEnumerable<KeyValuePair<string, string>> Options => letters.OrderBy(l => l.Value, StringComparer.Ordinal);

    public string? LetterOf(BuildCondition condition) => condition.IsAlways ? null : letters.GetValueOrDefault(condition.Words);

    /// <summary>The word beside a wire that has changed since the harness was built; null: it has not.</summary>
    public string? MarkOf(Wire wire) => subject.Whole.Changes?.Of(wire.Id)?.Word.ToUpperInvariant();

    /// <summary>Room of that word with its triangle, mm.</summary>
    public double MarkMm(Wire wire) => MarkOf(wire) is { } word ? TriangleMm + Width(word, TextMm, FaceWeight.Bold) : 0;

    public static double Width(string text, double cap = TextMm, FaceWeight weight = FaceWeight.Medium) => TextMeasure.PlanWidth(text, cap, weight);

    public static string Number(double? mm) => mm is { } v ? v.ToString("0", System.Globalization.CultureInfo.InvariantCulture) : "?";

    /// <summary>The length of an edge as it is printed: '640', '390 E', '?' when unknown.</summary>
    public static string Caption(ChartEdge edge) =>
        edge.Segments.IsEmpty ? "" : edge.LengthMm is { } mm ? Number(mm) + (edge.IsEstimated ? " E" : "") : "? mm";

    /// <summary>The same with how many lanes the band there stands for.</summary>
    public static string Caption(ChartEdge edge, int bandLanes) => bandLanes == 0 ? Caption(edge)
        : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{bandLanes} {(bandLanes == 1 ? "wire" : "wires")}, {Caption(edge)}");

    /// <summary>Room of an edge's length, mm; with bands, of the count beside it too.</summary>
    public double CaptionMm(ChartEdge edge)
    {
        if (edge.Segments.IsEmpty)
        {
            return 0;
        }

        var isCounted = subject.Whole.BandOver > 0;
        return Width(Caption(edge, isCounted ? Math.Max(2, edge.Segments.Max(s => s.Wires.Length)) : 0));
    }

    /// <summary>Lines of a card's name beside its marks.</summary>
    public ImmutableArray<string> NameLines(ChartCardSubject card) => nameLines[card];

    private ImmutableArray<string> LinesOf(ChartCardSubject card)
    {
        var room = Columns(card).CardMm - 4 - MarksMm(card);
        var lines = TextFit.Wrap(card.Name, room, NameMm, FaceWeight.Bold);
        return lines.Length <= MostNameLines ? lines : [.. lines.Take(MostNameLines - 1), TextFit.Ellipsis(string.Join(' ', lines.Skip(MostNameLines - 1)), room, NameMm, FaceWeight.Bold)];
    }

    /// <summary>Height of the letters of a card's name: a name that fills its card is set by a hair smaller, so that it stays in the card in a viewer's own bold face too.</summary>
    public double NameCapMm(ChartCardSubject card)
    {
        var widest = NameLines(card).Max(l => Width(l, NameMm, FaceWeight.Bold)) * PlanWidths.OwnBoldOverPlanned;
        return NameMm * Math.Min(1, (Columns(card).CardMm - MarksMm(card) - 2.5) / widest);
    }

    private double MarksMm(ChartCardSubject card) => (card.SideMark is null ? 0 : NameMm + 3.4) + (LetterOf(card.OnlyWith) is null ? 0 : NameMm + 3.6);

    private double HeadRoomMm(ChartCardSubject card, double lettersMm) => 4.1 + MarksMm(card) + lettersMm;

    public double HeadMm(ChartCardSubject card) => NamesMm(card) + (card.Elsewhere is null ? 0 : ElsewhereMm);

    /// <summary>Height of the name's lines, below which stands what other charts show of the card.</summary>
    public double NamesMm(ChartCardSubject card) => Math.Ceiling(((NameMm * 1.36 * NameLines(card).Length) + 2.4) * 10) / 10;

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

    public static string CutText(Wire wire) => Number(wire.CutLengthMm) + (wire.Estimated ? " E" : "");
}
