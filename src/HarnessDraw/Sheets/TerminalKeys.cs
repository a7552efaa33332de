using System.Collections.Immutable;
using HarnessDraw.Fabrication;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>Short names T1, T2, ... for the terminals of a plan and J1, J2, ... for the parts of its splices, the same on every sheet: catalogue ids are too long for a column and must never be cut off.</summary>
internal sealed class TerminalKeys
{
    private readonly ImmutableArray<string> ids;
    private readonly ImmutableArray<string> joints;
    private readonly SpliceParts parts;

    public TerminalKeys(Plan plan)
    {
        parts = new(plan);
        joints = [.. plan.Splices.Select(s => s.Part).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        ids = [.. plan.Wires.SelectMany(w => new[] { w.From.Terminal, w.To.Terminal }).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
    }

    /// <summary>The key of the terminal at a wire's end, or of the part that joins it there; 'splice' where that is not chosen, a dash where none is known.</summary>
    public string KeyOf(WireEnd end) => end.Terminal is { } id ? KeyOf(id) : end.IsSplice ? JointKey(parts.Of(end)) : "–";

    /// <summary>The key of a part that joins splices; 'splice' for none.</summary>
    public string JointKey(string? part) => part is null ? "splice" : $"J{joints.IndexOf(part) + 1}";

    public string KeyOf(string terminal) => $"T{ids.IndexOf(terminal) + 1}";

    /// <summary>The terminals of some ends in the order of their keys.</summary>
    public ImmutableArray<string> Used(IEnumerable<WireEnd> ends) => [.. ends.Select(e => e.Terminal).OfType<string>().Distinct(StringComparer.Ordinal).OrderBy(ids.IndexOf)];
}

/// <summary>Short names S1, S2, ... for the wire seals of a plan, the same on every sheet.</summary>
internal sealed class SealKeys
{
    private readonly ImmutableArray<string> ids;

    public SealKeys(Plan plan) =>
        ids = [.. plan.Wires.SelectMany(w => new[] { w.From.Seal, w.To.Seal }).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>The key of a seal, a dash where the wire has none.</summary>
    public string KeyOf(string? seal) => seal is null ? "–" : $"S{ids.IndexOf(seal) + 1}";

    /// <summary>The seals of some ends in the order of their keys.</summary>
    public ImmutableArray<string> Used(IEnumerable<WireEnd> ends) => [.. ends.Select(e => e.Seal).OfType<string>().Distinct(StringComparer.Ordinal).OrderBy(ids.IndexOf)];
}

/// <summary>Short names K1, K2, ... for the cables of a plan, and what is to be done with each.</summary>
internal sealed class CableKeys(Plan plan)
{
    /// <summary>The cables in the order of their keys.</summary>
    public ImmutableArray<CableRow> All { get; } = CableRows.Of(plan);

    /// <summary>The key of the cable that a wire lies in, or nothing.</summary>
    public string KeyOf(Wire wire) => Enumerable.Range(0, All.Length).FirstOrDefault(i => All[i].Cable.Id == wire.Cable, -1) is >= 0 and var at ? Key(at) : "";

    public static string Key(int index) => $"K{index + 1}";
}
