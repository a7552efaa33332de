using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Planning;

/// <summary>
/// What was worked out from a harness, over all its options at once: tree, wires, splices, cavities, sizes, fuses, volts. Knows nothing of
/// pages. Its JSON form is part of the output contract.
/// </summary>
public sealed record Plan
{
    public required Harness Harness { get; init; }
    public required HarnessTree Tree { get; init; }
    public required ImmutableArray<Wire> Wires { get; init; }
    public required ImmutableArray<Splice> Splices { get; init; }
    public required ImmutableArray<CavityUse> Cavities { get; init; }
    public required ImmutableArray<FuseChoice> Fuses { get; init; }
    public required ImmutableArray<NodeVolts> Nodes { get; init; }

    /// <summary>Volts in further builds, which with the first one show every pair of choices: a rule about volts judges the worst valid build.</summary>
    public ImmutableArray<BuildVolts> FurtherBuilds { get; init; } = [];

    /// <summary>Amperes that a circuit is said to draw beyond what its known loads do, by circuit id.</summary>
    public ImmutableSortedDictionary<string, double> GivenBeyondLoadsA { get; init; } = ImmutableSortedDictionary.Create<string, double>(StringComparer.Ordinal);

    /// <summary>Every valid build (option to choice), the usual one first; bounded, see <see cref="BuildCount"/>.</summary>
    public required ImmutableArray<ImmutableSortedDictionary<string, string>> Builds { get; init; }
    public required long BuildCount { get; init; }

    /// <summary>Problems met while planning (no route, no cavity left, no size big enough), as findings.</summary>
    public required ImmutableArray<Finding> PlanningFindings { get; init; }

    /// <summary>The stated objective of the routing, in words with its value.</summary>
    public required string RoutingObjective { get; init; }

    public Wire WireOf(string id) => Wires.First(w => w.Id == id);

    /// <summary>The same plan with only what <paramref name="build"/> includes. Ids, cavities and sizes do not change.</summary>
    public Plan For(ImmutableSortedDictionary<string, string> build) => Only(w => w.Builds.Holds(build));

    /// <summary>The same plan with only the wires that are asked for. Ids, cavities and sizes do not change.</summary>
    public Plan Only(Func<Wire, bool> isAskedFor)
    {
        var wires = Wires.Where(isAskedFor).ToImmutableArray();
        var kept = wires.Select(w => w.Id).ToHashSet(StringComparer.Ordinal);
        return this with
        {
            Wires = wires,
            Splices = [.. Splices.Select(s => s with { Wires = [.. s.Wires.Where(kept.Contains)] }).Where(s => s.Wires.Length > 1)],
            Cavities = [.. Cavities.Where(c => c.Wire is null || kept.Contains(c.Wire))],
            Fuses = [.. Fuses.Select(f => f with { Wires = [.. f.Wires.Where(kept.Contains)] })],
            Tree = Tree with { Segments = Inside(wires) },
        };
    }

    // from the wires that are kept: a chart of many asks for a few of thousands, and a trunk's segments hold them all
    private ImmutableArray<Segment> Inside(ImmutableArray<Wire> wires)
    {
        var inside = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        foreach (var wire in wires)
        {
            foreach (var segment in wire.Segments)
            {
                var ids = inside.TryGetValue(segment, out var known) ? known : inside[segment] = [];
                if (ids.Count == 0 || ids[^1] != wire.Id)
                {
                    ids.Add(wire.Id);
                }
            }
        }

        return [.. Tree.Segments.Select(s => s with { Wires = inside.TryGetValue(s.Id, out var ids) ? [.. ids] : [] })];
    }
}

/// <summary>The harness as a tree over places of the layout, rooted at the layout's root. Only places that are used.</summary>
public sealed record HarnessTree(string Root, ImmutableArray<Segment> Segments)
{
    /// <summary>Segment that leads from a place towards the root, or null at the root.</summary>
    public Segment? Above(string place) => Segments.FirstOrDefault(s => s.To == place);

    public IEnumerable<Segment> Below(string place) => Segments.Where(s => s.From == place);
}

/// <summary>A stretch of bundle between two neighbouring places; <see cref="From"/> is the end nearer the root.</summary>
public sealed record Segment
{
    public required string Id { get; init; }
    public required string From { get; init; }
    public required string To { get; init; }

    /// <summary>Exact length in mm; null while the path is unknown.</summary>
    public required double? LengthMm { get; init; }
    public bool Estimated { get; init; }

    /// <summary>Ids of the wires that run in it, in wire order.</summary>
    public required ImmutableArray<string> Wires { get; init; }

    /// <summary>Outside diameter of the worst valid build, covering included, mm.</summary>
    public double DiameterMm { get; init; }
    public string? Covering { get; init; }
    public double MinBendRadiusMm { get; init; }
    public string? Zone { get; init; }

    /// <summary>True when the path was added because the layout has none (a finding says so).</summary>
    public bool Assumed { get; init; }
}

/// <summary>One end of a wire: a thing's pin, or a splice (pin null).</summary>
public sealed record WireEnd(string At, string? Pin)
{
    public string? Terminal { get; init; }
    public string? Seal { get; init; }
    public double? StripMm { get; init; }
    public ImmutableArray<string> ThreadOnFirst { get; init; } = [];
    public bool IsSplice { get; init; }

    public override string ToString() => Pin is null ? At : $"{At}.{Pin}";
}

/// <summary>A named addition to a wire's route, millimetres.</summary>
public sealed record Allowance(string What, double LengthMm)
{
    /// <summary>Wire for a new terminal later: nothing is too short without it.</summary>
    public bool IsReTermination => What.StartsWith("re-termination", StringComparison.Ordinal);
}

/// <summary>The worst operating state of a wire.</summary>
public sealed record WorstState(string State, double CurrentA, double DropV, double TemperatureC);

/// <summary>The largest current of a wire in one build, amperes.</summary>
public sealed record BuildCurrent(ImmutableSortedDictionary<string, string> Build, double CurrentA);

/// <summary>One cut piece of conductor. Null figures are unknown.</summary>
public sealed record Wire
{
    /// <summary>Safe in a spreadsheet: 'E07', 'F12', 'W3'.</summary>
    public required string Id { get; init; }
    public required string Circuit { get; init; }
    public required string Net { get; init; }
    public string? Cable { get; init; }
    public required WireEnd From { get; init; }
    public required WireEnd To { get; init; }

    /// <summary>IEC 60757 letters, base/tracer.</summary>
    public required string Colour { get; init; }
    public required string WireType { get; init; }
    public required double AreaMm2 { get; init; }

    /// <summary>Printed size: '1.5' or '16 AWG'.</summary>
    public required string SizeLabel { get; init; }
    public string? Awg { get; init; }
    public required double OutsideMm { get; init; }

    /// <summary>Exact length along the segments, without allowances.</summary>
    public required double? PathLengthMm { get; init; }
    public ImmutableArray<Allowance> Allowances { get; init; } = [];
    public required double? CutLengthMm { get; init; }

    /// <summary>Route and allowances but those for new terminals, mm: a wire cut shorter does not do. Null where the route is unknown.</summary>
    public double? LeastCutMm
    {
        get
        {
            var allowedMm = 0.0;
            foreach (var allowance in Allowances)
            {
                allowedMm += allowance.IsReTermination ? 0 : allowance.LengthMm;
            }

            return PathLengthMm + allowedMm;
        }
    }

    public bool Estimated { get; init; }

    /// <summary>Segments in order from <see cref="From"/> to <see cref="To"/>; the first or last may be used in part when it ends in a splice.</summary>
    public required ImmutableArray<string> Segments { get; init; }
    public BuildCondition Builds { get; init; } = BuildCondition.Always;
    public WorstState? Worst { get; init; }
    public double? AmpacityA { get; init; }

    /// <summary>Currents in the builds that were solved (they show every pair of choices), where these differ.</summary>
    public ImmutableArray<BuildCurrent> BuildCurrents { get; init; } = [];

    /// <summary>Nearest first.</summary>
    public ImmutableArray<string> ProtectedBy { get; init; } = [];

    /// <summary>Behind a load in series (a charge lamp): the most that it lets pass into a short, A; null where none does.</summary>
    public double? SeriesA { get; init; }

    /// <summary>Rule that decided the size: 'voltage drop', 'ampacity', 'protection', 'terminal', 'unfused cable', 'mechanical minimum', 'given by hand', 'as built', 'sized alike'.</summary>
    public required string DecidedBy { get; init; }

    /// <summary>For a size given by hand: what mechanics, temperature and fuse ask of the wire, mm2; null where the program chose.</summary>
    public double? NeededMm2 { get; init; }

    /// <summary>The next smaller size and why it does not do, in words with numbers.</summary>
    public string? RunnerUp { get; init; }

    /// <summary>How far the deciding figure is from its limit, as a fraction of the limit (0.12 = 12 % to spare).</summary>
    public double? Margin { get; init; }
    public bool ByHand { get; init; }
}

/// <summary>Where three or more wire ends join. Feed first in <see cref="Wires"/>.</summary>
public sealed record Splice
{
    public required string Id { get; init; }
    public required string Circuit { get; init; }
    public required string Net { get; init; }
    public required string Segment { get; init; }

    /// <summary>Distance from the segment's <see cref="Segment.From"/> place, mm.</summary>
    public required double AtMm { get; init; }

    /// <summary>Distance from the tree's root, mm; null when a length on the way is unknown.</summary>
    public required double? StationMm { get; init; }
    public required ImmutableArray<string> Wires { get; init; }
    public string? Part { get; init; }
    public BuildCondition Builds { get; init; } = BuildCondition.Always;
}

/// <summary>What is in a cavity: a wire, or a plug, or nothing.</summary>
public sealed record CavityUse
{
    public required string Connector { get; init; }
    public Side Side { get; init; }
    public required string Cavity { get; init; }
    public string? Wire { get; init; }
    public BuildCondition Builds { get; init; } = BuildCondition.Always;
    public string? Plug { get; init; }

    /// <summary>Why this cavity ('fixed by hand', 'kept cabin pin', 'fewest crossings').</summary>
    public string? Why { get; init; }
}

/// <summary>A fuse: its rating, the largest that its wires bear, and what it feeds.</summary>
public sealed record FuseChoice
{
    public required string Id { get; init; }
    public required ProtectionKind Kind { get; init; }
    public required double? RatingA { get; init; }

    /// <summary>Largest standard rating that every wire, contact and splice behind it bears; null when none does.</summary>
    public required double? LargestA { get; init; }
    public required ImmutableArray<string> Wires { get; init; }

    /// <summary>Largest steady current in the worst solved state of the worst build, amperes, and that state.</summary>
    public double? LoadA { get; init; }
    public string? LoadState { get; init; }
    public bool Given { get; init; }
    public string? Why { get; init; }
}

/// <summary>Volts of a node (a thing's pin or a splice) against the source's grounded pole, by state id; null: floating or unknown.</summary>
public sealed record NodeVolts(string Node, IReadOnlyDictionary<string, double?> Volts);

/// <summary>Volts of the nodes in one build.</summary>
public sealed record BuildVolts(ImmutableSortedDictionary<string, string> Build, ImmutableArray<NodeVolts> Nodes);

/// <summary>What a check reports.</summary>
public sealed record Finding
{
    /// <summary>Our rule id ('fuse-above-wire').</summary>
    public required string Rule { get; init; }
    public required Severity Severity { get; init; }

    /// <summary>Object, what is wrong with numbers, why it matters.</summary>
    public required string Message { get; init; }
    public string? Cure { get; init; }

    /// <summary>Where the rule comes from.</summary>
    public string? Source { get; init; }

    /// <summary>Ids of the wires, circuits, things concerned.</summary>
    public ImmutableArray<string> Where { get; init; } = [];

    /// <summary>Smallest option set that causes it; always when it does not depend on options.</summary>
    public BuildCondition Builds { get; init; } = BuildCondition.Always;
    public SourceSpan? At { get; init; }
    public Waiver? WaivedBy { get; init; }

    /// <summary>The figure that was held against a limit, as the rule names it; null for rules without figures.</summary>
    public string? Measured { get; init; }
}
