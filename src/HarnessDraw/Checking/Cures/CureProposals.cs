using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Cures;

/// <summary>
/// What might cure a finding, by its rule: wires of the next sizes, fuses of the next ratings, another class of wire, a heavier relay, a larger cavity. These are
/// proposals only; whether one cures is for the plan with it to show.
/// </summary>
public static class CureProposals
{
    private static readonly ImmutableSortedDictionary<string, ImmutableArray<Func<RuleContext, Finding, IEnumerable<CureLadder>>>> ByRule = Table();

    /// <summary>Rules whose findings have proposals.</summary>
    public static IEnumerable<string> Rules => ByRule.Keys;

    /// <summary>Ladders to try, the likeliest first; none when the rule's cure is no change of a figure.</summary>
    public static ImmutableArray<CureLadder> Of(Plan plan, RuleSettings settings, Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        var context = new RuleContext(plan, settings);
        return ByRule.TryGetValue(finding.Rule, out var kinds) ? [.. kinds.SelectMany(k => k(context, finding)).Where(l => !l.Rungs.IsEmpty)] : [];
    }

    private static ImmutableSortedDictionary<string, ImmutableArray<Func<RuleContext, Finding, IEnumerable<CureLadder>>>> Table()
    {
        var table = ImmutableSortedDictionary.CreateBuilder<string, ImmutableArray<Func<RuleContext, Finding, IEnumerable<CureLadder>>>>(StringComparer.Ordinal);
        void Add(string rules, params Func<RuleContext, Finding, IEnumerable<CureLadder>>[] kinds)
        {
            foreach (var rule in rules.Split(' '))
            {
                table.Add(rule, [.. kinds]);
            }
        }

        // a larger wire brings a terminal that carries more
        Add("fuse-above-wire short-burns-wire", FuseCures.SmallerFuse, WireCures.LargerForFuse);
        Add("fuse-above-contact", FuseCures.SmallerFuse, CavityCures.Larger, WireCures.LargerForFuse);
        Add("short-will-not-open-fuse", FuseCures.SmallerFuse, WireCures.LargerForFuse, WireCures.ShorterRun);
        Add("fuse-load-high fuse-overloaded fuse-state-sum fuse-load-with-option inrush-opens-fuse alternator-fuse-small", FuseCures.LargerFuse);
        Add("no-such-fuse-rating", FuseCures.SmallerFuse, FuseCures.LargerFuse, FuseCures.BoltIn);
        Add("fuses-not-selective", FuseCures.LargerFuse, FuseCures.SmallerFuse);
        Add("fusible-link-size", FuseCures.Link);
        Add("fusible-link-in-cabin", FuseCures.NoLink);
        Add("unfused-too-long", FuseCures.AtTheSource);
        Add("sources-joined-unfused", FuseCures.AtBothEnds);
        Add("shared-lamp-fuse", FuseCures.OneASide);
        Add("critical-with-nuisance", FuseCures.OfItsOwn);

        Add("wire-overloaded return-overloaded", WireCures.LargerWire, WireCures.HotterWire);
        Add("loop-drop", WireCures.LargerWire, WayCures.RelayAtTheLoad, WireCures.ShorterRun);
        Add("charge-lead-drop starter-loop-drop", WireCures.LargerWire, WireCures.ShorterRun);
        Add("cranking-sag", PartCures.StifferBattery, WireCures.LargerWire);
        Add("strap-small wire-too-thin size-steps-down", WireCures.LargerWire);
        Add("no-size-large-enough", FuseCures.SmallerFuse, WireCures.HotterWire);
        Add("insulation-below-zone cross-linked-replaced", WireCures.HotterWire);
        Add("cross-linked-in-fuel", WireCures.NotCrossLinked);
        // no wire is thinned to suit a terminal, and to suit a seal only as far as its own rules allow
        Add("insulation-unsupported", WireCures.AnotherType);
        Add("seal-does-not-grip", WireCures.AnotherType, WireCures.SmallerWire);
        Add("no-terminal-fits outside-crimp-range", FuseCures.SmallerFuse, WireCures.WireForTerminal);
        Add("fuse-far-above-load", FuseCures.SmallerFuse);
        Add("two-wires-on-blade", WireCures.LargerWire);
        Add("size-not-in-catalogue", WireCures.TypeWithSize, WireCures.SizeOfType);

        Add("contact-overloaded", CavityCures.Larger, WayCures.RelayAtTheLoad);
        Add("loaded-neighbours live-beside-sender left-beside-right keep-apart-broken two-wires-in-cavity", CavityCures.Free);
        Add("wrong-half", CavityCures.OwnHalf);
        Add("net-differs-across-mate", CavityCures.AsKept);
        Add("more-wires-than-cavities no-reserve no-cavity", CavityCures.LargerMate);
        Add("live-pins-bare", CavityCures.Sockets);
        Add("colour-changes-at-firewall", WireCures.KeptColour);

        Add("no-return", GroundCures.Return);
        Add("return-through-non-metal", GroundCures.OnMetal);
        Add("battery-not-bonded", GroundCures.Bond);
        Add("ground-crowded", GroundCures.Split);
        Add("ground-back-feed", GroundCures.Link);

        Add("trigger-feeds-load headlamps-through-switch", WayCures.RelayAtTheLoad);
        Add("relay-contact-overloaded", PartCures.HeavierRelay);
        Add("coil-above-contact", PartCures.HeavierContact, WayCures.RelayAtTheLoad);
        Add("ammeter-below-output", PartCures.HeavierContact);
        Add("coil-unsuppressed", PartCures.Suppressed);
        Add("diode-reversed", PartCures.DiodeTurned);
        Add("exciter-run-on", WayCures.ExciterDiode);
        Add("exciter-current-low", PartCures.HeavierLamp);
        Add("one-wire-keeps-exciter motor-fed-twice", WayCures.OtherBuilds);
        Add("flasher-underloaded", PartCures.FilamentLamps);
        Add("signal-beside-charge-lead", WireCures.Twisted);
        Add("key-off-drain", WayCures.SwitchedFeed);
        Add("green-yellow-used", WireCures.AnotherTracer);
        return table.ToImmutable();
    }
}
