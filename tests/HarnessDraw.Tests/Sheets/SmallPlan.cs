using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Model;

namespace HarnessDraw.Tests.Sheets;

/// <summary>
/// A plan of <see cref="SmallHarness"/> laid down by simple rules (cavities in order, a splice at every fork, volts by a plain formula), so that sheets and files have
/// something to show that no planner decides.
/// </summary>
public static class SmallPlan
{
    public static Plan Plan { get; } = Of(SmallHarness.Harness);

    public static Plan Of(Harness harness)
    {
        var laid = new Laying(harness);
        foreach (var net in harness.Nets)
        {
            laid.AddNet(net);
        }

        laid.AddReturns();
        return laid.ToPlan();
    }

    /// <summary>The plan with one wire changed.</summary>
    public static Plan With(Plan plan, string wire, Func<Wire, Wire> change) =>
        plan with { Wires = [.. plan.Wires.Select(w => w.Id == wire ? change(w) : w)] };

    private sealed class Laying(Harness harness)
    {
        private readonly List<Wire> wires = [];
        private readonly List<Splice> splices = [];
        private readonly List<CavityUse> cavities = [];
        private readonly Dictionary<char, int> counters = [];

        public void AddNet(Net net)
        {
            var circuit = harness.CircuitOf(net.Circuit);
            var letter = net.Root.Thing == "firewall" || net.Ends.Any(e => e.Thing == "firewall") ? (circuit.Half == "B" ? 'F' : 'E') : 'P';
            var root = EndOf(Cavity(net.Root, circuit));
            if (net.Ends.Length == 1)
            {
                AddWire(letter, net, root, EndOf(Cavity(net.Ends[0], circuit)), 2.5);
                return;
            }

            var splice = $"SP{splices.Count + 1}";
            var middle = new WireEnd(splice, null) { IsSplice = true, StripMm = 7.5 };
            List<string> joined = [AddWire(letter, net, root, middle, 2.5)];
            joined.AddRange(net.Ends.Select(e => AddWire(letter, net, middle, EndOf(e), 1.5)));
            splices.Add(new() { Id = splice, Circuit = net.Circuit, Net = net.Id, Segment = "S1", AtMm = 120, StationMm = 120, Wires = [.. joined], Part = "splice-10" });
        }

        public void AddReturns()
        {
            foreach (var (thing, pin) in harness.Things.SelectMany(t => t.Returns.Select(r => (t, r))))
            {
                var ground = pin.To ?? (thing.SideMark == "R" ? "ground right" : "ground left");
                var net = new Net { Id = $"{thing.Id} return", Circuit = $"{thing.Id} return", Root = new(ground, "stud"), Ends = [new(thing.Id, pin.Pin)] };
                AddWire('F', net, EndOf(new PinRef(thing.Id, pin.Pin)), EndOf(net.Root), 2.5);
            }
        }

        public Plan ToPlan() => new()
        {
            Harness = harness,
            Tree = new("pass-through", [.. Segments()]),
            Wires = [.. wires],
            Splices = [.. splices],
            Cavities = [.. cavities, .. Spares()],
            Fuses = [.. harness.Protections.Select(p => new FuseChoice { Id = p.Id, Kind = p.Kind, RatingA = p.RatingA ?? 60, LargestA = 80, Wires = [.. wires.Where(w => w.ProtectedBy.Contains(p.Id)).Select(w => w.Id)], LoadA = 20 })],
            Nodes = [.. NodeIds().Select(id => new NodeVolts(id, harness.States.ToImmutableSortedDictionary(s => s.Id, s => Volts(id, s), StringComparer.Ordinal)))],
            Builds = [ImmutableSortedDictionary<string, string>.Empty.Add("charging", "exciter"), ImmutableSortedDictionary<string, string>.Empty.Add("charging", "single wire")],
            BuildCount = 2,
            PlanningFindings = [],
            RoutingObjective = "laid by hand",
        };

        private string AddWire(char letter, Net net, WireEnd from, WireEnd to, double area)
        {
            var number = counters[letter] = counters.GetValueOrDefault(letter) + 1;
            var id = $"{letter}{number:00}";
            var circuit = harness.Circuits.FirstOrDefault(c => c.Id == net.Circuit);
            double pathMm = 400 + (wires.Count * 137.3);
            wires.Add(new()
            {
                Id = id,
                Circuit = net.Circuit,
                Net = net.Id,
                From = from,
                To = to,
                Colour = circuit?.Colour ?? "BK",
                WireType = "thin-wall",
                AreaMm2 = area,
                SizeLabel = $"{area}",
                OutsideMm = 3,
                PathLengthMm = pathMm,
                Allowances = [new("dress", 60), new("strip", 14)],
                CutLengthMm = Math.Ceiling((pathMm + 74) / 10) * 10,
                Segments = ["S1"],
                Builds = net.OnlyWith,
                Worst = new("night", 8.6, 0.21, 61),
                AmpacityA = 24,
                ProtectedBy = circuit?.ProtectedBy ?? [],
                DecidedBy = "voltage drop",
                RunnerUp = "1.5 mm2: 0.41 V of 0.36 V",
                Margin = 0.12,
            });
            foreach (var end in new[] { from, to }.Where(e => !e.IsSplice && harness.ThingOf(e.At).ConnectorPart is not null))
            {
                cavities.Add(new() { Connector = end.At, Cavity = end.Pin!, Wire = id, Builds = net.OnlyWith, Why = "in order" });
            }

            return id;
        }

        private PinRef Cavity(PinRef pin, Circuit circuit) => pin.Pin is not null || harness.ThingOf(pin.Thing).Kind != ThingKind.Mate ? pin
            : new(pin.Thing, harness.Kept.FirstOrDefault(k => k.ComesFrom == circuit.From?.Thing)?.Cavity ?? Free(circuit.Half));

        private string Free(string? half) => harness.ThingOf("firewall").Pins
            .First(p => p.Half == half && cavities.All(c => c.Cavity != p.Name) && harness.Kept.All(k => k.Cavity != p.Name)).Name;

        private WireEnd EndOf(PinRef pin) => new(pin.Thing, pin.Pin ?? "1") { Terminal = "blade-6.3-l", StripMm = 5.5 };

        private IEnumerable<CavityUse> Spares() =>
            from thing in harness.Things
            let part = harness.Catalogue.Connectors.FirstOrDefault(c => c.Id == thing.ConnectorPart)
            where part is not null
            from cavity in part.Cavities
            where cavities.All(c => c.Connector != thing.Id || c.Cavity != cavity.Name)
            select new CavityUse { Connector = thing.Id, Cavity = cavity.Name, Plug = part.IsBulkhead ? $"plug-{cavity.Size}" : null };

        private IEnumerable<Segment> Segments() => harness.Layout.Paths.Take(6).Select((p, i) => new Segment
        {
            Id = $"S{i + 1}",
            From = p.From,
            To = p.To,
            LengthMm = p.LengthMm,
            DiameterMm = 14.2,
            Covering = "tape",
            Wires = i == 0 ? [.. wires.Select(w => w.Id)] : [],
        });

        private IEnumerable<string> NodeIds() => wires.SelectMany(w => new[] { w.From.ToString(), w.To.ToString() }).Distinct().Order(StringComparer.Ordinal);

        // live with the key off up to the bolt-in fuses, live with it on up to the loads, near nothing behind them
        private static double? Volts(string node, OperatingState state)
        {
            if (node.StartsWith("ground", StringComparison.Ordinal) || node.StartsWith("engine ground", StringComparison.Ordinal) || node == "main battery.minus")
            {
                return 0;
            }

            string[] behindLoads = ["headlamp left.31", "headlamp right.31", "horn.2", "fan.2", "fan relay.85", "ignition coil.1"];
            if (behindLoads.Contains(node))
            {
                return state.Key == KeyPosition.Off ? 0 : 0.08;
            }

            string[] beforeFuses = ["main battery.plus", "bus bar.1", "F1.out", "F2.out", "F3.out", "starter.B", "firewall.A1", "alternator.B+", "fan relay.30"];
            var atV = state.Engine == EngineState.Cranking ? 10.2 : 12.6;
            return Array.IndexOf(beforeFuses, node) is var step and >= 0 ? atV - (step * 0.03) : state.Key == KeyPosition.Off ? 0 : atV - 0.4 - (node.Length * 0.01);
        }
    }
}
