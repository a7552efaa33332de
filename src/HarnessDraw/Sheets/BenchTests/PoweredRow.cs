using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.BenchTests;

/// <summary>One circuit switched on: current in its heaviest state with limits of 15 % (common practice, no source), volts at the point it feeds. Null: not known.</summary>
internal sealed record PoweredRow(Circuit Circuit, string Fuse, string? State, double? CurrentA, string Point, double? Volts)
{
    private const double Band = 0.15;

    // below a milliampere nothing is known to flow
    private const double LeastKnownA = 0.001;

    /// <summary>Amperes as the tables print them: small currents with one more figure.</summary>
    public static string Amperes(double? currentA) => Pages.Shown.Fixed(currentA, currentA is < 1 ? 2 : 1);

    /// <summary>What no state lets flow, as far as is known, has nothing to compare a reading with.</summary>
    public bool IsKnown => CurrentA is not null;

    /// <summary>A sentence about the circuits that have no row for that reason; null: there are none.</summary>
    public static string? Unread(IEnumerable<PoweredRow> rows)
    {
        string[] names = [.. rows.Where(r => !r.IsKnown).Select(r => r.Circuit.Id)];
        return names.Length == 0 ? null : $"No current is known in any state, so there is nothing to compare with: {string.Join(", ", names)}. Try what they serve.";
    }

    public double? LeastA => CurrentA * (1 - Band);

    public double? MostA => CurrentA * (1 + Band);

    /// <summary>Half a volt below what is expected (common practice, no source: the whole feed side may lose that).</summary>
    public double? LeastV => Volts is { } v && Math.Abs(v) > 1 ? Math.Abs(v) - 0.5 : null;

    /// <summary>Circuits that are built and no mere return, by their fuse.</summary>
    public static ImmutableArray<PoweredRow> Of(Plan plan)
    {
        var nodes = plan.Nodes.GroupBy(n => n.Node, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var circuits = plan.Harness.Circuits.Where(c => !c.IsReturn && plan.Wires.Any(w => w.Circuit == c.Id));
        return [.. circuits.Select(c => Row(plan, nodes, c)).OrderBy(r => r.Fuse.Length == 0).ThenBy(r => r.Fuse, CavityOrder.Instance)];
    }

    private static PoweredRow Row(Plan plan, Dictionary<string, NodeVolts> nodes, Circuit circuit)
    {
        var heaviest = plan.Wires.Where(w => w.Circuit == circuit.Id && w.Worst is { CurrentA: > LeastKnownA }).OrderByDescending(w => w.Worst!.CurrentA).ThenBy(w => w.Id, StringComparer.Ordinal).FirstOrDefault()?.Worst;
        var fuse = circuit.ProtectedBy.FirstOrDefault() ?? plan.Fuses.FirstOrDefault(f => plan.Wires.Any(w => w.Circuit == circuit.Id && w.ProtectedBy.FirstOrDefault() == f.Id))?.Id ?? "";
        var ends = plan.Wires.Where(w => w.Circuit == circuit.Id).SelectMany(w => new[] { w.To, w.From }).Where(e => !e.IsSplice).ToList();
        var point = ends.FirstOrDefault(e => circuit.Feeds.Any(f => f.Thing == e.At && (f.Pin is null || f.Pin == e.Pin))) ?? ends.FirstOrDefault();
        var volts = heaviest is not null && point is not null && nodes.TryGetValue(point.ToString(), out var known) && known.Volts.TryGetValue(heaviest.State, out var value) ? value : null;
        return new(circuit, fuse, heaviest?.State, heaviest?.CurrentA, point?.ToString() ?? "", volts);
    }
}
