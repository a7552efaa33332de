using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class NoTerminalFits : IDesignRule
{
    public RuleInfo Info { get; } = new("no-terminal-fits", "No terminal for a size given by hand", Severity.Error, Consequence.DoesNotWork, "the catalogue's terminals",
        "A wire that no terminal of the cavity takes cannot be connected.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        PlannedEnd.Of(context.Plan).Where(e => e.Wire.DecidedBy == "given by hand" && e.End is { IsSplice: false, Pin: not null, Terminal: null } && SizeOf(context, e.End) is not null)
            .Select(e => (End: e, Size: SizeOf(context, e.End)!, Range: RangeOf(context, SizeOf(context, e.End)!)))
            .Where(p => p.Range is { } r && (p.End.Wire.AreaMm2 < r.Least || p.End.Wire.AreaMm2 > r.Most))
            .Select(p => context.Found(Info, $"{p.End.End}: {p.End.Wire.Named()} is given as {p.End.Wire.SizeLabel}, but terminals of {p.Size} take {Figure.Number(p.Range!.Value.Least)} to {Figure.Area(p.Range.Value.Most)}.",
                "Give a size in that range, or splice on a tail.", [p.End.Wire.Id, p.End.Wire.Circuit, p.End.End.At], p.End.Wire.Builds, context.AtOf(p.End.Wire)));

    private static string? SizeOf(RuleContext context, WireEnd end) =>
        context.Thing(end.At) is not { } thing ? null : context.PartOf(thing)?.Cavities.FirstOrDefault(c => c.Name == end.Pin)?.Size ?? thing.Pins.FirstOrDefault(p => p.Name == end.Pin && p.Style != PinStyle.Lead)?.Size;

    private static (double Least, double Most)? RangeOf(RuleContext context, string size)
    {
        var fitting = context.Harness.Catalogue.Terminals.Where(t => t.Size == size).ToList();
        return fitting.Count == 0 ? null : (fitting.Min(t => t.MinAreaMm2), fitting.Max(t => t.MaxAreaMm2));
    }
}
