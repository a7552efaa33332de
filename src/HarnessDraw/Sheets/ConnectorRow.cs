using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>What one cavity holds in one of the builds shown. Null figures are unknown.</summary>
internal sealed record ConnectorRow(string Connector, string Cavity, string ContactSize, string? Half)
{
    public Wire? Wire { get; init; }

    /// <summary>Colour of the kept wire on the other side; null: not known or no mate.</summary>
    public string? OtherColour { get; init; }

    /// <summary>The wire's end in this cavity and its other end.</summary>
    public WireEnd? Here { get; init; }
    public WireEnd? There { get; init; }

    /// <summary>Where the wire leads when its other end is a splice, in words.</summary>
    public string? Beyond { get; init; }
    public double? OffV { get; init; }
    public double? RunV { get; init; }
    public double? StartV { get; init; }
    public string? Plug { get; init; }
    public BuildCondition Builds { get; init; } = BuildCondition.Always;

    /// <summary>More than half a volt with the key off: live while you work.</summary>
    public bool AlwaysLive => OffV is { } volts && Math.Abs(volts) > 0.5;
}

/// <summary>One connector body on one side, as its sheet shows it: its part and its rows in cavity order.</summary>
internal sealed record ConnectorSubject(Thing Thing, Side Side, ConnectorPart Part, ImmutableArray<ConnectorRow> Rows)
{
    public bool IsMate => Thing.Kind == ThingKind.Mate;

    /// <summary>The first row of a cavity.</summary>
    public ConnectorRow RowOf(string cavity) => Rows.First(r => r.Cavity == cavity);
}

/// <summary>Collects the connectors of a plan with what is in their cavities.</summary>
internal static class ConnectorSubjects
{
    public static ImmutableArray<ConnectorSubject> Of(Plan plan)
    {
        var volts = new ExpectedVolts(plan);
        var uses = plan.Cavities.GroupBy(c => (c.Connector, c.Side)).OrderBy(g => g.Key.Side).ThenBy(g => g.Key.Connector, StringComparer.Ordinal);
        var subjects = ImmutableArray.CreateBuilder<ConnectorSubject>();
        foreach (var group in uses)
        {
            var thing = plan.Harness.Things.FirstOrDefault(t => t.Id == group.Key.Connector);
            var part = plan.Harness.Catalogue.Connectors.FirstOrDefault(c => c.Id == thing?.ConnectorPart);
            if (thing is not null && part is not null)
            {
                var inCavity = group.ToLookup(u => u.Cavity, StringComparer.Ordinal);
                var rows = part.Cavities.SelectMany(c => RowsOf(plan, volts, thing, c, [.. inCavity[c.Name]]));
                subjects.Add(new(thing, group.Key.Side, part, [.. rows.OrderBy(r => r.Cavity, CavityOrder.Instance).ThenBy(r => r.Wire?.Id, StringComparer.Ordinal)]));
            }
        }

        return subjects.ToImmutable();
    }

    private static IEnumerable<ConnectorRow> RowsOf(Plan plan, ExpectedVolts volts, Thing thing, CavityPart cavity, ImmutableArray<CavityUse> uses)
    {
        var empty = new ConnectorRow(thing.Id, cavity.Name, cavity.Size, cavity.Half);
        var used = uses.Where(u => u.Wire is not null).ToList();
        return used.Count == 0 ? [empty with { Plug = uses.FirstOrDefault(u => u.Plug is not null)?.Plug }] : used.Select(u => Used(plan, volts, thing, empty, u));
    }

    private static ConnectorRow Used(Plan plan, ExpectedVolts volts, Thing thing, ConnectorRow empty, CavityUse use)
    {
        var wire = plan.WireOf(use.Wire!);
        var pin = thing.Pins.FirstOrDefault(p => (p.Cavity ?? p.Name) == use.Cavity)?.Name ?? use.Cavity;
        var isFrom = wire.From.At == thing.Id && (wire.From.Pin == use.Cavity || wire.From.Pin == pin);
        var (here, there) = isFrom ? (wire.From, wire.To) : (wire.To, wire.From);
        var node = $"{thing.Id}.{here.Pin ?? use.Cavity}";
        return empty with
        {
            Wire = wire,
            Here = here,
            There = there,
            Beyond = there.IsSplice ? BeyondSplice(plan, wire, there.At) : null,
            OtherColour = OtherColour(plan, use),
            OffV = volts.Off(node),
            RunV = volts.Run(node, wire.Circuit),
            StartV = volts.Start(node),
            Builds = use.Builds,
        };
    }

    private static string? OtherColour(Plan plan, CavityUse use)
    {
        var across = plan.Cavities.FirstOrDefault(c => c.Connector == use.Connector && c.Cavity == use.Cavity && c.Side != use.Side && c.Wire is not null);
        return across is not null ? plan.WireOf(across.Wire!).Colour : plan.Harness.Kept.FirstOrDefault(k => k.Connector == use.Connector && k.Cavity == use.Cavity)?.Colour;
    }

    private static string BeyondSplice(Plan plan, Wire wire, string splice)
    {
        var ends = plan.Wires.Where(w => w.Id != wire.Id && (w.From.At == splice || w.To.At == splice)).Select(w => w.From.At == splice ? w.To : w.From);
        return $"{splice}: {string.Join(", ", ends.Select(EndText.Words))}";
    }
}

/// <summary>Cavities as people count them: A2 before A10, letters before figures.</summary>
internal sealed class CavityOrder : IComparer<string>
{
    public static CavityOrder Instance { get; } = new();

    public int Compare(string? x, string? y)
    {
        var xHead = Head(x);
        var yHead = Head(y);
        var byHead = xHead.SequenceCompareTo(yHead);
        var byNumber = byHead != 0 ? 0 : Number(x.AsSpan(xHead.Length)).CompareTo(Number(y.AsSpan(yHead.Length)));
        return byHead != 0 ? byHead : byNumber != 0 ? byNumber : string.CompareOrdinal(x, y);
    }

    // '56b' sorts as 56 in a group of its own head ''
    private static ReadOnlySpan<char> Head(ReadOnlySpan<char> name) => name.IndexOfAnyInRange('0', '9') is >= 0 and var end ? name[..end] : name;

    private static long Number(ReadOnlySpan<char> rest)
    {
        const int MostFigures = 15;
        var end = rest.IndexOfAnyExceptInRange('0', '9');
        var figures = rest[..Math.Min(MostFigures, end < 0 ? rest.Length : end)];
        return figures.IsEmpty ? -1 : long.Parse(figures);
    }
}
