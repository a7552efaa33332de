using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>Short names T1, T2, ... for the terminals of a plan, the same on every sheet: catalogue ids are too long for a column and must never be cut off.</summary>
internal sealed class TerminalKeys
{
    private readonly ImmutableArray<string> ids;

    public TerminalKeys(Plan plan) =>
        ids = [.. plan.Wires.SelectMany(w => new[] { w.From.Terminal, w.To.Terminal }).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>The key of the terminal at a wire's end; 'splice' in a splice, a dash where none is known.</summary>
    public string KeyOf(WireEnd end) => end.Terminal is { } id ? KeyOf(id) : end.IsSplice ? "splice" : "–";

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
