using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>The part of the catalogue that joins each splice of a plan; null where none is chosen.</summary>
public sealed class SpliceParts
{
    private readonly Dictionary<string, string?> parts = new(StringComparer.Ordinal);

    public SpliceParts(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        foreach (var splice in plan.Splices)
        {
            parts.TryAdd(splice.Id, splice.Part);
        }
    }

    /// <summary>The part at a wire's end; null also where the end is in no splice.</summary>
    public string? Of(WireEnd end)
    {
        ArgumentNullException.ThrowIfNull(end);
        return end.IsSplice ? parts.GetValueOrDefault(end.At) : null;
    }
}
