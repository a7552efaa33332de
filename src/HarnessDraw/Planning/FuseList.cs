using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning.Sizing;

namespace HarnessDraw.Planning;

/// <summary>The fuses with what they feed and the most that it bears.</summary>
internal static class FuseList
{
    public static ImmutableArray<FuseChoice> Of(HarnessIndex index, SizingResult sizing, ImmutableArray<WireRow> rows, ImmutableArray<string> ids, PlanningOptions options)
    {
        // behind a fuse: up to the next protection
        var behind = Enumerable.Range(0, rows.Length).Where(w => !rows[w].ProtectedBy.IsEmpty).ToLookup(w => rows[w].ProtectedBy[0], StringComparer.Ordinal);
        return [.. index.Harness.Protections.Select(p => One(index, p, [.. behind[p.Id]], sizing, rows, ids, options))];
    }

    private static FuseChoice One(HarnessIndex index, Protection protection, int[] behind, SizingResult sizing, ImmutableArray<WireRow> rows, ImmutableArray<string> ids, PlanningOptions options)
    {
        var series = index.Harness.Catalogue.Fuses.FirstOrDefault(f => f.Kind == protection.Kind);
        // what a load in series lets pass is no matter of the fuse, where anything else is behind it
        var ruled = Array.FindAll(behind, w => rows[w].SeriesA is null);
        var limit = (ruled.Length > 0 ? ruled : behind).Select(w => Math.Min(rows[w].DeratedA(rows[w].Size), options.FuseOverContact * ContactA(sizing, rows[w]))).DefaultIfEmpty(0).Min();
        var chosen = sizing.Fuses[protection.Id];
        return new()
        {
            Id = protection.Id,
            Kind = protection.Kind,
            RatingA = chosen.RatingA,
            LargestA = FuseChooser.Largest(series, limit),
            Wires = [.. behind.Select(w => ids[w])],
            LoadA = Math.Round(chosen.LoadA, 3),
            LoadState = chosen.State,
            Given = chosen.Given,
            Why = chosen.Why,
        };
    }

    private static double ContactA(SizingResult sizing, WireRow row)
    {
        var least = double.PositiveInfinity;
        foreach (var (pin, cavity) in ((PinRef?, string?)[])[(row.Draft.From.Pin, row.FromCavity), (row.Draft.To.Pin, row.ToCavity)])
        {
            if (pin is not null && TerminalChooser.Fitting(sizing.Terminals.For(pin, cavity), row.SizeNow) is { } terminal)
            {
                least = Math.Min(least, terminal.CurrentA);
            }
        }

        return least;
    }
}
