using System.Collections.Immutable;
using System.Text;
using HarnessDraw.Model;
using HarnessDraw.Units;

namespace HarnessDraw.Writing.Imported;

/// <summary>A description and a layout from a wire list: every wire by hand with its own id, every thing at a place of its own whose way is still to be measured.</summary>
public static class ImportedDescription
{
    private const string Root = "start";

    // a gauge is a size of a family of its own: of the shipped catalogue the one that has gauges
    private const string GaugeWire = "awg-cross-linked-125";

    public static string Description(WireList list, string name, string layoutFile)
    {
        ArgumentNullException.ThrowIfNull(list);
        var text = new StringBuilder();
        Line(text, "# Made from a wire list. Wires stand as they were listed and are checked, never changed. What is still to be told:");
        Line(text, "# what each thing is (lamp, motor, ground ...), its plug, what feeds and protects it, and the ways in the layout.");
        Line(text, $"harness: {Quoted(name)}");
        Line(text, $"vehicle: {Quoted(name)}");
        Line(text, $"vehicle-layout: {Quoted(layoutFile)}");
        Line(text, "unknown-allowed: yes");
        var battery = Things(list).FirstOrDefault(t => Posts(t) is not null);
        var (supply, at, posts) = battery.Name is null ? ("supply battery", Root, ("plus", "minus")) : (Quoted(battery.Name), Quoted(battery.Name), Posts(battery)!.Value);
        Line(text, $"# assumed, as a list says nothing of it: {(battery.Name is null ? "a battery of" : $"{supply} has")} 12 V, negative ground, posts M8");
        Line(text, $"power: {{ ground: negative, returns-by: body, sources: {{ {supply}: {{ kind: battery, nominal: 12 V, at: {at}, posts: {{ {Quoted(posts.Item1)}: M8, {Quoted(posts.Item2)}: M8 }} }} }} }}");
        Line(text, "# kinds of things are those that their last words name, else load");
        Line(text, "things:");
        foreach (var thing in Things(list).Where(t => battery.Name is null || t.Name != battery.Name))
        {
            // the last word of a name says what it is; a stud of a starter takes a cable
            var kind = ThingName.Kind(thing.Name) is null ? "kind: load, " : "";
            var studs = ThingName.Kind(thing.Name) == ThingKind.Starter ? thing.Pins.Where(IsStarterStud).ToImmutableArray() : [];
            if (!studs.IsEmpty && !thing.IsWhole)
            {
                Line(text, $"  {Quoted(thing.Name)}: {{ at: {Quoted(thing.Name)}, studs: {{ {string.Join(", ", studs.Select(s => $"{Quoted(s)}: M8"))} }}{(studs.Length < thing.Pins.Length ? $", pins: [{string.Join(", ", thing.Pins.Except(studs).Select(Quoted))}]" : "")} }}");
                continue;
            }

            var pins = string.Join(", ", thing.Pins.Select(Quoted));
            Line(text, $"  {Quoted(thing.Name)}: {{ at: {Quoted(thing.Name)}, {(thing.Pins.IsEmpty ? "stud: M6" : thing.IsWhole ? $"{kind}pins: [{pins}, {Quoted(WholePin)}]" : $"{kind}pins: [{pins}]")} }}");
        }

        Line(text, "circuits:");
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var wire in list.Wires)
        {
            Line(text, $"  {Quoted(CircuitName(wire, names))}:");
            Line(text, $"    by-hand: [{{ wire: {Quoted(wire.Id)}, from: {End(list, wire.From)}, to: {End(list, wire.To)}{Given("size", wire.Size)}{Given("colour", wire.Colour)}{Given("cut", wire.LengthMm is { } mm ? $"{NumberText.Brief(mm)} mm" : null)} }}]");
            if (wire.Size?.EndsWith("AWG", StringComparison.Ordinal) == true)
            {
                Line(text, $"    wire-type: {GaugeWire} # assumed: a list says nothing of insulation");
            }
        }

        return text.ToString();
    }

    /// <summary>A layout with each thing's place on a way of unknown length from one start.</summary>
    public static string Layout(WireList list, string name)
    {
        ArgumentNullException.ThrowIfNull(list);
        var text = new StringBuilder();
        Line(text, "# Places have no position yet and ways no length: set 'at' (mm from the firewall, to the right, up), draw the real ways, measure them.");
        Line(text, $"vehicle-layout: {Quoted(name)}");
        Line(text, $"root: {Root}");
        Line(text, "places:");
        Line(text, $"  {Root}: {{ at: [0, 0, 0] }}");
        var things = Things(list);
        for (var i = 0; i < things.Length; i++)
        {
            Line(text, $"  {Quoted(things[i].Name)}: {{ at: [{300 + (200 * (i / 2))}, {(i % 2 == 0 ? -300 : 300)}, 0] }}");
        }

        Line(text, "paths:");
        foreach (var thing in things)
        {
            Line(text, $"  - {{ from: {Root}, to: {Quoted(thing.Name)}, measured: unknown }}");
        }

        return text.ToString();
    }

    private const string WholePin = "whole";

    private static string End(WireList list, ListedEnd end) =>
        Quoted(end.Pin is { } pin ? $"{end.Thing}.{pin}" : Things(list).First(t => t.Name == end.Thing) is { Pins.IsEmpty: false } ? $"{end.Thing}.{WholePin}" : end.Thing);

    private static ImmutableArray<(string Name, ImmutableArray<string> Pins, bool IsWhole)> Things(WireList list) =>
    [
        .. list.Wires.SelectMany(w => (ListedEnd[])[w.From, w.To]).GroupBy(e => e.Thing, StringComparer.Ordinal)
            .Select(g => (g.Key, g.Select(e => e.Pin).OfType<string>().Distinct(StringComparer.Ordinal).ToImmutableArray(), g.Any(e => e.Pin is null))),
    ];

    /// <summary>Plus and minus post of a thing that calls itself a battery; null where its pins do not say which is which.</summary>
    private static (string Plus, string Minus)? Posts((string Name, ImmutableArray<string> Pins, bool IsWhole) thing)
    {
        if (!thing.Name.Split(' ')[^1].Equals("battery", StringComparison.OrdinalIgnoreCase) || thing.IsWhole || thing.Pins.Length > 2)
        {
            return null;
        }

        var plus = thing.Pins.FirstOrDefault(p => p.ToLowerInvariant() is "+" or "plus" or "pos" or "positive" or "30" or "b+");
        var minus = thing.Pins.FirstOrDefault(p => p.ToLowerInvariant() is "-" or "minus" or "neg" or "negative" or "31" or "b-");
        return thing.Pins.Length == (plus is null ? 0 : 1) + (minus is null ? 0 : 1) ? (plus ?? "plus", minus ?? "minus") : null;
    }

    // DIN 72552: 30; B and B+ are common names of it
    private static bool IsStarterStud(string pin) => pin.ToUpperInvariant() is "B" or "B+" or "30" or "+";

    private static string CircuitName(ListedWire wire, HashSet<string> names)
    {
        var name = wire.Function is { } function && !names.Contains(function) ? function : wire.Function is { } shared ? $"{shared} {wire.Id}" : $"wire {wire.Id}";
        for (var n = 2; !names.Add(name); n++)
        {
            name = $"wire {wire.Id} {n}";
        }

        return name;
    }

    private static string Given(string key, string? value) => value is null ? "" : $", {key}: {Quoted(value)}";

    private static string Quoted(string text) => $"'{text.Replace("'", "''", StringComparison.Ordinal).ReplaceLineEndings(" ")}'";

    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');
}
