using System.Collections.Immutable;
using CsCheck;
using HarnessDraw.Electrical;

namespace HarnessDraw.Tests.Electrical;

/// <summary>What must hold in every network, by random networks: a battery, a chain of wires, loads anywhere, some of them on a poor ground.</summary>
public class InvariantTests
{
    private static readonly Gen<NetworkPart> AnyLoad = Gen.Select(Gen.Int[1, 8], Gen.Int[0, 8], Gen.Double[0.05, 12], Gen.Int[0, 4]).Where((a, b, _, _) => a != b).Select((a, b, amps, kind) => kind switch
    {
        0 => Circuits.Lamp(a, b, 12, amps),
        1 => Circuits.Motor(a, b, 12, amps),
        2 => Circuits.Power(a, b, 12, Math.Min(amps, 3)),
        3 => Circuits.Diode(a, b),
        _ => Circuits.R(a, b, 12 / amps),
    });

    private static readonly Gen<NetworkPart> LinearLoad = Gen.Select(Gen.Int[1, 8], Gen.Double[0.05, 12]).Select((a, amps) => Circuits.R(a, 0, 12 / amps));

    [Fact]
    public void Power_given_is_power_taken() =>
        Gen.Select(Chain(), AnyLoad.Array[1, 12]).Sample((chain, loads) =>
        {
            ImmutableArray<NetworkPart> parts = [.. chain, .. loads];
            var point = NetworkSolver.Solve(parts);
            var (given, taken) = (0.0, 0.0);
            for (var i = 0; i < parts.Length; i++)
            {
                var watts = ((point.Volts[parts[i].A] ?? 0) - (point.Volts[parts[i].B] ?? 0)) * point.Amperes[i];
                (given, taken) = watts < 0 ? (given - watts, taken) : (given, taken + watts);
            }

            return point.Settled && Math.Abs(given - taken) <= 1e-9 * Math.Max(given, 1);
        }, iter: 2000, seed: "0000Kdrh5Yz1");

    [Fact]
    public void Every_load_keeps_its_own_law() =>
        Gen.Select(Chain(), AnyLoad.Array[1, 12]).Sample((chain, loads) =>
        {
            ImmutableArray<NetworkPart> parts = [.. chain, .. loads];
            var point = NetworkSolver.Solve(parts);
            return Enumerable.Range(0, parts.Length).All(i =>
            {
                var volts = (point.Volts[parts[i].A] ?? 0) - (point.Volts[parts[i].B] ?? 0);
                return parts[i].Law.Kind == PartBehaviour.Diode || Math.Abs(parts[i].Law.At(volts).Amperes - point.Amperes[i]) < 1e-7;
            });
        }, iter: 1000, seed: "0000Kdrh5Yz1");

    [Fact]
    public void More_copper_in_a_wire_never_raises_its_own_drop() =>
        Gen.Select(Chain(), LinearLoad.Array[1, 10], Gen.Int[1, 8], Gen.Double[1.05, 4]).Sample((chain, loads, wire, factor) =>
        {
            var before = NetworkSolver.Solve([.. chain, .. loads]);
            var thicker = chain.SetItem(wire, chain[wire] with { Law = PartLaw.Resistor(chain[wire].Law.Ohm / factor) });
            var after = NetworkSolver.Solve([.. thicker, .. loads]);
            return Drop(after, chain[wire]) <= Drop(before, chain[wire]) + 1e-9;
        }, iter: 1000, seed: "0000Kdrh5Yz1");

    [Fact]
    public void A_load_more_never_lowers_the_battery_current() =>
        Gen.Select(Chain(), LinearLoad.Array[1, 10], LinearLoad).Sample((chain, loads, more) =>
            -NetworkSolver.Solve([.. chain, .. loads, more]).Amperes[0] >= -NetworkSolver.Solve([.. chain, .. loads]).Amperes[0] - 1e-9, iter: 1000, seed: "0000Kdrh5Yz1");

    [Fact]
    public void The_order_of_parts_does_not_matter() =>
        Gen.Select(Chain(), AnyLoad.Array[1, 10]).Sample((chain, loads) =>
        {
            var one = NetworkSolver.Solve([.. chain, .. loads]);
            var other = NetworkSolver.Solve([.. loads.Reverse(), .. chain]);
            // electronics may rest at either of two points: only networks without them have one
            return loads.Any(l => l.Law.Kind == PartBehaviour.ConstantPower)
                || Enumerable.Range(0, Math.Min(one.Volts.Length, other.Volts.Length)).All(n => Math.Abs((one.Volts[n] ?? 0) - (other.Volts[n] ?? 0)) < 1e-6);
        }, iter: 1000, seed: "0000Kdrh5Yz1");

    private static double Drop(NetworkPoint point, NetworkPart wire) => Math.Abs(point.Volts[wire.A]!.Value - point.Volts[wire.B]!.Value);

    /// <summary>A battery at node 1 and wires on to nodes 2 to 9, each from some node before it: a tree, as harnesses are.</summary>
    private static Gen<ImmutableArray<NetworkPart>> Chain() =>
        Gen.Select(Gen.Int[0, 7].Array[8], Gen.Double[0.002, 0.3].Array[8]).Select((from, ohm) =>
            ImmutableArray.Create(Circuits.Battery(1, 0, 12)).AddRange(Enumerable.Range(0, 8).Select(i => Circuits.R(1 + (from[i] % (i + 1)), 2 + i, ohm[i]))));
}
