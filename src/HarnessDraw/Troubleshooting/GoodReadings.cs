using System.Collections.Immutable;

namespace HarnessDraw.Troubleshooting;

/// <summary>A reading that has changed since the harness was commissioned.</summary>
public sealed record ChangedReading(VehicleNote Then, VehicleNote Now)
{
    public double ChangeV => Now.Value - Then.Value;
}

/// <summary>
/// Compares readings with those kept from commissioning. What has changed by more than a meter is off is the fault even where it is still inside the usual limits.
/// </summary>
public static class GoodReadings
{
    /// <summary>Largest change first.</summary>
    public static ImmutableArray<ChangedReading> Changed(ImmutableArray<VehicleNote> then, ImmutableArray<VehicleNote> now)
    {
        var known = then.Where(n => n.Kind is NoteKind.Volts or NoteKind.Lost).GroupBy(n => (n.Kind, n.Name, n.State)).ToDictionary(g => g.Key, g => g.Last());
        return
        [
            .. now.Where(n => known.ContainsKey((n.Kind, n.Name, n.State))).Select(n => new ChangedReading(known[(n.Kind, n.Name, n.State)], n))
                .Where(c => SuspectGroup.Parts(c.Then.Value, c.Now.Value)).OrderByDescending(c => Math.Abs(c.ChangeV)).ThenBy(c => c.Now.Name, StringComparer.Ordinal),
        ];
    }
}
