using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;
using HarnessDraw.Tracing;

namespace HarnessDraw.Sheets.TraceSheets;

/// <summary>A station and the hop that leads on from it; the last has none.</summary>
internal sealed record TraceRow(TraceStop Stop, string Where, TraceHop? Hop, ProbedCavity? Cavity)
{
    /// <summary>The hop's wire with its length in the units of the sheet; empty for anything else.</summary>
    public string Length { get; init; } = "";

    private const double WordsMm = 51;
    private const double HopMm = 112;
    private const int MostShared = 2;

    /// <summary>The station in words: a pin by its thing and name.</summary>
    public string StationName => Stop.Name == PointWords.OfNode(Stop.Node) ? EndText.OfNode(Stop.Node) : Stop.Name;

    private static TextStyle NameStyle => TextStyle.Bold.At(3.5);

    private ImmutableArray<string> Name => LineBreaker.Lines(StationName, WordsMm, NameStyle);

    private ImmutableArray<string> Place => LineBreaker.Lines(Where, WordsMm);

    private ImmutableArray<string> Words => LineBreaker.Lines(HopWords(), HopMm - LeadMm);

    private double LeadMm => Hop?.Wire is { } wire ? 7 + Pen.Width(wire, TextStyle.Bold) + 2 : 0;

    /// <summary>The rows of a way; a fuse's own contact stands for the bar it sits on, on which nothing is lost.</summary>
    public static ImmutableArray<TraceRow> Of(Plan plan, TraceWay way, UnitsShown units)
    {
        var rows = ImmutableArray.CreateBuilder<TraceRow>();
        var on = "";
        for (var i = 0; i < way.Stops.Length; i++)
        {
            var hop = i < way.Hops.Length ? way.Hops[i] : null;
            if (hop?.Kind == HopKind.Link && i + 1 < way.Hops.Length && way.Hops[i + 1].Kind == HopKind.Fuse && i > 0)
            {
                on = $"on {EndText.OfNode(way.Stops[i].Name)}, ";
                continue;
            }

            // nobody holds a meter to 'the metal': the load leads on to the ground point at once
            if (hop?.Kind == HopKind.Body && rows.Count > 0 && rows[^1].Hop is { } into && way.Stops[i] is { OffV: null, OnV: null, CrankV: null })
            {
                rows[^1] = rows[^1] with { Hop = into with { Words = $"{into.Words}, then {hop.Words}" } };
                continue;
            }

            rows.Add(new(way.Stops[i], on + WhereWords(way.Stops[i]), hop, ProbedCavity.Of(plan, way.Stops[i].Node)) { Length = hop?.Wire is { } id && plan.Wires.FirstOrDefault(w => w.Id == id) is { } wire ? LengthWords.Cut(plan, wire, units) ?? "length unknown" : "" });
            on = "";
        }

        return rows.ToImmutable();
    }

    /// <summary>Height of the station's words beyond a line of name and a line of place.</summary>
    public double FurtherMm => ((Name.Length - 1) * 5.3) + ((Place.Length - 1) * 4.3);

    public double LeastMm(double leastMm) => leastMm + FurtherMm + ((Words.Length - 1) * 4.3);

    public void PaintStop(Pen pen, TraceColumns columns, double y, bool testFirst)
    {
        var baseY = y + 1.6;
        foreach (var line in Name)
        {
            pen.Letters(line, columns.WordsX, baseY, NameStyle);
            baseY += 5.3;
        }

        foreach (var line in Where.Length == 0 ? [] : Place)
        {
            pen.Letters(line, columns.WordsX, baseY - 0.9, TextStyle.Plain);
            baseY += 4.3;
        }

        pen.Letters(Shown.Fixed(Stop.OffV, 1), columns.OffRight, y + 1.6, TextStyle.Plain.Right);
        pen.Letters(Shown.Fixed(Stop.OnV, 1), columns.OnRight, y + 1.6, TextStyle.Bold.Right.At(3.5));
        pen.Letters(Shown.Fixed(Stop.CrankV, 1), columns.CrankRight, y + 1.6, TextStyle.Plain.Right);
        pen.Letters(Shown.Fixed(Stop.RunV, 1), columns.RunRight, y + 1.6, TextStyle.Plain.Right);
        if (Stop.LimitV is { } limit)
        {
            // the farthest volts that are still good
            pen.Letters(LimitWords(limit, Stop.LimitIsLeast), columns.OnRight, y + 5.9, TextStyle.Plain.Right.Quiet);
        }

        pen.Letters(Shown.Fixed(Stop.LostV, 2), columns.LostRight, y + 1.6, TextStyle.Plain.Right);
        pen.Frame(columns.Reading(y), 0.35, 0.8);
        Cavity?.Paint(pen, new Box(columns.FaceX, y - 5.2, 12, 10.4));
        if (testFirst)
        {
            TraceFoot.Wedge(pen, columns.LineX - 4, y);
        }
    }

    /// <summary>The words of the hop stand in the middle between those of this station and the next.</summary>
    public void PaintHop(Pen pen, TraceColumns columns, double y, double nextY)
    {
        var words = Words;
        var below = y + 2.8 + ((Name.Length - 1) * 5.3) + (Where.Length == 0 ? 0 : 4.0 + ((Place.Length - 1) * 4.3));
        y = ((below + nextY - 2.3) / 2) + 1 - ((words.Length - 1) * 4.3 / 2);
        if (Hop is { Wire: { } wire, Colour: { } colour })
        {
            pen.Swatch(colour, columns.WordsX, y);
            pen.Letters(wire, columns.WordsX + 7, y, TextStyle.Bold, new Tag { For = wire });
        }

        foreach (var line in words.Where(l => l.Length > 0))
        {
            pen.Letters(line, columns.WordsX + LeadMm, y, TextStyle.Plain.Quiet, Hop?.Wire is { } own ? new Tag { For = own } : null);
            y += 4.3;
        }
    }

    // a ground that reads '0.0' has no least: charging current lifts it as little below nought
    private static string LimitWords(double limit, bool isLeast) => Shown.Fixed(limit, 1) is var figure && figure is "0.0" or "−0.0" ? "about 0" : $"{(isLeast ? "≥" : "≤")} {figure}";

    // place, and minutes to get there
    private static string WhereWords(TraceStop stop) => string.Join(", ", new[] { stop.Where, stop.Minutes is { } m ? $"{Shown.Number(m, 1)} min" : "" }.Where(p => p.Length > 0));

    private string HopWords()
    {
        if (Hop is not { } hop)
        {
            return "";
        }

        var drop = hop.DropV is { } volts ? $"{(hop.Kind == HopKind.Load ? "across it" : "loses")} {Shown.Fixed(volts, 2)} V" : "";
        var size = hop.Size?.Replace("mm2", "mm²", StringComparison.Ordinal);
        var shared = hop.Shared.IsEmpty || hop.Kind == HopKind.Load ? "" : $"also for {string.Join(", ", hop.Shared.Take(MostShared))}{(hop.Shared.Length > MostShared ? $" and {hop.Shared.Length - MostShared} more" : "")}";
        return string.Join(", ", new[] { hop.Wire is null ? "" : $"{hop.Colour} {size}", Length, hop.Words, drop, shared }.Where(p => p.Length > 0));
    }
}
