using System.Globalization;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Model;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Tracing;

namespace HarnessDraw.Tests.Tracing;

public class CircuitTracerTests
{
    private static readonly Plan Plan = SmallPlan.Plan;

    [Fact]
    public void A_lamp_circuit_is_followed_from_the_battery_and_back()
    {
        var way = Trace("dipped beam").Ways.Single(w => w.Title.Contains("headlamp left", StringComparison.Ordinal));
        Assert.Equal("main battery.plus", way.Stops[0].Node);
        Assert.Equal("main battery.minus", way.Stops[^1].Node);
        Assert.Equal(way.Stops.Length - 1, way.Hops.Length);
        var nodes = way.Stops.Select(s => s.Node).ToList();
        string[] expected = ["bus bar.1", "F1.out", "F7.out", "firewall.B2", "SP1", "headlamp left.56b", "headlamp left.31", "ground left.stud", "ground rear.stud"];
        Assert.Equal(expected, nodes.Where(expected.Contains));
        Assert.Single(way.Hops, h => h.Kind == HopKind.Load);
        Assert.Contains(way.Hops, h => h.Kind == HopKind.Kept && h.Words.Contains("dip switch", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_hop_is_a_step_that_the_plan_has()
    {
        foreach (var circuit in Plan.Harness.Circuits)
        {
            foreach (var way in Trace(circuit.Id).Ways)
            {
                for (var i = 0; i < way.Hops.Length; i++)
                {
                    if (way.Hops[i].Wire is { } id)
                    {
                        var wire = Plan.WireOf(id);
                        Assert.Equal(new[] { wire.From.ToString(), wire.To.ToString() }.Order(StringComparer.Ordinal), new[] { way.Stops[i].Node, way.Stops[i + 1].Node }.Order(StringComparer.Ordinal));
                    }
                }

                Assert.True(way.Hops.Count(h => h.Kind == HopKind.Load) <= 1);
                Assert.Equal(way.Stops.Length, way.Stops.Select(s => s.Node).Distinct().Count());
            }
        }
    }

    [Fact]
    public void A_load_gives_a_way_for_each_part_that_uses_current()
    {
        var titles = Trace("headlamp left").Ways.Select(w => w.Title);
        Assert.Equal(["dipped beam: headlamp left, lamp 'dipped', 55 W", "main beam: headlamp left, lamp 'main', 60 W"], titles.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Losses_add_up_and_leave_the_load_out()
    {
        var way = Trace("horn").Ways[0];
        var known = way.Stops.Where(s => s.OnV is not null).ToList();
        var load = way.Hops.Single(h => h.Kind == HopKind.Load).DropV!.Value;
        var allSteps = known.Zip(known.Skip(1)).Sum(p => Math.Abs(p.First.OnV!.Value - p.Second.OnV!.Value));
        Assert.Equal(allSteps - load, way.Stops[^1].LostV!.Value, 9);
        Assert.All(way.Stops, s => Assert.Equal(s.OnV is null, s.LostV is null));
    }

    [Fact]
    public void Good_volts_have_a_least_on_the_feed_and_a_most_on_the_return()
    {
        foreach (var way in Plan.Harness.Circuits.SelectMany(c => Trace(c.Id).Ways).Where(w => w.Hops.Any(h => h.Kind == HopKind.Load)))
        {
            var load = way.Hops.Select((h, i) => (h, i)).Single(h => h.h.Kind == HopKind.Load).i;
            Assert.All(way.Stops.Where(s => s.LimitV is not null), s =>
            {
                Assert.Equal(way.Stops.IndexOf(s) <= load, s.LimitIsLeast);
                Assert.True(s.LimitIsLeast ? s.LimitV <= s.OnV : s.LimitV >= s.OnV, $"{s.Node}: {s.OnV}, {s.LimitV}");
            });
        }
    }

    [Fact]
    public void What_the_description_leaves_out_is_listed_and_not_invented()
    {
        var harness = SmallHarness.Harness with { Circuits = [.. SmallHarness.Harness.Circuits.Select(c => c with { ProtectedBy = [] })] };
        var trace = CircuitTracer.Trace(Plan with { Harness = harness, Nodes = [] }, "ignition").Value!;
        Assert.Contains("how ignition switch 15 is fed from a source is not described", trace.NotKnown);
        Assert.Equal("ignition switch.15", trace.Ways[0].Stops[0].Node);
        Assert.All(trace.Ways[0].Stops, s => Assert.Null(s.OnV));
        Assert.Contains(trace.NotKnown, n => n.StartsWith("volts are not known", StringComparison.Ordinal));
        Assert.DoesNotContain("0.0", TraceTextWriter.Write(trace), StringComparison.Ordinal);
    }

    [Fact]
    public void A_fuse_that_is_named_stands_on_the_way_although_its_wiring_is_not_told()
    {
        var trace = Trace("ignition");
        Assert.Contains(trace.Ways[0].Hops, h => h.Kind == HopKind.NotDescribed);
        Assert.Contains("the wiring from F9 to ignition switch 15 is not described", trace.NotKnown);
    }

    [Fact]
    public void An_unknown_name_gets_the_nearest_ones()
    {
        var outcome = CircuitTracer.Trace(Plan, "diped beam");
        Assert.Null(outcome.Value);
        var message = Assert.Single(outcome.Diagnostics);
        Assert.Contains("'diped beam'", message.Message, StringComparison.Ordinal);
        Assert.StartsWith("nearest names: 'dipped beam'", message.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_keeps_to_a_terminal_whatever_the_names_are()
    {
        const string Hostile = "\u001b[2J\u202eevil\nname";
        var longName = Hostile + new string('x', 300);
        var trace = Trace("horn");
        var way = trace.Ways[0] with { Stops = [.. trace.Ways[0].Stops.Select(s => s with { Name = longName, Where = longName })] };
        var text = TraceTextWriter.Write(trace with { Ways = [way], NotKnown = [longName] });
        Assert.All(text.Split('\n'), l => Assert.True(l.Length <= 96, l));
        Assert.DoesNotContain(text, c => char.IsControl(c) && c != '\n');
        Assert.DoesNotContain(text, c => CharUnicodeInfo.GetUnicodeCategory(c) == UnicodeCategory.Format);
    }

    [Theory]
    [InlineData("dipped beam")]
    [InlineData("fan")]
    [InlineData("battery ground")]
    [InlineData("starter cable")]
    public void Text_is_as_accepted(string name)
    {
        var file = Path.Combine(AppContext.BaseDirectory, "..", "..", "..", "Golden", "trace", name.Replace(' ', '-') + ".txt");
        var text = TraceTextWriter.Write(Trace(name));
        if (Environment.GetEnvironmentVariable("HARNESSDRAW_ACCEPT") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, text);
        }

        Assert.Equal(File.ReadAllText(file), text);
    }

    private static Trace Trace(string name) => CircuitTracer.Trace(Plan, name).Value!;
}
