using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>The cautions of the wall chart: those that apply to this harness. Common practice of the trade, our own wording.</summary>
internal static class WallChartTexts
{
    /// <summary>The first three stand in a red box with a headline.</summary>
    public static ImmutableArray<(string Headline, string Sentence)> Boxed(Plan plan)
    {
        var live = plan.Harness.Power.Ground == GroundPolarity.Negative ? "negative" : "positive";
        var unfused = WiresOf(plan, c => c.UnfusedBecause is not null);
        return
        [
            ("BATTERY OFF FIRST", $"Ground lead ({live}) off first and on last. Keep the lead from springing back; rings and watch off."),
            ("NEVER A LARGER FUSE", "A fuse protects the wire. Find the fault before you fit another of the same rating."),
            unfused.Count > 0
                ? ($"{Names(unfused).ToUpperInvariant()} NOT FUSED", "Short, sleeved, booted and clear of edges up to the first fuse.")
                : ($"{live.ToUpperInvariant()} GROUND ONLY", "The wrong polarity destroys the alternator at once."),
        ];
    }

    private static List<string> WiresOf(Plan plan, Func<Circuit, bool> wanted)
    {
        var circuits = plan.Harness.Circuits.Where(wanted).Select(c => c.Id).ToHashSet(StringComparer.Ordinal);
        return [.. plan.Wires.Where(w => circuits.Contains(w.Circuit)).Select(w => w.Id)];
    }

    private static string Names(List<string> ids) => ids.Count <= 3 ? string.Join(", ", ids) : $"{ids[0]}, {ids[1]} and {ids.Count - 2} more";

    /// <summary>Further cautions, numbered from 4.</summary>
    public static ImmutableArray<string> Further(Plan plan)
    {
        var list = ImmutableArray.CreateBuilder<string>();
        var triggers = WiresOf(plan, c => c.TriggersOnly);
        if (triggers.Count > 0)
        {
            list.Add(triggers.Count == 1 ? $"{triggers[0]} works a relay coil only. Never feed a motor from it." : $"{Names(triggers)} work a relay coil only. Never feed a motor from them.");
        }

        if (!plan.Harness.Options.IsEmpty)
        {
            list.Add("Unused wires: remove them from the cavity, or cap and tie them. A cut wire may still be live.");
        }

        if (plan.Harness.Things.Any(t => t.Kind == ThingKind.Mate && plan.Harness.Catalogue.Connectors.Any(c => c.Id == t.ConnectorPart && c.CentreBolt)))
        {
            list.Add("Connector bolt: hand tools, maker's torque. Do not pull crossed halves together with it.");
        }

        list.Add("Grounds: bare metal to bare metal, tight, then protect. Fit the engine strap before cranking.");
        list.Add($"Clear of exhaust, steering, fan, belts and fuel lines. {(plan.Harness.Power.Ground == GroundPolarity.Negative ? "NEGATIVE" : "POSITIVE")} ground only.");
        list.Add("Lengths marked E are estimates: check them on the vehicle. Local codes and a licensed tradesman have the last word.");
        return list.ToImmutable();
    }

    public static ImmutableArray<string> Waivers(Plan plan) =>
        [.. plan.Harness.Waivers.Select(w => $"{w.Rule}{(w.For.IsEmpty ? "" : " for " + string.Join(", ", w.For))}: {w.Because} ({w.By}, {w.On})")];
}
