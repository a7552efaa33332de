using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Cures;

/// <summary>Another way for the current: a relay, a diode, another feed, another build.</summary>
internal static class WayCures
{
    /// <summary>A relay beside the first load of the circuit: the circuit works its coil (2 W, common practice), and the loads are fed from a bus bar of the bay through a fuse of their own.</summary>
    public static IEnumerable<CureLadder> RelayAtTheLoad(RuleContext context, Finding finding)
    {
        var bar = context.Harness.Things.FirstOrDefault(t => t is { Kind: ThingKind.BusBar, Side: Side.Bay } && IsLive(context.Harness, t));
        var plug = context.Harness.Catalogue.Connectors.FirstOrDefault(c => c.Id.StartsWith("relay-", StringComparison.Ordinal) && c.Cavities.Length == 4);
        foreach (var circuit in context.CircuitsNamed(finding).Where(c => !c.IsReturn && c.OnlyWith.IsAlways && !c.Feeds.IsEmpty).Take(1))
        {
            if (bar is null || plug is null || context.Thing(circuit.Feeds[0].Thing) is not { Side: Side.Bay } load)
            {
                continue;
            }

            var (relay, fuse) = ($"{circuit.Id} relay", $"{circuit.Id} fuse");
            yield return CureLadder.InColours($"a relay at '{load.Place}' that '{circuit.Id}' works, its contact fed from {bar.Id} through a fuse of its own", colour =>
                [
                    $"thing.{relay}={{ at: '{load.Place}', plug: {plug.Id}, relay: {{ coil: ['86', '85'], makes: ['30', '87'], coil-draws: 2 W, contact: 30 A, suppression: resistor }}, returns: '85' }}",
                    $"fuse.{fuse}={{ kind: blade, on: '{bar.Id}' }}",
                    $"circuit.{circuit.Id}.feeds=['{relay}.86']",
                    $"circuit.{circuit.Id} relay feed={{ from: '{fuse}', feeds: ['{relay}.30'], live: always{colour} }}",
                    $"circuit.{circuit.Id} switched={{ from: '{relay}.87', feeds: [{CureText.Pins(circuit.Feeds)}], live: {CureText.Live(circuit)}, importance: {(circuit.Importance == Importance.Critical ? "critical" : "ordinary")}, protected-by: '{fuse}'{colour} }}",
                ]);
        }
    }

    // returns end on a bar as well
    private static bool IsLive(Harness harness, Thing bar) => harness.Protections.Any(p => p.On == bar.Id) || harness.Circuits.Any(c => !c.IsReturn && c.Feeds.Any(f => f.Thing == bar.Id));

    /// <summary>A diode at the alternator that lets current only into its exciter terminal.</summary>
    public static IEnumerable<CureLadder> ExciterDiode(RuleContext context, Finding finding)
    {
        foreach (var circuit in finding.Where.Take(1).Select(context.Circuit).OfType<Circuit>().Where(c => c.Feeds.Length == 1 && context.Thing(c.Feeds[0].Thing) is not null))
        {
            var fuse = circuit.ProtectedBy.IsEmpty ? "" : $", protected-by: '{circuit.ProtectedBy[0]}'";
            yield return CureLadder.InColours($"a diode in '{circuit.Id}' that conducts towards {circuit.Feeds[0].Thing} alone", colour =>
                [
                    $"thing.exciter diode={{ at: '{context.Thing(circuit.Feeds[0].Thing)!.Place}', kind: load, blades: {{ A: 6.3 mm, K: 6.3 mm }}, diode: [A, K] }}",
                    $"circuit.{circuit.Id}.feeds=[exciter diode.A]",
                    $"circuit.exciter lead={{ from: exciter diode.K, feeds: ['{circuit.Feeds[0]}'], live: run{fuse}{colour} }}",
                ]);
        }
    }

    /// <summary>The circuit built with the other choices of an option: of the one that the finding's builds hang on, else of the one that another circuit of the finding hangs on.</summary>
    public static IEnumerable<CureLadder> OtherBuilds(RuleContext context, Finding finding)
    {
        var circuits = context.CircuitsNamed(finding);
        var known = finding.Builds.AllOf.Concat(circuits.SelectMany(c => c.OnlyWith.AllOf)).FirstOrDefault();
        var circuit = circuits.FirstOrDefault(c => c.OnlyWith.IsAlways);
        if (known is not null && circuit is not null && context.Harness.Options.FirstOrDefault(o => o.Id == known.Option) is { } option && option.Choices.Except(known.Choices).ToList() is { Count: > 0 } others)
        {
            ImmutableArray<string> fate = circuit is { EntersBy: not null, WhenNotFitted: null } ? [$"circuit.{circuit.Id}.when-not-fitted=remove"] : [];
            yield return new([new([$"circuit.{circuit.Id}.only-with={{ {CureText.Quoted(option.Id)}: {(others.Count == 1 ? CureText.Quoted(others[0]) : $"[{string.Join(", ", others.Select(CureText.Quoted))}]")} }}", .. fate], $"'{circuit.Id}' built with {option.Id} {string.Join(" or ", others)} only")]);
        }
    }

    /// <summary>The circuit from a fuse of the same side that is live with the key only.</summary>
    public static IEnumerable<CureLadder> SwitchedFeed(RuleContext context, Finding finding)
    {
        foreach (var circuit in context.CircuitsNamed(finding).Where(c => c.From is not null).Take(1))
        {
            var side = context.Thing(circuit.From!.Thing)?.Side;
            var switched = context.Harness.Circuits.Where(c => c is { LiveWith: KeyPosition.Run or KeyPosition.Accessory, IsReturn: false, From: not null } && context.Harness.Protections.Any(p => p.Id == c.From.Thing) && context.Thing(c.From.Thing)?.Side == side).DistinctBy(c => c.From!.Thing);
            yield return new([.. switched.Take(CureLadder.MostRungs).Select(c => new CureCandidate([$"circuit.{circuit.Id}.from={c.From!.Thing}", $"circuit.{circuit.Id}.live={CureText.Live(c)}"], $"'{circuit.Id}' from {c.From!.Thing}, which is live with the key"))]);
        }
    }
}
