using HarnessDraw.Checking;

namespace HarnessDraw.Tests.Checking;

/// <summary>
/// The trade's rules of protection, heat and drop, connectors, grounds and particular circuits, each with the design rules that hold it; that
/// each of these is broken by one plan and left alone by another is what <see cref="RuleTests"/> holds.
/// </summary>
public class NumberedRuleTests
{
    public static TheoryData<string, string> Rules { get; } = new()
    {
        // options that change a fuse's load
        { "load or fuse changes with an option", "fuse-load-with-option" },
        // sources and protection
        { "every power path meets protection within the limit", "unfused-too-long" },
        { "wire between two sources protected at both ends", "sources-joined-unfused" },
        { "fuse at most the smallest wire behind it", "fuse-above-wire" },
        { "fuse at most the smallest contact, switch, splice, holder behind it", "fuse-above-contact" },
        { "continuous load on a fuse", "fuse-load-high" },
        { "load over the fuse rating", "fuse-overloaded" },
        { "worst state of a fuse", "fuse-state-sum" },
        { "inrush against the fuse", "inrush-opens-fuse" },
        { "short-circuit current at the far end", "short-will-not-open-fuse" },
        { "let-through against the wire", "short-burns-wire" },
        { "branch fuse opens before the main", "fuses-not-selective" },
        { "alternator fuse against its output", "alternator-fuse-small" },
        { "fusible link: size and length", "fusible-link-size" },
        { "fusible link: outside the cabin", "fusible-link-in-cabin" },
        { "fuse family has the rating and the volts", "no-such-fuse-rating" },
        { "one fuse for both lamps", "shared-lamp-fuse" },
        { "critical and nuisance loads on one fuse", "critical-with-nuisance" },
        { "senders apart from motors", "instruments-with-motor" },
        { "fuse has a place", "fuse-place-unknown" },
        { "unfused leads are guarded", "unfused-lead-unguarded" },
        // wire size, heat and drop
        { "load within the derated ampacity", "wire-overloaded" },
        { "returns get the same test", "return-overloaded" },
        { "loop drop, scaled with the system's volts", "loop-drop" },
        { "charge lead at full output", "charge-lead-drop" },
        { "starter loop; battery cable against the crank current", "starter-loop-drop" },
        { "volts left while cranking", "cranking-sag" },
        { "least mechanical size", "wire-too-thin" },
        { "wire against the crimp range", "outside-crimp-range" },
        { "insulation class against the zone", "insulation-below-zone" },
        { "PVC in the place of cross-linked", "cross-linked-replaced" },
        { "insulation against fluids", "cross-linked-in-fuel" },
        { "gauge against area", "gauge-not-its-area" },
        { "two sizes in one run without protection", "size-steps-down" },
        { "parallel conductors", "parallel-wires" },
        // connectors, contacts and cavities
        { "two wires in a cavity", "two-wires-in-cavity" },
        { "two wires in a terminal", "two-wires-on-blade" },
        { "nets agree across a mated pair", "net-differs-across-mate" },
        { "mirrored pin map", "mirrored-pin-map" },
        { "colour changes at the firewall", "colour-changes-at-firewall" },
        { "wire in the wrong half", "wrong-half" },
        { "contact current", "contact-overloaded" },
        { "loaded neighbours", "loaded-neighbours" },
        { "firewall passes", "firewall-passes" },
        { "always live beside a sender", "live-beside-sender" },
        { "left beside right", "left-beside-right" },
        { "two voltages in a connector", "mixed-volts-in-connector" },
        { "terminal family", "foreign-terminal" },
        { "insulation support", "insulation-unsupported" },
        { "seal against insulation", "seal-does-not-grip" },
        { "unused cavity has a plug", "cavity-unplugged" },
        { "plugs that can be swapped", "plugs-swappable" },
        { "live half is the socket half", "live-pins-bare" },
        { "positions of a connector", "more-wires-than-cavities" },
        { "reserve positions", "no-reserve" },
        { "ring and stud", "ring-not-its-stud" },
        { "rings on a stud", "rings-per-stud" },
        { "torque known", "torque-not-given" },
        { "grease and sealant named", "sealant-not-named" },
        // grounds and returns
        { "every load has a return", "no-return" },
        { "return through what does not conduct", "return-through-non-metal" },
        { "engine, body and battery bonded", "battery-not-bonded" },
        { "strap against the largest feed", "strap-small" },
        { "rings of a ground point", "ground-crowded" },
        { "back-feed through an open ground", "ground-back-feed" },
        { "sender returns apart from power", "sender-shares-return" },
        { "screen grounded at one end", "screen-not-grounded" },
        { "finish at a ground", "ground-finish-missing" },
        // particular circuits
        { "trigger never powers a load", "trigger-feeds-load" },
        { "coil within the switch's or sender's contact", "coil-above-contact" },
        { "relay contact against its load", "relay-contact-overloaded" },
        { "suppression across coils", "coil-unsuppressed" },
        { "polarity of a diode across a coil", "diode-reversed" },
        { "run-on through the exciter", "exciter-run-on" },
        { "exciter current", "exciter-current-low" },
        { "single-wire alternator keeps no exciter", "one-wire-keeps-exciter" },
        { "ballast and start by-pass", "coil-ballast" },
        { "ammeter against the output", "ammeter-below-output" },
        { "thermal flasher and its lamps", "flasher-underloaded" },
        { "headlamps through the dash switch", "headlamps-through-switch" },
        { "brake warning proves itself", "brake-warning-unproved" },
        { "horn's live end", "live-end-unguarded" },
        { "blower variants exclude each other", "motor-fed-twice" },
        { "sender grounded by its thread", "sender-by-its-thread" },
        { "signal beside charge lead or ignition leads", "signal-beside-charge-lead" },
        { "start interlock", "interlock-bypassed" },
        { "key-off drain", "key-off-drain" },
        { "green and yellow", "green-yellow-used" },
        { "positive ground", "positive-ground-alternator" },
    };

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_rule_of_the_trade_has_a_design_rule_with_a_case_that_breaks_it(string trade, string rule)
    {
        Assert.NotNull(RuleCatalogue.Info(rule));
        Assert.True(RuleTests.Cases.Any(c => c.Rule == rule), trade);
    }
}
