using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.PowerSheets;

/// <summary>
/// A part of the power network as it hangs on the one before it: by a wire, or bolted to it (wire null). The most that can flow into a dead short here counts copper at
/// 20 degC and the source alone, no joints. Null figures: a length on the way is not known.
/// </summary>
internal sealed record PowerNode(Thing Thing, Wire? Wire, string? Pin, ImmutableArray<PowerNode> Children)
{
    /// <summary>Millimetres of lead without a fuse from the source up to here; null behind a fuse or where a length is unknown.</summary>
    public double? UnfusedMm { get; init; }
    public bool Fused { get; init; }

    /// <summary>Route without a fuse up to the end of this lead, from the source or from the end of the last lead that is unfused for a stated reason, and how long it may be, mm; null: such a lead itself, fused, or not known.</summary>
    public (double LengthMm, double MostMm)? Run { get; init; }
    public double? ShortA { get; init; }

    public int Leaves => Math.Max(1, Children.Sum(c => c.Leaves));

    public IEnumerable<PowerNode> All => Children.SelectMany(c => c.All).Prepend(this);
}

/// <summary>Grows the power network from the posts of the batteries: the live side up to the first plug or blade behind a heavy fuse, the ground side over its straps.</summary>
internal sealed class PowerTree
{
    private const double ChargedPerNominal = 1.05;
    private readonly Plan plan;
    private readonly Source source;
    private readonly HashSet<string> seen = new(StringComparer.Ordinal);
    private readonly HashSet<string> used = new(StringComparer.Ordinal);

    private PowerTree(Plan plan, Source source) => (this.plan, this.source) = (plan, source);

    /// <summary>The live and the ground side of every battery.</summary>
    public static ImmutableArray<(Source Source, PowerNode Live, PowerNode Ground)> Of(Plan plan)
    {
        var trees = ImmutableArray.CreateBuilder<(Source, PowerNode, PowerNode)>();
        foreach (var source in plan.Harness.Power.Sources.Where(s => s.Kind == SourceKind.Battery && !plan.Harness.Power.IsTap(s)))
        {
            if (plan.Harness.Things.FirstOrDefault(t => t.Id == source.Id) is { } battery)
            {
                trees.Add((source, new PowerTree(plan, source).Grow(battery, live: true), new PowerTree(plan, source).Grow(battery, live: false)));
            }
        }

        return trees.ToImmutable();
    }

    private PowerNode Grow(Thing battery, bool live)
    {
        seen.Add(battery.Id);
        return Node(battery, null, null, live, new Reach(0, plan.Harness.Power.LiveOhm(source), false));
    }

    private PowerNode Node(Thing thing, Wire? wire, string? pin, bool live, Reach reach)
    {
        var children = ImmutableArray.CreateBuilder<PowerNode>();
        foreach (var (next, by) in Next(thing, live).ToList())
        {
            // what ends the sheet is shown once for each of its pins
            var end = by is null ? null : by.From.At == next.Id ? by.From.Pin : by.To.Pin;
            if (seen.Add(live && !Passes(next) ? $"{next.Id}.{end}" : next.Id))
            {
                children.Add(Node(next, by, end, live, Further(thing, by, reach)));
            }
        }

        var volts = plan.Harness.Power.LiveV(source) * ChargedPerNominal;
        return new(thing, wire, pin, children.ToImmutable())
        {
            Fused = reach.Fused,
            UnfusedMm = reach.Fused ? null : reach.UnfusedMm,
            Run = reach.Fused || wire is null || IsExempt(wire) || reach.RunMm is not { } mm ? null : (mm, reach is { BeyondExempt: true, Sheathed: true } ? UnfusedRun.FromJunctionSheathedMm : UnfusedRun.FromBatteryMm),
            ShortA = live && reach.Ohm is > 0 and var ohm ? volts / ohm : null,
        };
    }

    private Reach Further(Thing from, Wire? by, Reach reach)
    {
        var fused = reach.Fused || from.Kind == ThingKind.Fuse;
        if (by is null)
        {
            return reach with { Fused = fused };
        }

        var size = plan.Harness.Catalogue.WireTypes.FirstOrDefault(t => t.Id == by.WireType)?.Sizes.FirstOrDefault(s => s.Label == by.SizeLabel);
        var ohm = size is not null && by.CutLengthMm is { } mm ? reach.Ohm + (size.MilliohmPerM * mm * 1e-6) : null;
        // a converter sets its own limit
        var further = reach with { UnfusedMm = reach.UnfusedMm + by.CutLengthMm, Ohm = from.Kind == ThingKind.Converter ? null : ohm, Fused = fused };
        return IsExempt(by)
            ? further with { RunMm = 0, BeyondExempt = true, Sheathed = true }
            : further with { RunMm = reach.RunMm + by.PathLengthMm, Sheathed = reach.Sheathed && plan.Tree.Segments.All(s => s.Covering is not null || !by.Segments.Contains(s.Id)) };
    }

    private bool IsExempt(Wire wire) => plan.Harness.Circuits.Any(c => c.Id == wire.Circuit && c.UnfusedBecause is not null);

    // heavy leads first, then by name; a fuse that sits on a bar hangs on it without a wire
    private IEnumerable<(Thing Thing, Wire? Wire)> Next(Thing thing, bool live)
    {
        if (live && !Passes(thing))
        {
            yield break;
        }

        foreach (var wire in plan.Wires.Where(w => (w.From.At == thing.Id || w.To.At == thing.Id) && Belongs(thing, w, live)).OrderByDescending(w => w.AreaMm2).ThenBy(w => w.Id, StringComparer.Ordinal))
        {
            var other = wire.From.At == thing.Id ? wire.To : wire.From;
            if (plan.Harness.Things.FirstOrDefault(t => t.Id == other.At) is { } next && !used.Contains(wire.Id) && (live || IsGround(next)))
            {
                used.Add(wire.Id);
                yield return (next, wire);
            }
        }

        foreach (var fuse in plan.Harness.Protections.Where(p => live && p.On == thing.Id && p.Kind is (ProtectionKind.BoltIn or ProtectionKind.FusibleLink)).OrderBy(p => p.Id, CavityOrder.Instance))
        {
            if (plan.Harness.Things.FirstOrDefault(t => t.Id == fuse.Id) is { } next)
            {
                yield return (next, null);
            }
        }
    }

    private bool Belongs(Thing thing, Wire wire, bool live)
    {
        var circuit = plan.Harness.Circuits.FirstOrDefault(c => c.Id == wire.Circuit);
        if (circuit is null || (circuit.IsReturn == live && thing.Kind != ThingKind.Battery))
        {
            return false;
        }

        if (thing.Kind == ThingKind.Battery)
        {
            var pin = wire.From.At == thing.Id ? wire.From.Pin : wire.To.Pin;
            var ground = plan.Harness.Power.Ground == GroundPolarity.Negative ? "minus" : "plus";
            return live == (pin != ground);
        }

        return !live || circuit.LiveWith == KeyPosition.Off || Ends(wire).Any(t => t.Kind == ThingKind.Alternator);
    }

    private IEnumerable<Thing> Ends(Wire wire) => plan.Harness.Things.Where(t => t.Id == wire.From.At || t.Id == wire.To.At);

    // through studs, bars and heavy fuses; a plug, a blade or a panel of blade fuses ends the sheet
    private bool Passes(Thing thing) => thing.Kind switch
    {
        ThingKind.Mate or ThingKind.Inline or ThingKind.Alternator or ThingKind.FusePanel => false,
        ThingKind.Fuse => plan.Harness.Protections.FirstOrDefault(p => p.Id == thing.Id)?.Kind is ProtectionKind.BoltIn or ProtectionKind.FusibleLink,
        _ => thing.ConnectorPart is null && thing.Pins.Any(p => p.Style == PinStyle.Stud),
    };

    private static bool IsGround(Thing thing) => thing.Kind is ThingKind.GroundPoint or ThingKind.Battery or ThingKind.Starter or ThingKind.Alternator;

    private sealed record Reach(double? UnfusedMm, double? Ohm, bool Fused)
    {
        public double? RunMm { get; init; } = 0;
        public bool BeyondExempt { get; init; }
        public bool Sheathed { get; init; } = true;
    }
}
