using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning.Routing;
using HarnessDraw.Planning.Sizing;

namespace HarnessDraw.Planning.Lengths;

/// <summary>
/// What is added to a wire's route, each allowance named once: lay, turns out of the bundle, dress in the connector, re-termination, strip,
/// stud stack, service and drip loops. The sum is rounded up once.
/// </summary>
internal sealed class LengthModel(HarnessIndex index, PlanningOptions options, RoutedTree tree)
{
    private const double TurnFromRad = Math.PI / 4;

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

        Add("lay", wire.PathMm * options.LayFraction);
        Add("breakout", Turns(wire, bundleMm));
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

        var terminal = index.Harness.Catalogue.Terminals.FirstOrDefault(t => t.Id == end.Terminal);
        if (terminal is not null)
        {
            add($"re-termination ({side})", options.Reterminations * (terminal.StripMm + terminal.BarrelMm));
        }

        if (index.IsStud(pin))
        {
            add($"stud stack ({side})", options.StudStackMm);
            return;
        }

        var thing = index.Thing(pin.Thing);
        var connector = index.Connector(thing?.ConnectorPart);
        if (connector is not null)
        {
            add($"dress ({side})", thing!.Kind == ThingKind.Mate ? options.MateDressMm : connector.Cavities.Length >= 12 ? options.LargeDressMm : options.SmallDressMm);
            if (thing.Kind != ThingKind.Mate && index.IsWet(index.Place(thing.Place)?.Zone))
            {
                add($"drip loop ({side})", options.DripLoopMm);
            }
        }
    }

    /// <summary>Bundle radius and a little more for every fork at which the wire turns by more than 45 degrees.</summary>
    private double Turns(WireRow wire, Func<int, double> bundleMm)
    {
        var sum = 0.0;
        for (var i = 1; i < wire.Way.Length; i++)
        {
            var (a, b) = (tree.Segments[wire.Way[i - 1]], tree.Segments[wire.Way[i]]);
            var fork = a.From == b.From || a.From == b.To ? a.From : a.To;
            if (tree.Degree(fork) >= 3 && Turn(fork, a, b) > TurnFromRad)
            {
                sum += (Math.Max(bundleMm(a.Number), bundleMm(b.Number)) / 2) + options.BreakoutExtraMm;
            }
        }

        return sum;
    }

    private double Turn(int fork, TreeSegment a, TreeSegment b)
    {
        var (p, q, r) = (tree.PlaceAt(a.From == fork ? a.To : a.From), tree.PlaceAt(fork), tree.PlaceAt(b.From == fork ? b.To : b.From));
        var turn = Math.Abs(Math.Atan2(r.Ymm - q.Ymm, r.Xmm - q.Xmm) - Math.Atan2(q.Ymm - p.Ymm, q.Xmm - p.Xmm));
        return turn > Math.PI ? (2 * Math.PI) - turn : turn;
    }
}
