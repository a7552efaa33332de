using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Planning;

namespace HarnessDraw.Tracing;

/// <summary>Collects the stops and hops of one way in order and adds up what is lost.</summary>
internal sealed class WayBuilder(Plan plan, StopBook book, VoltSpread spread, Target target)
{
    private readonly ImmutableArray<TraceHop>.Builder hops = ImmutableArray.CreateBuilder<TraceHop>();
    private readonly ImmutableArray<TraceStop>.Builder stops = ImmutableArray.CreateBuilder<TraceStop>();
    private readonly WayStates states = WayStates.Of(plan, target.Circuit.Id);
    private readonly Losses losses = new();

    public void Start(string node)
    {
        var stop = book.Stop(node, states);
        stops.Add(stop with { LostV = losses.At(stop.OnV, afterLoad: false) });
    }

    public void Pass(Step step, string to)
    {
        var before = stops[^1];
        if (step.Kind == HopKind.Body && before.Node == CurrentGraph.Body && hops.Count > 0 && hops[^1].Kind == HopKind.Body)
        {
            // from one ground point to another is one step through the metal
            stops.RemoveAt(stops.Count - 1);
            hops.RemoveAt(hops.Count - 1);
            before = stops[^1];
        }

        var after = book.Stop(to, states);
        if (step.Kind == HopKind.Link)
        {
            // nothing is lost in a link: what is known of one end holds for the other
            after = after with { OffV = after.OffV ?? before.OffV, OnV = after.OnV ?? before.OnV, CrankV = after.CrankV ?? before.CrankV, RunV = after.RunV ?? before.RunV };
        }

        stops.Add(after with { LostV = losses.At(after.OnV, step.Kind == HopKind.Load) });
        hops.Add(new(step.Kind, Words(step))
        {
            Wire = step.Wire?.Id,
            Colour = step.Wire?.Colour,
            Size = step.Wire is { } wire ? SizeWords(wire) : null,
            CutLengthMm = step.Wire?.CutLengthMm,
            Estimated = step.Wire?.Estimated ?? false,
            DropV = before.OnV is { } a && after.OnV is { } b ? Math.Abs(a - b) : null,
        });
    }

    public TraceWay ToWay() => new(Title(), spread.Over(stops, hops, target.Circuit.IsReturn), Reasoned())
    {
        Load = target.Load is { } load && plan.Harness.Things.FirstOrDefault(t => t.Id == target.Pin.Thing) is { } thing ? LoadName.Of(thing, load) : PointWords.OfNode(target.Pin.ToString()),
        Circuit = target.Circuit.Id,
        OffState = states.Off,
        OnState = states.On,
        CrankState = states.Crank,
        RunState = states.Run,
    };

    // of a wire that is thicker than the one before or behind it the reader wonders why
    private ImmutableArray<TraceHop> Reasoned()
    {
        var wires = Enumerable.Range(0, hops.Count).Where(h => hops[h].Wire is not null).Select(h => (Hop: h, Wire: plan.WireOf(hops[h].Wire!))).ToList();
        for (var w = 0; w < wires.Count; w++)
        {
            var (hop, wire) = wires[w];
            if ((w > 0 && wires[w - 1].Wire.AreaMm2 < wire.AreaMm2) || (w < wires.Count - 1 && wires[w + 1].Wire.AreaMm2 < wire.AreaMm2))
            {
                hops[hop] = hops[hop] with { Words = string.Join("; ", new[] { hops[hop].Words, SizeGoesBy.Of(plan, wire) }.Where(s => s.Length > 0)) };
            }
        }

        return hops.ToImmutable();
    }

    private string Title()
    {
        var thing = plan.Harness.Things.FirstOrDefault(t => t.Id == target.Pin.Thing);
        return target.Load is { } load && thing is not null ? $"{target.Circuit.Id}: {thing.Id}, {ElementWords.Of(thing, load)}" : $"{target.Circuit.Id}: to {PointWords.OfNode(target.Pin.ToString())}";
    }

    private string Words(Step step)
    {
        if (step.Wire is { } wire)
        {
            return wire.Builds.IsAlways ? "" : $"only with {wire.Builds.Words}";
        }

        if (step.Kind == HopKind.Fuse && plan.Fuses.FirstOrDefault(f => step.A == CurrentGraph.Node(f.Id, "in") || step.B == CurrentGraph.Node(f.Id, "in")) is { } fuse)
        {
            return fuse.RatingA is { } amps ? $"fuse {fuse.Id}, {amps:0.##} A{(fuse is { Given: false, Why: { } why } ? $" ({why})" : "")}" : $"fuse {fuse.Id}, rating not known";
        }

        return step.Words;
    }

    private static string SizeWords(Wire wire) => wire.Awg is null ? $"{wire.SizeLabel} mm2" : wire.SizeLabel;
}
