using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tracing;

/// <summary>A step current can take between two points, either way round.</summary>
internal sealed record Step(string A, string B, HopKind Kind, string Words)
{
    public Wire? Wire { get; init; }

    public string Other(string node) => node == A ? B : A;
}

/// <summary>
/// Every point of a plan and the steps between them: wires, fuses, contacts, links, kept cabin wiring, the body. Loads are no steps: a way passes through
/// exactly one, and that is the one it is asked for.
/// </summary>
internal sealed class CurrentGraph
{
    public const string Body = "body";
    private readonly Dictionary<string, List<Step>> steps = new(StringComparer.Ordinal);

    public CurrentGraph(Plan plan)
    {
        AddWires(plan);
        AddElements(plan.Harness);
        AddSeats(plan.Harness);
        AddKeptWiring(plan);
        AddBody(plan.Harness);
    }

    public static bool IsLoad(Element element) =>
        element.Kind is ElementKind.Lamp or ElementKind.Motor or ElementKind.Heater or ElementKind.Coil or ElementKind.Sender or ElementKind.Electronic;

    public static string Node(string thing, string pin) => $"{thing}.{pin}";

    /// <summary>The shortest way (in steps; ties by ordinal name) or null.</summary>
    public List<Step>? Way(string from, Func<string, bool> isEnd)
    {
        var cameBy = new Dictionary<string, (string From, Step Step)?>(StringComparer.Ordinal) { [from] = null };
        var queue = new Queue<string>([from]);
        while (queue.TryDequeue(out var at))
        {
            if (isEnd(at))
            {
                return Unwind(cameBy, at);
            }

            foreach (var step in StepsAt(at).OrderBy(s => s.Other(at), StringComparer.Ordinal).ThenBy(s => s.Words, StringComparer.Ordinal))
            {
                if (cameBy.TryAdd(step.Other(at), (at, step)))
                {
                    queue.Enqueue(step.Other(at));
                }
            }
        }

        return null;
    }

    private static List<Step> Unwind(Dictionary<string, (string From, Step Step)?> cameBy, string end)
    {
        List<Step> way = [];
        for (var at = end; cameBy[at] is { } by; at = by.From)
        {
            way.Add(by.Step);
        }

        way.Reverse();
        return way;
    }

    private List<Step> StepsAt(string node) => steps.TryGetValue(node, out var found) ? found : [];

    private void Add(Step step)
    {
        foreach (var node in new[] { step.A, step.B })
        {
            if (!steps.TryGetValue(node, out var list))
            {
                steps[node] = list = [];
            }

            list.Add(step);
        }
    }

    private void AddWires(Plan plan)
    {
        foreach (var wire in plan.Wires)
        {
            Add(new(wire.From.ToString(), wire.To.ToString(), HopKind.Wire, wire.Id) { Wire = wire });
        }
    }

    private void AddElements(Harness harness)
    {
        foreach (var thing in harness.Things)
        {
            foreach (var element in thing.Elements)
            {
                HopKind? kind = element.Kind switch
                {
                    ElementKind.Fuse => HopKind.Fuse,
                    ElementKind.Contact => HopKind.Contact,
                    ElementKind.Link => HopKind.Link,
                    ElementKind.Diode => HopKind.Diode,
                    _ => null,
                };
                if (kind is { } passes)
                {
                    var other = element.PinB is { } pin ? Node(thing.Id, pin) : Body;
                    Add(new(Node(thing.Id, element.PinA), other, passes, ElementWords.Of(thing, element)));
                }
            }
        }
    }

    // a fuse that sits on a bar is fed by the bar's nearest stud
    private void AddSeats(Harness harness)
    {
        foreach (var fuse in harness.Protections.Where(p => p.On is not null))
        {
            if (harness.Things.FirstOrDefault(t => t.Id == fuse.On) is { Pins.IsEmpty: false } seat)
            {
                foreach (var pin in seat.Pins)
                {
                    Add(new(Node(seat.Id, pin.Name), Node(fuse.Id, "in"), HopKind.Link, $"{fuse.Id} sits on {seat.Id}"));
                }
            }
        }
    }

    private void AddKeptWiring(Plan plan)
    {
        var harness = plan.Harness;
        var wired = plan.Wires.SelectMany(w => new[] { w.From.ToString(), w.To.ToString() }).ToHashSet(StringComparer.Ordinal);
        foreach (var (mate, cavity, wire) in MateEnds(plan).Distinct())
        {
            var node = Node(mate, cavity);
            var kept = harness.Kept.FirstOrDefault(k => k.Connector == mate && k.Cavity == cavity);
            var circuit = harness.Circuits.FirstOrDefault(c => c.Id == wire.Circuit);
            if (kept?.ComesFrom is { } from)
            {
                var through = kept.Through.IsEmpty ? "" : $" through {string.Join(", ", kept.Through)}";
                Add(new(node, FeedNode(harness, from), HopKind.Kept, $"kept cabin wiring{through}"));
            }
            else if (circuit is not null)
            {
                // the planned wires are those of the bay: the circuit's pins in the cabin lie beyond the mate
                foreach (var pin in CabinPins(harness, circuit).Where(p => !wired.Contains(p)))
                {
                    Add(new(node, pin, HopKind.Kept, "kept cabin wiring"));
                }
            }
        }

        foreach (var circuit in harness.KeptCircuits())
        {
            foreach (var feed in circuit.Feeds)
            {
                Add(new(FeedNode(harness, circuit.From!.ToString()), FeedNode(harness, feed.ToString()), HopKind.Kept, $"kept cabin wiring ({circuit.Id})"));
            }
        }
    }

    private void AddBody(Harness harness)
    {
        if (harness.Power.Returns != ReturnPath.Body)
        {
            return;
        }

        var index = new HarnessIndex(harness);
        foreach (var thing in harness.Things)
        {
            foreach (var pin in index.SelfGrounded(thing))
            {
                Add(new(Node(thing.Id, pin), Body, HopKind.Body, "metal of the vehicle"));
            }
        }

        foreach (var ground in harness.Things.Where(t => t.Kind == ThingKind.GroundPoint))
        {
            foreach (var pin in ground.Pins)
            {
                Add(new(Node(ground.Id, pin.Name), Body, HopKind.Body, "metal of the vehicle"));
            }
        }
    }

    private static IEnumerable<(string Mate, string Cavity, Wire Wire)> MateEnds(Plan plan)
    {
        var mates = plan.Harness.Things.Where(t => t.Kind == ThingKind.Mate).Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        return from wire in plan.Wires
               from end in new[] { wire.From, wire.To }
               where end.Pin is not null && mates.Contains(end.At)
               select (end.At, end.Pin, wire);
    }

    private static IEnumerable<string> CabinPins(Harness harness, Circuit circuit) =>
        from pin in circuit.From is { } first ? circuit.Feeds.Prepend(first) : circuit.Feeds
        where pin.Pin is not null && harness.Things.Any(t => t.Id == pin.Thing && t.Side == Side.Cabin && t.Kind != ThingKind.Mate)
        select pin.ToString();

    // 'F7' means the way out of the fuse; 'ignition switch.15' is a pin already
    private static string FeedNode(Harness harness, string comesFrom)
    {
        if (harness.Protections.Any(p => p.Id == comesFrom))
        {
            return Node(comesFrom, "out");
        }

        var thing = harness.Things.FirstOrDefault(t => t.Id == comesFrom);
        return thing is { Pins.IsEmpty: false } ? Node(comesFrom, thing.Pins[0].Name) : comesFrom;
    }
}
