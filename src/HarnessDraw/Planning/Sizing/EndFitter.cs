using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning.Routing;

namespace HarnessDraw.Planning.Sizing;

/// <summary>What is put on each end of a wire: terminal, seal, strip length, and what must be threaded on before the terminal.</summary>
internal sealed class EndFitter(HarnessIndex index, TerminalChooser terminals)
{
    /// <param name="row">The wire.</param>
    /// <param name="atFrom">Which end.</param>
    /// <param name="splices">Id and part of each numbered splice; empty while none are named.</param>
    public WireEnd Fit(WireRow row, bool atFrom, ImmutableArray<(string Id, SplicePart? Part)> splices)
    {
        var end = atFrom ? row.Draft.From : row.Draft.To;
        if (end.Pin is not { } pin)
        {
            var (id, part) = splices.IsEmpty ? ("splice", null) : splices[end.Splice];
            return new(id, null) { IsSplice = true, StripMm = part?.StripMm ?? 7.5 };
        }

        var cavity = atFrom ? row.FromCavity : row.ToCavity;
        var terminal = TerminalChooser.Fitting(terminals.For(pin, cavity), row.SizeNow);
        var seal = terminal is null || index.IsStud(pin) ? null : terminals.SealFor(pin, terminal.Size, row.SizeNow);
        return new(pin.Thing, cavity ?? index.PinOf(pin)?.Name ?? pin.Pin)
        {
            Terminal = terminal?.Id,
            Seal = seal?.Id,
            StripMm = terminal?.StripMm,
            ThreadOnFirst = seal is not null ? [seal.Title] : terminal is { Ring: true } && row.SizeNow.AreaMm2 >= 10 ? ["rubber boot"] : [],
        };
    }

    /// <summary>The smallest splice that takes the copper, sealed where it is wet.</summary>
    public static SplicePart? SpliceFor(HarnessIndex index, RoutedTree tree, TreePoint point, double totalMm2)
    {
        var wet = point.Segment >= 0 && index.IsWet(tree.Segments[point.Segment].Zone);
        var fitting = index.Harness.Catalogue.Splices.Where(s => totalMm2 >= s.MinTotalMm2 - 1e-9 && totalMm2 <= s.MaxTotalMm2 + 1e-9).OrderBy(s => s.MaxTotalMm2).ThenBy(s => s.Id, StringComparer.Ordinal).ToArray();
        return fitting.FirstOrDefault(s => s.Sealed == wet) ?? fitting.FirstOrDefault();
    }
}
