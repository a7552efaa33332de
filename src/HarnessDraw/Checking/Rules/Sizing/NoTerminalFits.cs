using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class NoTerminalFits : IDesignRule
{
    public RuleInfo Info { get; } = new("no-terminal-fits", "No terminal for a size given by hand", Severity.Error, Consequence.DoesNotWork, "the catalogue's terminals",
        "A wire that no terminal of the cavity takes cannot be connected.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        from end in PlannedEnd.Of(context.Plan)
        where end.Wire.DecidedBy == "given by hand" && end.End is { IsSplice: false, Pin: not null, Terminal: null }
        let fitting = EndTerminals.Of(context, end.End)
        where !fitting.IsEmpty && !fitting.Any(t => t.Takes(end.Wire))
        select context.Found(Info, $"{PointWords.Of(end.End)}: {end.Wire.Named()} is given as {Figure.Size(end.Wire)}, but terminals of {fitting[0].Size} take {Ranges(fitting)}.", Cure(context, end, fitting),
            [end.Wire.Id, end.Wire.Circuit, end.End.At], end.Wire.Builds, context.AtOf(end.Wire));

    /// <summary>'0.5 to 1 and 1.5 to 6 mm²': ranges that touch or overlap are one.</summary>
    private static string Ranges(IEnumerable<TerminalPart> fitting)
    {
        var ranges = new List<(double Least, double Most)>();
        foreach (var terminal in fitting.OrderBy(t => t.MinAreaMm2).ThenBy(t => t.MaxAreaMm2))
        {
            if (ranges is [.., var last] && terminal.MinAreaMm2 <= last.Most + 1e-9)
            {
                ranges[^1] = last with { Most = Math.Max(last.Most, terminal.MaxAreaMm2) };
            }
            else
            {
                ranges.Add((terminal.MinAreaMm2, terminal.MaxAreaMm2));
            }
        }

        return $"{Wording.List(ranges.Select(r => r.Least.Equals(r.Most) ? Figure.Number(r.Least) : $"{Figure.Number(r.Least)} to {Figure.Number(r.Most)}"))} mm²";
    }

    // a thinner wire is no cure: it would be chosen by the terminal and not by its current
    private static string Cure(RuleContext context, PlannedEnd end, ImmutableArray<TerminalPart> fitting)
    {
        var wire = end.Wire;
        if (wire.AreaMm2 < fitting.Min(t => t.MinAreaMm2))
        {
            return "Give a size that the terminals take.";
        }

        // the cavities of a connector are what they are: a stud, or a contact that it does not hold, is no choice there
        if (EndTerminals.BodyOf(context, end.End) is { } body)
        {
            var larger = context.Harness.Catalogue.Terminals.Where(t => !t.Ring && t.Takes(wire) && body.TerminalFamilies.Contains(t.Family)).Select(t => t.Size).ToHashSet(StringComparer.Ordinal);
            var cavities = body.Cavities.Where(c => larger.Contains(c.Size)).Select(c => c.Name).ToList();
            var free = cavities.Where(c => context.Plan.Cavities.All(u => u.Connector != end.End.At || u.Cavity != c || u.Wire is null)).ToList();
            return context.Thing(end.End.At)?.Kind is not (ThingKind.Mate or ThingKind.Inline) || cavities.Count == 0
                ? $"No contact of {end.End.At} takes this size: join the wire before it to a tail that the contact takes, behind a fuse of its own, or take it past the connector; do not thin the wire to suit the terminal."
                : $"Move it to a cavity whose contacts take the wire ({(free.Count > 0 ? $"free: {Wording.List(free)}" : $"{Wording.List(cavities)}, all taken")}), or take it past the connector to a stud beyond; do not thin the wire to suit the terminal.";
        }

        var taking = context.Harness.Catalogue.Terminals.Where(t => t.Takes(wire)).OrderBy(t => t.Ring).Select(t => t.Ring ? $"a stud {t.Size}" : $"a contact {t.Size}").Distinct(StringComparer.Ordinal).ToList();
        return taking.Count == 0 ? "No terminal of the catalogue takes this size: add one, or give a size that terminals take." : $"Make this end {string.Join(" or ", taking)}, whose terminals take the wire, or join it there to a tail behind a fuse of its own; do not thin the wire to suit the terminal.";
    }
}
