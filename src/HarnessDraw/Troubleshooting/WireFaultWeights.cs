using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Troubleshooting;

/// <summary>How often the copper and the joints of a wire fail, by where they lie and what they carry.</summary>
internal sealed class WireFaultWeights
{
    private const double Loaded = 0.6;
    private readonly PlanNetwork network;
    private readonly FaultWeights weights;
    private readonly Dictionary<string, Segment> segments = new(StringComparer.Ordinal);
    private readonly Dictionary<string, double> terminalA = new(StringComparer.Ordinal);
    private readonly Dictionary<(string, string), Model.Path> paths = [];
    private readonly Dictionary<string, Splice> splices = new(StringComparer.Ordinal);
    private readonly HashSet<string> sealedSplices;

    public WireFaultWeights(PlanNetwork network, FaultWeights weights)
    {
        (this.network, this.weights) = (network, weights);
        foreach (var segment in network.Plan.Tree.Segments)
        {
            segments.TryAdd(segment.Id, segment);
        }

        foreach (var terminal in network.Plan.Harness.Catalogue.Terminals)
        {
            terminalA.TryAdd(terminal.Id, terminal.CurrentA);
        }

        foreach (var path in network.Plan.Harness.Layout.Paths)
        {
            paths.TryAdd((path.From, path.To), path);
            paths.TryAdd((path.To, path.From), path);
        }

        foreach (var splice in network.Plan.Splices)
        {
            splices.TryAdd(splice.Id, splice);
        }

        sealedSplices = [.. network.Plan.Harness.Catalogue.Splices.Where(s => s.Sealed).Select(s => s.Id)];
    }

    /// <summary>The joint at the end of a wire in words, and its weight.</summary>
    public (string Part, double Weight) Joint(Wire wire, WireEnd end)
    {
        if (splices.TryGetValue(end.At, out var splice))
        {
            var wet = segments.TryGetValue(splice.Segment, out var at) && network.Index.IsWet(at.Zone) && (splice.Part is null || !sealedSplices.Contains(splice.Part));
            return ($"splice {end.At}, wire {wire.Id}", (wet ? weights.WetSplice : weights.Splice) / splice.Wires.Length);
        }

        var thing = network.Index.Thing(end.At);
        var pin = network.Index.PinOf(new(end.At, end.Pin));
        if (thing is { Kind: ThingKind.Mate or ThingKind.Inline } || pin?.Style == PinStyle.Cavity)
        {
            var weight = thing?.Kind == ThingKind.Mate ? weights.FirewallContact : thing?.Side == Side.Cabin ? weights.DryContact : weights.Contact;
            var loaded = end.Terminal is { } id && terminalA.TryGetValue(id, out var rated) && wire.Worst?.CurrentA > Loaded * rated;
            return ($"contact {PointWords.Of(end)} (wire {wire.Id})", weight * (loaded ? weights.LoadedContactFactor : 1));
        }

        return pin?.Style == PinStyle.Blade ? ($"blade {PointWords.Of(end)} (wire {wire.Id})", weights.Blade) : ($"ring on {PointWords.Of(end)} (wire {wire.Id})", weights.Ring);
    }

    public double Copper(Wire wire)
    {
        var sum = 0.0;
        foreach (var id in wire.Segments)
        {
            if (segments.TryGetValue(id, out var segment))
            {
                var flexes = paths.TryGetValue((segment.From, segment.To), out var path) && path.MovesMm is > 0;
                sum += (segment.LengthMm ?? 1000) / 1000 * weights.PerM(network.Index.Zone(segment.Zone), flexes);
            }
        }

        return Math.Max(sum, (wire.CutLengthMm ?? 300) / 1000 * weights.WirePerM);
    }
}
