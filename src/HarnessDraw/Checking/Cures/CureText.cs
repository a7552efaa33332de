using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Cures;

/// <summary>Pieces of a description as cures write them, and what a finding names.</summary>
internal static class CureText
{
    /// <summary>A name as a YAML scalar inside brackets or braces.</summary>
    public static string Quoted(string name) => $"'{name.Replace("'", "''", StringComparison.Ordinal)}'";

    public static string Pins(IEnumerable<PinRef> pins) => string.Join(", ", pins.Select(p => Quoted(p.ToString())));

    public static string Size(WireSize size) => size.Awg is null ? $"{size.Label} mm2" : size.Label;

    /// <summary>The word for the key position a circuit is live from.</summary>
    public static string Live(Circuit circuit) => circuit.LiveWith switch { KeyPosition.Off => "always", KeyPosition.Accessory => "accessory", KeyPosition.Start => "start", _ => "run" };

    /// <summary>The size that was given for the circuit, for those that carry its current further.</summary>
    public static string SizeGiven(RuleContext context, Circuit circuit) => circuit.AreaMm2 is not null && context.WiresOf(circuit.Id).FirstOrDefault() is { } wire && context.SizeOf(wire) is { } size ? $", size: {Size(size)}" : "";

    /// <summary>What a second circuit of the same job has as the first has it: mate, half, duty, importance, key position.</summary>
    public static string Rest(Circuit circuit) => string.Concat(
        circuit.EntersBy is { } mate ? $", enters-by: {Quoted(mate)}" : "", circuit.Half is { } half ? $", half: {Quoted(half)}" : "",
        circuit.Duty is Duty.Intermittent or Duty.Momentary ? $", duty: {(circuit.Duty == Duty.Momentary ? "momentary" : "intermittent")}" : "", circuit.Importance == Importance.Critical ? ", importance: critical" : "", $", live: {Live(circuit)}");

    /// <summary>The wires that a finding names, else those of the circuits that it names.</summary>
    public static List<Wire> WiresNamed(this RuleContext context, Finding finding)
    {
        var named = finding.Where.Select(context.Wire).OfType<Wire>().ToList();
        return named.Count > 0 ? named : [.. finding.Where.Select(context.Circuit).OfType<Circuit>().SelectMany(c => context.WiresOf(c.Id))];
    }

    /// <summary>The circuits that a finding names, else those of the wires that it names.</summary>
    public static List<Circuit> CircuitsNamed(this RuleContext context, Finding finding)
    {
        var named = finding.Where.Select(context.Circuit).OfType<Circuit>().ToList();
        return named.Count > 0 ? named : [.. finding.Where.Select(context.Wire).OfType<Wire>().Select(w => context.Circuit(w.Circuit)).OfType<Circuit>().Distinct()];
    }

    /// <summary>The things that a finding names.</summary>
    public static IEnumerable<Thing> ThingsNamed(this RuleContext context, Finding finding) => finding.Where.Select(context.Thing).OfType<Thing>();
}
