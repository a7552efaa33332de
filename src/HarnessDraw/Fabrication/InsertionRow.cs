using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>
/// One step of filling a connector: a cavity with the wire end or the plug that goes in, or nothing. <see cref="End"/> is 'A' or 'B' of the wire.
/// </summary>
public sealed record InsertionRow(int Number, string Connector, string? ConnectorPart, Side Side, string Cavity, CutRow? Row, char? End, string? Plug)
{
    public WireEnd? At => Row is null ? null : End == 'A' ? Row.Wire.From : Row.Wire.To;
}

/// <summary>Insertion lists: every cavity of every connector, connectors by name, cavities in the order of their names.</summary>
public static class InsertionRows
{
    public static ImmutableArray<InsertionRow> Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var rows = CutRows.ByWire(plan).ToDictionary(r => r.Wire.Id, StringComparer.Ordinal);
        var steps = new List<InsertionRow>();
        foreach (var use in plan.Cavities)
        {
            var row = use.Wire is null ? null : rows.GetValueOrDefault(use.Wire);
            var part = plan.Harness.Things.FirstOrDefault(t => t.Id == use.Connector)?.ConnectorPart;
            var ends = row is null ? [] : EndsIn(row.Wire, use).ToArray();
            if (ends.Length == 0)
            {
                steps.Add(new(0, use.Connector, part, use.Side, use.Cavity, row, null, use.Plug));
            }

            steps.AddRange(ends.Select(e => new InsertionRow(0, use.Connector, part, use.Side, use.Cavity, row, e, use.Plug)));
        }

        var sorted = steps.Distinct()
            .OrderBy(s => s.Connector, StringComparer.Ordinal)
            .ThenBy(s => s.Side)
            .ThenBy(s => s.Cavity, NaturalOrder.Instance)
            .ThenBy(s => s.Row?.Wire.Id, NaturalOrder.Instance)
            .ThenBy(s => s.End);
        return [.. sorted.Select((s, i) => s with { Number = i + 1 })];
    }

    // the pin of an end may have another name than its cavity where it is the thing's only end of this wire
    private static IEnumerable<char> EndsIn(Wire wire, CavityUse use)
    {
        var (a, b) = (wire.From.At == use.Connector, wire.To.At == use.Connector);
        if (a && (!b || wire.From.Pin == use.Cavity))
        {
            yield return 'A';
        }

        if (b && (!a || wire.To.Pin == use.Cavity))
        {
            yield return 'B';
        }
    }
}
