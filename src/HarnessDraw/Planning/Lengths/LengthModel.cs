using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning.Routing;
using HarnessDraw.Planning.Sizing;

namespace HarnessDraw.Planning.Lengths;

/// <summary>
/// What is added to a wire's route, each allowance named once: lay, or twist in a twisted cable; turns out of the bundle, and bends that are none; dress in the
/// connector, re-termination, strip, stud stack, service and drip loops, what is cut at the car. The sum is rounded up once.
/// </summary>
internal sealed class LengthModel(HarnessIndex index, PlanningOptions options, RoutedTree tree)
{
    private const double TurnFromRad = Math.PI / 4;

    // by segment: those that a wire went on into, and how: asked for by every wire that passes both
    private readonly List<(int Next, double Rad, bool BreaksOut)>[] turns = [.. tree.Segments.Select(_ => new List<(int, double, bool)>(2))];

    public ImmutableArray<Allowance> Of(WireRow wire, WireEnd from, WireEnd to, Func<int, double> bundleMm)
    {
        var rows = ImmutableArray.CreateBuilder<Allowance>();
        void Add(string what, double mm)
        {
            if (mm > 0.05)
            {
                rows.Add(new(what, Math.Round(mm, 1)));
            }
        }

        if (TwistFactor(wire) is { } twist)
        {
            Add("twist", wire.PathMm * (twist - 1));
        }
        else
        {
            Add("lay", wire.PathMm * options.LayFraction);
        }

        var (breakoutMm, bendMm) = Turns(wire, bundleMm);
        Add("breakout", breakoutMm);
        Add("bend", bendMm);
        foreach (var s in wire.Way.Where(s => tree.Segments[s].MovesMm > 0))
        {
            Add($"service loop {tree.Segments[s].Id}", Math.Max(options.ServiceLoopMm, 1.5 * (tree.Segments[s].MovesMm + (2 * bundleMm(s)))));
        }

        AddEnd(Add, "from", wire.Draft.From.Pin, from);
        AddEnd(Add, "to", wire.Draft.To.Pin, to);
        return rows.ToImmutable();
    }

    public double RoundUp(double mm) => Math.Ceiling((mm / options.RoundUpToMm) - 1e-9) * options.RoundUpToMm;

    private void AddEnd(Action<string, double> add, string side, PinRef? pin, WireEnd end)
    {
        add($"strip ({side})", end.StripMm ?? 0);
        if (pin is null)
        {
            return;
        }

        var thing = index.Thing(pin.Thing);
        var stated = options.With(thing?.Allowances ?? AllowanceRules.AsUsual);
        add($"cut at the car ({side})", thing?.Allowances.CutAtCarMm ?? 0);
        var terminal = index.Harness.Catalogue.Terminals.FirstOrDefault(t => t.Id == end.Terminal);
        if (terminal is not null)
        {
            add($"re-termination ({side})", stated.Reterminations * (terminal.StripMm + terminal.BarrelMm));
        }

        if (index.IsStud(pin))
        {
            add($"stud stack ({side})", stated.StudStackMm);
            return;
        }

        if (thing is not null && index.Connector(thing.ConnectorPart) is { } connector)
        {
            var usualMm = thing.Kind == ThingKind.Mate ? options.MateDressMm : connector.Cavities.Length >= 12 ? options.LargeDressMm : options.SmallDressMm;
            add($"dress ({side})", thing.Allowances.DressMm ?? usualMm);
            if (thing.Allowances.DripLoopMm is not null || (thing.Kind != ThingKind.Mate && index.IsWet(index.Place(thing.Place)?.Zone)))
            {
                add($"drip loop ({side})", stated.DripLoopMm);
            }
        }
    }

    /// <summary>Null for a wire that is in no twisted cable.</summary>
    private double? TwistFactor(WireRow wire)
    {
        if (wire.Circuit.Cable?.TwistPitchMm is not { } pitchMm)
        {
            return null;
        }

        var wires = index.Harness.Nets.Count(n => n.Circuit == wire.Circuit.Id);
        return wires < 2 ? null : TwistGeometry.Factor(TwistGeometry.MiddlesMm(wires, wire.SizeNow.OutsideMm), pitchMm);
    }

    /// <summary>
    /// Bundle radius and a little more for every fork at which the wire turns by more than 45 degrees; for every other turn the outer wire's longer arc, its angle
    /// times the radius. A turn is one or the other.
    /// </summary>
    private (double BreakoutMm, double BendMm) Turns(WireRow wire, Func<int, double> bundleMm)
    {
        var (breakout, bend) = (0.0, 0.0);
        for (var i = 1; i < wire.Way.Length; i++)
        {
            var (a, b) = (wire.Way[i - 1], wire.Way[i]);
            var (rad, breaksOut) = TurnInto(a, b);
            var radiusMm = Math.Max(bundleMm(a), bundleMm(b)) / 2;
            if (breaksOut)
            {
                breakout += radiusMm + options.BreakoutExtraMm;
            }
            else if (options.Bends)
            {
                bend += rad * radiusMm;
            }
        }

        return (breakout, bend);
    }

    private (double Rad, bool BreaksOut) TurnInto(int from, int next)
    {
        foreach (var known in turns[from])
        {
            if (known.Next == next)
            {
                return (known.Rad, known.BreaksOut);
            }
        }

        var (a, b) = (tree.Segments[from], tree.Segments[next]);
        var fork = a.From == b.From || a.From == b.To ? a.From : a.To;
        var rad = Turn(fork, a, b);
        var breaksOut = tree.Degree(fork) >= 3 && rad > TurnFromRad;
        turns[from].Add((next, rad, breaksOut));
        return (rad, breaksOut);
    }

    private double Turn(int fork, TreeSegment a, TreeSegment b)
    {
        var (p, q, r) = (tree.PlaceAt(a.From == fork ? a.To : a.From), tree.PlaceAt(fork), tree.PlaceAt(b.From == fork ? b.To : b.From));
        var turn = Math.Abs(Math.Atan2(r.Ymm - q.Ymm, r.Xmm - q.Xmm) - Math.Atan2(q.Ymm - p.Ymm, q.Xmm - p.Xmm));
        return turn > Math.PI ? (2 * Math.PI) - turn : turn;
    }
}
