using System.Globalization;
using HarnessDraw.Drawing;
using HarnessDraw.Layout;
using HarnessDraw.Model;

namespace HarnessDraw.Sheets;

/// <summary>The subject of a wall chart with its sizes, as the geometry engine takes it, and what is lettered where.</summary>
internal sealed class WallChartProblem
{
    private const double PlateMm = 11.2;
    private const double HalfHeadMm = 9.6;

    /// <summary>As many cavities as a reader takes in from a list; where more are shown on other charts, the connector sheets say where.</summary>
    private const int MostTold = 80;

    /// <param name="subject">What is drawn.</param>
    /// <param name="style">Its sizes.</param>
    /// <param name="kept">The chart whose places are kept; null: there is none.</param>
    public WallChartProblem(WallChartSubject subject, WallChartStyle style, FrozenChartSheet? kept = null)
    {
        Subject = subject;
        Style = style;
        this.kept = kept is null ? null : new(kept, subject);
        NumberFlags();
        var table = subject.Pins.Count == 0 ? null : Table();
        var nets = new Dictionary<string, int>(StringComparer.Ordinal);
        Problem = new(
            [.. subject.NodePlaces.Select((_, i) => NodeOf(i))],
            [.. subject.Cards.ConvertAll(CardOf)],
            [.. subject.Splices.ConvertAll(s => new ChartSplice(s.Node, s.Along, Math.Max(WallChartStyle.Width(s.Splice.Id, weight: FaceWeight.Bold), WallChartStyle.Width(StationText(s.Splice.StationMm)))))],
            [.. subject.Lanes.ConvertAll(l => new ChartLane(l.From, l.To, NetOf(l.Wire.Circuit)) { Colour = subject.Likeness.NumberOf(l.Wire.Colour) })],
            table)
        {
            Likeness = subject.Likeness.ByNumber,
        };

        int NetOf(string circuit)
        {
            nets.TryAdd(circuit, nets.Count);
            return nets[circuit];
        }
    }

    private readonly KeptPlaces? kept;

    public WallChartSubject Subject { get; }
    public WallChartStyle Style { get; }
    public ChartProblem Problem { get; }
    public Dictionary<int, string> FlagNumbers { get; } = [];
    public double PinBoxMm { get; private set; }
    public double LabelMm { get; private set; }

    /// <summary>Half heads, and spare cavities, of the pin table: text, y of the middle below the top, and whether it is a row.</summary>
    public List<(string Half, double Y)> HalfHeads { get; } = [];
    public List<(string Cavity, double Y)> SpareRows { get; } = [];
    public List<(string Text, double Y)> SpareTexts { get; } = [];
    public List<(double Top, double Bottom)> HalfBoxes { get; } = [];

    public static string StationText(double? mm) => mm is { } v ? v.ToString("0", CultureInfo.InvariantCulture) : "?";

    public string FlagText(int node) => TextFit.Ellipsis(Subject.PlaceAt(node).Branch!.ToUpperInvariant(), 120, WallChartStyle.FlagCapMm, FaceWeight.Bold);

    public static string LaneLabel(Planning.Wire wire) => $"{wire.Id} {wire.Colour} {wire.SizeLabel}";

    public string PlateText => (Subject.Plan.Harness.Layout.Openings.FirstOrDefault(o => o.Place == Subject.Mate!.Place)?.Panel ?? Subject.Mate!.Label).ToUpperInvariant();

    private void NumberFlags()
    {
        for (var i = 0; i < Subject.NodePlaces.Count; i++)
        {
            if (Subject.BranchNumbers.TryGetValue(Subject.NodePlaces[i], out var number))
            {
                FlagNumbers[i] = number;
            }
        }
    }

    private ChartNode NodeOf(int i)
    {
        var place = Subject.PlaceAt(i);
        var isFlagged = FlagNumbers.TryGetValue(i, out var number);
        return new(Subject.NodeParents[i], -place.Xmm, -place.Ymm)
        {
            CaptionMm = Style.CaptionMm(Subject.NodeEdges[i]),
            LengthMm = Subject.NodeEdges[i].Segments.IsEmpty ? 0 : Subject.NodeEdges[i].LengthMm ?? 0,
            FlagWidthMm = isFlagged ? ChartPen.FlagWidth(number, FlagText(i), WallChartStyle.FlagCapMm) : 0,
            FlagHeightMm = isFlagged ? 10.6 : 0,
            Disc = isFlagged,
            Kept = kept?.BranchTo(i),
        };
    }

    private ChartCard CardOf(ChartCardSubject card) =>
        new(card.Node, Style.Columns(card).CardMm, Style.HeadMm(card), card.Stubs.Count) { StubMm = Style.StubMm(card), Kept = kept?.CardOf(card) };

    private ChartTable Table()
    {
        var row = Style.Metrics.RowMm;
        var halves = Halves();
        var rows = new double[Subject.Pins.Count];
        foreach (var pin in Subject.Pins)
        {
            PinBoxMm = Math.Max(PinBoxMm, WallChartStyle.Width(pin.Pin, weight: FaceWeight.Bold) + 11 + (pin.Wire.Builds.IsAlways ? 0 : 8));
            LabelMm = Math.Max(LabelMm, WallChartStyle.Width(LaneLabel(pin.Wire)) + 3);
        }

        LabelMm = Math.Max(LabelMm, 30);
        PinBoxMm = Math.Max(PinBoxMm, 15);
        var y = PlateMm;
        foreach (var (half, title, spares) in halves)
        {
            HalfHeads.Add((title, y + HalfHeadMm - 2.6));
            y += HalfHeadMm;
            var top = y;
            for (var i = 0; i < rows.Length; i++)
            {
                if (HalfOf(Subject.Pins[i].Pin) == half)
                {
                    rows[i] = y + (row / 2);
                    y += row;
                }
            }

            if (spares.Count <= 6)
            {
                foreach (var spare in spares)
                {
                    SpareRows.Add((spare, y + (row / 2)));
                    y += row;
                }
            }

            HalfBoxes.Add((top, y));
            foreach (var line in Beside(half, spares).SelectMany(t => TextFit.Wrap(t, LabelMm + PinBoxMm - 2, WallChartStyle.TextMm)))
            {
                SpareTexts.Add((line, y + 4));
                y += row;
            }
        }

        var width = Math.Max(PinBoxMm + LabelMm, ChartPen.FlagWidth(null, PlateText, WallChartStyle.FlagCapMm));
        LabelMm = width - PinBoxMm;
        return new([.. rows], width + 1, y + 1) { LabelMm = LabelMm };
    }

    // what is said under a half: many spares in one list, and what other charts show
    private IEnumerable<string> Beside(string half, List<string> spares)
    {
        if (spares.Count > 6)
        {
            yield return "spare, plugged: " + string.Join(' ', spares);
        }

        var elsewhere = Subject.PinsElsewhere.Where(p => HalfOf(p.Pin) == half).GroupBy(p => p.Chart).OrderBy(g => g.Key).ToList();
        if (elsewhere.Sum(g => g.Count()) > MostTold)
        {
            yield return $"{elsewhere.Sum(g => g.Count())} more on other charts: see the connector sheets";
            yield break;
        }

        foreach (var other in elsewhere)
        {
            yield return $"on chart {other.Key}: {string.Join(' ', other.Select(p => p.Pin))}";
        }
    }

    public string HalfOf(string pin) => Subject.Mate!.Pins.FirstOrDefault(p => p.Name == pin)?.Half
        ?? Part?.Cavities.FirstOrDefault(c => c.Name == pin)?.Half ?? "";

    public ConnectorPart? Part => Subject.Mate is null ? null : Subject.Plan.Harness.Catalogue.Connectors.FirstOrDefault(c => c.Id == Subject.Mate.ConnectorPart);

    private List<(string Half, string Title, List<string> Spares)> Halves()
    {
        var used = Subject.Whole.Pins.Select(p => p.Pin).ToHashSet(StringComparer.Ordinal);
        var known = Part?.Cavities.Select(c => c.Name) ?? Subject.Mate!.Pins.Select(p => p.Name);
        var spare = known.Where(c => !used.Contains(c)).ToList();
        var list = new List<(string, string, List<string>)>();
        foreach (var half in Subject.Whole.Pins.Select(p => HalfOf(p.Pin)).Concat(spare.Select(HalfOf)).Distinct(StringComparer.Ordinal))
        {
            var name = Subject.Mate!.Halves.FirstOrDefault(h => h.Letter == half)?.Name;
            var title = half.Length == 0 ? Subject.Mate.Label : $"{(name is null ? "" : name + " ")}half {half}";
            list.Add((half, title, [.. spare.Where(c => HalfOf(c) == half)]));
        }

        return list;
    }
}
