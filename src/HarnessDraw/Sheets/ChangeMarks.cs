using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Sheets;

/// <summary>A wire that is added, cut anew, moved or removed: a word that reads without colour, and what becomes what.</summary>
public sealed record ChangeLine(string Word, string Wire, string Circuit, string How);

/// <summary>What changes from a built state ('revision A') to the one that is drawn.</summary>
public sealed record ChangeMarks(string From, string To, ImmutableArray<ChangeLine> Lines, int Unchanged)
{
    /// <summary>How the wall chart of that state was laid out: its places are kept; null: that is not known.</summary>
    public FrozenChart? Chart { get; init; }

    public ChangeLine? Of(string wire) => Lines.FirstOrDefault(l => l.Wire == wire);
}
