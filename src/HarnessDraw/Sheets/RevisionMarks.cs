using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>
/// Which wires are marked as changed: against a built state that was named, else those whose id, circuit or end the newest revision's 'where' names. Older changes
/// carry no mark (common practice, no source).
/// </summary>
internal sealed class RevisionMarks(Plan plan, ChangeMarks? changes)
{
    private readonly Revision? newest = plan.Harness.Drawing.Revisions is { IsEmpty: false } all ? all[^1] : null;

    private ImmutableHashSet<string> Named { get; } =
        plan.Harness.Drawing.Revisions is { IsEmpty: false } all && all[^1].Where is { } where
            ? [.. where.Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)]
            : [];

    /// <summary>The mark of a wire, or nothing.</summary>
    public CellRevision? Of(Wire? wire) =>
        wire is null ? null
            : changes is not null ? changes.Of(wire.Id) is { } change ? new(change.Word.ToUpperInvariant()) : null
            : newest is not null && new[] { wire.Id, wire.Circuit, wire.From.At, wire.To.At }.Any(Named.Contains) ? new(newest.Rev) : null;

    /// <summary>What the mark means, where any of the wires carries it.</summary>
    public IEnumerable<string> Explained(IEnumerable<Wire?> wires) =>
        !wires.Any(w => Of(w) is not null) ? []
            : changes is not null ? [$"Triangle: changed since {changes.From}; ADD new, CUT cut anew, MOVE an end elsewhere."]
            : [$"Triangle {newest!.Rev}: changed in revision {newest.Rev}."];
}

/// <summary>A triangle with the letter of the revision, or the word of the change, beside it.</summary>
internal sealed record CellRevision(string Rev) : CellPart
{
    private const double SideMm = 3;

    public override double WidthMm => SideMm + 0.5 + Pen.Width(Rev, TextStyle.Bold);

    public override void Paint(Pen pen, double left, double baseY)
    {
        pen.Add(new PathItem(Outline.Polyline([new(left + 0.2, baseY - 0.1), new(left + (SideMm / 2), baseY - 2.6), new(left + SideMm - 0.2, baseY - 0.1)], closed: true)) { Stroke = new(Ink.Black, 0.3) });
        pen.Letters(Rev, left + SideMm + 0.5, baseY, TextStyle.Bold);
    }
}
