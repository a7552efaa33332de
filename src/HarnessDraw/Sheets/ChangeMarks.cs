using System.Collections.Immutable;

namespace HarnessDraw.Sheets;

/// <summary>A wire that is added, cut anew, moved or removed: a word that reads without colour, and what becomes what.</summary>
public sealed record ChangeLine(string Word, string Wire, string Circuit, string How);

/// <summary>What changes from a built state ('revision A') to the one that is drawn.</summary>
public sealed record ChangeMarks(string From, string To, ImmutableArray<ChangeLine> Lines, int Unchanged)
{
    public ChangeLine? Of(string wire) => Lines.FirstOrDefault(l => l.Wire == wire);
}
