using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Network;

internal sealed class FloatingNet : IDesignRule
{
    public RuleInfo Info { get; } = new("floating-net", "Wires that hang on nothing", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "What no source, ground or kept wiring reaches has no volts that could be told, and does nothing.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var groups = new Groups();
        foreach (var thing in context.Harness.Things)
        {
            Join(groups, thing);
        }

        foreach (var fuse in context.Harness.Protections.Where(p => p.On is not null))
        {
            groups.Join(fuse.On!, $"{fuse.Id}.in");
        }

        foreach (var wire in context.Plan.Wires)
        {
            groups.Join(Node(context, wire.From), Node(context, wire.To));
        }

        return context.Plan.Wires.Where(w => context.Circuit(w.Circuit) is { Duty: not Duty.Signal } && !groups.IsHeld(Node(context, w.From)))
            .GroupBy(w => groups.Root(Node(context, w.From)), StringComparer.Ordinal)
            .Select(g => context.Found(Info, $"{Wording.List(g.Select(w => w.Named()))} {(g.Count() == 1 ? "hangs" : "hang")} on nothing: from {PointWords.Of(g.First().From)} on, no source, ground or kept wiring is reached by any way.",
                "Say where the circuit comes from, or leave it out.", [.. g.Select(w => w.Id)], g.First().Builds, context.AtOf(g.First())));
    }

    // loads, coils and open switches are ways too: what stands behind them is not lost
    private static void Join(Groups groups, Thing thing)
    {
        // what is inside a control unit or a machine is not told: all of its pins count as joined
        var holds = thing.Side == Side.Cabin || thing.Kind is ThingKind.GroundPoint or ThingKind.Mate or ThingKind.Inline or ThingKind.ControlUnit or ThingKind.Alternator or ThingKind.Converter or ThingKind.Battery;
        if (holds)
        {
            groups.Hold(thing.Id);
        }

        foreach (var pin in thing.Pins.Where(_ => holds || thing.Kind is ThingKind.BusBar or ThingKind.Stud or ThingKind.FusePanel))
        {
            groups.Join(thing.Id, $"{thing.Id}.{pin.Name}");
        }

        foreach (var element in thing.Elements)
        {
            if (element.PinB is { } far)
            {
                groups.Join($"{thing.Id}.{element.PinA}", $"{thing.Id}.{far}");
            }

            if (element.Kind == ElementKind.Source || element.PinB is null)
            {
                groups.Hold($"{thing.Id}.{element.PinA}");
            }
        }
    }

    private static string Node(RuleContext context, WireEnd end) => end.Pin is null || context.Thing(end.At)?.Kind is ThingKind.Mate or ThingKind.Inline ? end.At : end.ToString();

    /// <summary>Nodes joined by anything at all, and which groups a source, the ground or the kept cabin holds.</summary>
    private sealed class Groups
    {
        private readonly Dictionary<string, string> above = new(StringComparer.Ordinal);
        private readonly HashSet<string> held = new(StringComparer.Ordinal);

        public string Root(string node)
        {
            while (above.TryGetValue(node, out var next))
            {
                node = next;
            }

            return node;
        }

        public void Join(string a, string b)
        {
            var (x, y) = (Root(a), Root(b));
            if (x != y)
            {
                above[y] = x;
                if (held.Contains(y))
                {
                    held.Add(x);
                }
            }
        }

        public void Hold(string node) => held.Add(Root(node));

        public bool IsHeld(string node) => held.Contains(Root(node));
    }
}
