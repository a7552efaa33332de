using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Electrical;

/// <summary>A second, independent solver of the same networks: ngspice agrees within 0.1 % or 1 mV at every node.</summary>
public class NgspiceTests(ITestOutputHelper output)
{
    public static TheoryData<string> Names => [.. Circuits.All.Select(c => c.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Ngspice_agrees_on_a_circuit_by_hand(string name) => Compare(name, Circuits.All.Single(c => c.Name == name).Parts);

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Ngspice_agrees_on_every_state_of_an_example(string name)
    {
        foreach (var point in NetworkSolver.Solve(ExamplePlans.Of(name)))
        {
            Compare($"{name} {point.State}", point.Parts);
        }
    }

    private void Compare(string name, ImmutableArray<NetworkPart> parts)
    {
        var ours = NetworkSolver.Solve(parts);
        Assert.True(ours.Settled, name);
        var theirs = SpiceDeck.Solve(SpiceDeck.Write(name, parts, ours.Volts));
        var (worst, compared) = (0.0, 0);
        for (var node = 1; node < ours.Volts.Length; node++)
        {
            if (ours.Volts[node] is { } volts && theirs.TryGetValue(node, out var other))
            {
                worst = Math.Max(worst, Math.Abs(volts - other));
                compared++;
                Assert.True(Math.Abs(volts - other) <= Math.Max(0.001, 0.001 * Math.Abs(other)), $"{name}, node {node}: {volts} V, ngspice {other} V");
            }
        }

        output.WriteLine($"{name}: {compared} nodes, largest difference {worst * 1e6:0.0} uV");
        Assert.True(compared > 0, name);
    }
}
