using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Network;

/// <summary>Loads that get no volts in any state in which their circuit is on.</summary>
internal sealed class OnButDead : IDesignRule
{
    // share of the nominal volts: under it a load draws nothing to speak of
    private const double Dead = 0.05;

    // less than this: what lies before the point brings nothing
    private const double Fed = 0.5;

    public RuleInfo Info { get; } = new("on-but-dead", "A load that is on but draws nothing", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "It does not work, and its wires and its fuse are sized for no current.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var switching = new CircuitSwitching(new HarnessIndex(context.Harness));
        var dead = new List<(Circuit Circuit, Thing Thing, Element Load, ImmutableArray<string> States, string Stop, List<string> Relays, bool Unfed)>();
        foreach (var circuit in context.Harness.Circuits.Where(c => !c.IsReturn && c.Duty != Duty.Signal && context.WiresOf(c.Id).Any()))
        {
            var states = context.Harness.States.Where(s => switching.IsLive(circuit.Id, s)).Select(s => s.Id).ToImmutableArray();
            foreach (var (thing, load) in LoadsOf(context, circuit))
            {
                if (DeadIn(context, circuit, thing, load, states) is { } at && !ShowsCharge(context, thing, load))
                {
                    var (stop, relays) = new StoppedWay(context, at.Build, at.State).Of(circuit, thing, load);
                    dead.Add((circuit, thing, load, states, stop, relays, Math.Abs(context.Volts(stop, at.State, at.Build) ?? 0) < Fed * circuit.NominalV));
                }
            }
        }

        foreach (var same in dead.GroupBy(d => d.Stop, StringComparer.Ordinal))
        {
            var list = same.ToList();
            var names = list.Select(d => d.Thing.Id).Distinct(StringComparer.Ordinal).ToList();
            var relays = list.SelectMany(d => d.Relays).Except(names).Distinct(StringComparer.Ordinal).ToList();
            // the way of a fuse that nothing feeds ends at its own end
            var fuse = same.Key.EndsWith(".in", StringComparison.Ordinal) && context.Thing(same.Key[..^3]) is { Kind: ThingKind.Fuse } unfed ? unfed.Id : null;
            var wires = list.SelectMany(d => context.WiresOf(d.Circuit.Id)).Select(w => w.Id).Distinct(StringComparer.Ordinal);
            yield return context.Found(Info,
                $"{Wording.List(names)} {(names.Count == 1 ? "is" : "are")} on in {Wording.List(list.SelectMany(d => d.States).Distinct(StringComparer.Ordinal).Select(s => $"'{s}'"))} but {(names.Count == 1 ? "draws" : "draw")} nothing: {(fuse is null ? $"the path stops at {PointWords.OfNode(same.Key)}" : $"nothing feeds fuse {fuse}")}{(relays.Count == 0 ? "" : $", so {Wording.List(relays)} {(relays.Count == 1 ? "does" : "do")} not pull in")}.",
                fuse is not null ? $"Put {fuse} on what feeds it ('on:' a fuse panel, stud or bus bar), or feed {PointWords.OfNode(same.Key)} by a circuit." : list.TrueForAll(d => d.Unfed) ? $"Nothing brings current to {PointWords.OfNode(same.Key)} there: feed it by a circuit, or mend what lies before it (a switch whose circuit is off in these states, a fuse that sits on what it feeds itself, a ground point under 'from'). What is meant to be off there belongs into no 'on' of these states."
                    : $"Lead {PointWords.OfNode(same.Key)} on: to ground by 'returns' or 'grounds-itself', or by a circuit to what comes next. What is meant to be off there belongs into no 'on' of these states.",
                [same.Key, .. list.Select(d => d.Circuit.Id).Distinct(StringComparer.Ordinal), .. names, .. wires], list[0].Circuit.OnlyWith.And(list[0].Thing.OnlyWith), list[0].Circuit.At);
        }
    }

    // a load with a pin that no wire reaches has a finding of its own
    private static IEnumerable<(Thing Thing, Element Load)> LoadsOf(RuleContext context, Circuit circuit) =>
        from feed in circuit.Feeds
        let thing = context.Thing(feed.Thing)
        where thing is { Kind: not ThingKind.Alternator }
        from load in Loads.At(thing, feed.Pin)
        where load.Amps(circuit.NominalV) is > 0 && (load.PinB is null || thing.Side == Side.Cabin || (context.EndsAt(thing.Id, load.PinB).Any() && context.EndsAt(thing.Id, load.PinA).Any()))
        select (thing, load);

    // a charge lamp lies between two live poles while the engine runs, and goes out; at rest its way home is the machine's own winding
    private static bool ShowsCharge(RuleContext context, Thing thing, Element load)
    {
        var reached = new[] { load.PinA, load.PinB }.OfType<string>().SelectMany(p => context.Graph.Search($"{thing.Id}.{p}", h => h.Kind is HopKind.Wire or HopKind.Joint).Keys);
        return context.Graph.Posts.Where(p => p.Source.Kind == SourceKind.Alternator).Any(p => reached.Contains(p.Node, StringComparer.Ordinal));
    }

    /// <summary>The first state and build in which it has no volts, when it has none in all that are known; null when it has some, or none are known.</summary>
    private static (string State, int Build)? DeadIn(RuleContext context, Circuit circuit, Thing thing, Element load, ImmutableArray<string> states)
    {
        (string, int)? first = null;
        for (var build = 0; build < context.SolvedBuilds.Length; build++)
        {
            if (!circuit.OnlyWith.Holds(context.SolvedBuilds[build]) || !thing.OnlyWith.Holds(context.SolvedBuilds[build]))
            {
                continue;
            }

            foreach (var state in states)
            {
                if (context.Volts($"{thing.Id}.{load.PinA}", state, build) is not { } a || (load.PinB is null ? 0 : context.Volts($"{thing.Id}.{load.PinB}", state, build)) is not { } b)
                {
                    continue;
                }

                if (Math.Abs(a - b) >= Dead * circuit.NominalV)
                {
                    return null;
                }

                first ??= (state, build);
            }
        }

        return first;
    }
}
