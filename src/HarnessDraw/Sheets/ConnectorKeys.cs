using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>The short names used on connector pages.</summary>
internal sealed record ConnectorKeys(TerminalKeys Terminals, SealKeys Seals, OptionKeys Options, RevisionMarks Revisions)
{
    public static ConnectorKeys Of(Plan plan, ChangeMarks? changes) => new(new(plan), new(plan), new(plan.Wires.Select(w => w.Builds)), new(plan, changes));

    /// <summary>The terminals, seals and options of some rows, told in lines; a key and its id stay together.</summary>
    public IEnumerable<string> Explained(IEnumerable<ConnectorRow> rows)
    {
        var here = rows.Where(r => r.Here is not null).ToList();
        ImmutableArray<WireEnd> ends = [.. here.Select(r => r.Here!)];
        if (Terminals.Used(ends) is { IsEmpty: false } terminals)
        {
            yield return $"Part: {string.Join(", ", terminals.Select(id => $"{Terminals.KeyOf(id)}\u00a0{id}"))}.";
        }

        if (Seals.Used(ends) is { IsEmpty: false } seals)
        {
            yield return $"Seal: {string.Join(", ", seals.Select(id => $"{Seals.KeyOf(id)}\u00a0{id}"))}.";
        }

        if (here.Any(r => !r.Builds.IsAlways))
        {
            yield return $"Option {string.Join("; ", Options.ExplainedFor(here.Select(r => r.Builds)))}.";
        }

        foreach (var mark in Revisions.Explained(here.Select(r => r.Wire)))
        {
            yield return mark;
        }
    }
}
