using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

/// <summary>Ignition coils with a start by-pass but no ballast, or made for less than their circuit's volts without one.</summary>
internal sealed class CoilBallast : IDesignRule
{
    public RuleInfo Info { get; } = new("coil-ballast", "Ballast and start by-pass of an ignition coil do not belong together", Severity.Warning, Consequence.Damage, "common practice, no source",
        "A coil made for a ballast burns without one; a by-pass round no ballast feeds the start terminal back when the engine runs.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var coil in context.Harness.Things.Where(IgnitionOffWhileTurning.IsIgnitionCoil))
        {
            foreach (var element in coil.Elements.Where(e => e.Kind == ElementKind.Coil))
            {
                var feeds = context.Harness.Circuits.Where(c => !c.IsReturn && c.Feeds.Any(f => f.Thing == coil.Id && (f.Pin ?? element.PinA) == element.PinA)).ToList();
                var bypass = feeds.Where(c => c.LiveWith == KeyPosition.Start).ToList();
                var run = feeds.Except(bypass).ToList();
                var ballast = run.Any(c => c.From is { } from && context.Thing(from.Thing) is { } t && IsBallast(t));
                if (bypass.Count > 0 && run.Count > 0 && !ballast)
                {
                    yield return context.Found(Info, $"{bypass[0].Id} by-passes a ballast that is not in {run[0].Id}, the feed of {coil.Id}.", "Put the ballast into the run feed, or leave the by-pass out.", [coil.Id, bypass[0].Id, run[0].Id], bypass[0].OnlyWith, bypass[0].At);
                }

                if (run.Count > 0 && !ballast && element.NominalV is { } made && made < run[0].NominalV)
                {
                    yield return context.Found(Info, $"{coil.Id} is made for {Figure.Volts(made)} and hangs on {Figure.Volts(run[0].NominalV)} ({run[0].Id}) with no ballast before it: it takes {Figure.Number(Math.Round(run[0].NominalV * run[0].NominalV / (made * made), 1))} times its heat.", "Put its ballast into the feed, or fit a coil for the full volts.", [coil.Id, run[0].Id], run[0].OnlyWith, coil.At);
                }
            }
        }
    }

    private static bool IsBallast(Thing thing) =>
        thing.Id.Contains("ballast", StringComparison.OrdinalIgnoreCase) || thing.Elements.Any(e => e is { Kind: ElementKind.Heater, ResistanceOhm: > 0, PinB: not null });
}
