using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Tracing;

namespace HarnessDraw.Tests.Tracing;

/// <summary>A trace begins with whatever stands before the person: a wire, a cavity, a fuse, a colour.</summary>
public class AnythingTests
{
    private static readonly Lazy<Plan> Saloon = new(() => ExamplePlans.Of("brackmere-six"));
    private static readonly Lazy<CircuitTracer> Tracer = new(() => new(Saloon.Value));

    private static Wire Horn => Saloon.Value.Wires.First(w => w.Circuit == "horns" && w.From.At == "firewall");

    [Fact]
    public void From_a_wire_a_cavity_a_splice_and_a_fuse_every_way_through_it()
    {
        var wire = Tracer.Value.Of($"wire {Horn.Id}").Value!;
        Assert.Equal(2, wire.Ways.Length);
        Assert.All(wire.Ways, w => Assert.Contains(w.Hops, h => h.Wire == Horn.Id));
        foreach (var name in new[] { Horn.From.ToString(), Horn.From.ToString().Replace('.', ':'), Horn.From.ToString().Replace('.', ' '), Horn.To.At })
        {
            Assert.Equal(wire.Ways.Select(w => w.Title), Tracer.Value.Of(name).Value!.Ways.Select(w => w.Title));
        }

        var fuse = Tracer.Value.Of("fuse F1").Value!.Ways;
        Assert.True(fuse.Length > 2);
        Assert.All(fuse, w => Assert.Contains(w.Stops, s => s.Node == "F1.out"));
    }

    [Fact]
    public void Every_wire_of_the_examples_can_be_traced()
    {
        foreach (var name in new[] { "brackmere-six", "dunmarrow-18" })
        {
            var plan = ExamplePlans.Of(name);
            var tracer = new CircuitTracer(plan);
            Assert.All(plan.Wires, w => Assert.True(tracer.Of($"wire {w.Id}").Value is { Ways.IsEmpty: false }, w.Id));
        }
    }

    [Fact]
    public void A_name_that_a_wire_and_a_fuse_share_is_asked_for_again()
    {
        var both = Saloon.Value.Fuses[0].Id;
        var renamed = Saloon.Value with { Wires = [.. Saloon.Value.Wires.Select(w => w == Horn ? w with { Id = both } : w)] };
        var said = Assert.Single(new CircuitTracer(renamed).Of(both).Diagnostics);
        Assert.Equal(DiagnosticCodes.Ambiguous, said.Code);
        Assert.Contains($"'wire {both}' or 'fuse {both}'", said.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_that_a_wire_and_a_cavity_share_says_which_is_followed_and_how_to_ask_for_the_other()
    {
        var (name, other) = (Horn.From.Pin!, Saloon.Value.Wires.First(w => w.Circuit != "horns" && w.From.At == "firewall"));
        var renamed = Saloon.Value with { Wires = [.. Saloon.Value.Wires.Select(w => w.Id == other.Id ? w with { Id = name } : w.Id == name ? w with { Id = other.Id } : w)] };
        var tracer = new CircuitTracer(renamed);
        var asked = tracer.Of(name);
        Assert.False(asked.Failed);
        var said = Assert.Single(asked.Diagnostics);
        Assert.Equal((DiagnosticCodes.Ambiguous, Severity.Advice), (said.Code, said.Severity));
        Assert.Equal($"write '{Horn.From.At} {name}' for the cavity", said.Hint);
        Assert.Equal(tracer.Of($"wire {name}").Value!.Ways.Select(w => w.Title), asked.Value!.Ways.Select(w => w.Title));
        Assert.Equal(tracer.Of("horns").Value!.Ways.Select(w => w.Title), tracer.Of($"{Horn.From.At} {name}").Value!.Ways.Select(w => w.Title));
        Assert.All(new[] { $"wire {name}", $"{Horn.From.At} {name}" }, exact => Assert.Empty(tracer.Of(exact).Diagnostics));
    }

    /// <summary>A lamp with two filaments is on two circuits, and one of them has its name.</summary>
    [Fact]
    public void A_name_that_a_circuit_and_a_load_share_says_so_only_where_their_ways_differ()
    {
        var plan = ExamplePlans.Of("dunmarrow-18");
        var tracer = new CircuitTracer(plan);
        foreach (var name in plan.Harness.Circuits.Select(c => c.Id).Intersect(plan.Harness.Things.Select(t => t.Id)))
        {
            var differ = !tracer.Of($"circuit {name}").Value!.Ways.Select(w => w.Title).SequenceEqual(tracer.Of($"load {name}").Value!.Ways.Select(w => w.Title));
            Assert.Equal(differ ? [$"write 'load {name}' for the load"] : [], tracer.Of(name).Diagnostics.Select(d => d.Hint));
        }
    }

    [Theory]
    [InlineData("{0} {1} mm2 near firewall")]
    [InlineData("a {0} wire, {1} mm2, near the firewall")]
    public void From_a_colour_a_size_and_a_place(string words)
    {
        var asked = string.Format(System.Globalization.CultureInfo.InvariantCulture, words, Horn.Colour, Horn.SizeLabel);
        Assert.Equal(2, Tracer.Value.Of(asked).Value!.Ways.Length);
    }

    [Fact]
    public void A_colour_that_fits_several_lists_them_and_one_that_fits_none_says_so()
    {
        var several = Assert.Single(Tracer.Value.Of("pink with green tracer").Diagnostics);
        Assert.Equal(DiagnosticCodes.Ambiguous, several.Code);
        foreach (var wire in Saloon.Value.Wires.Where(w => w.Colour == "PK/GN").Take(12))
        {
            Assert.Contains(wire.Id, several.Hint, StringComparison.Ordinal);
        }

        Assert.Equal(DiagnosticCodes.UnknownName, Tracer.Value.Of("PK/GN 50 mm2").Diagnostics.Single().Code);
        Assert.Contains($"'{Horn.From}'", Tracer.Value.Of($"{Horn.From}".Replace("ll", "l", StringComparison.Ordinal)).Diagnostics.Single().Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_hop_says_what_shares_it_and_each_stop_how_far_good_parts_may_lie()
    {
        var way = Tracer.Value.Of("horns").Value!.Ways.First(w => w.Load.StartsWith("horn high", StringComparison.Ordinal));
        Assert.Equal(["horn low coil 1"], way.Hops.First(h => h.Wire == Horn.Id).Shared);
        Assert.Contains("fan motor 1", way.Hops[0].Shared);
        var load = way.Hops.Select((h, i) => (h, i)).Single(h => h.h.Kind == HopKind.Load).i;
        // on the feed no more than expected, and no more the farther from the source; on the return no less
        Assert.All(way.Stops.Take(load + 1), s => Assert.True(s.LimitV <= s.OnV));
        Assert.All(way.Stops.Skip(load + 1), s => Assert.True(s.LimitV >= s.OnV));
        Assert.True(way.Stops[load].OnV - way.Stops[load].LimitV > way.Stops[1].OnV - way.Stops[1].LimitV);
        Assert.All(way.Stops.Where(s => s.Node != "body"), s => Assert.True(s.Minutes > 0 && s.Probe.Length > 0));
        Assert.NotNull(way.RunState);
    }
}
