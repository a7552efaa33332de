using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Planning;

namespace HarnessDraw.Comparing;

/// <summary>One thing that a plan has otherwise: what ('wire', 'fuse'), which, the figure, and its text before and after (null: not there).</summary>
public sealed record PlanChange(string Kind, string Id, string What, string? Before, string? After);

/// <summary>A finding of the same rule about the same things, with other figures.</summary>
public sealed record FindingChange(Finding Before, Finding After);

/// <summary>What a change to a description does to its plan and its findings.</summary>
public sealed record PlanDifference(ImmutableArray<PlanChange> Changes, ImmutableArray<Finding> New, ImmutableArray<Finding> Gone, ImmutableArray<FindingChange> Altered)
{
    /// <summary>Compares two plans of one harness; wires are matched by circuit and by what they join, not by ids that may have moved on.</summary>
    public static PlanDifference Of(Plan before, ImmutableArray<Finding> beforeFindings, Plan after, ImmutableArray<Finding> afterFindings)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var (wasNames, nowNames) = (Names(before), Names(after));
        var (was, now) = (Keyed(beforeFindings, wasNames), Keyed(afterFindings, nowNames));
        return new(
            [.. Wires(before, after), .. Fuses(before, after), .. NeedNotFollow(before, after), .. Copper(before, after)],
            [.. afterFindings.Where(f => !was.ContainsKey(KeyOf(f, nowNames)))],
            [.. beforeFindings.Where(f => !now.ContainsKey(KeyOf(f, wasNames)))],
            [.. now.Where(n => was.TryGetValue(n.Key, out var old) && old.Message != n.Value.Message).Select(n => new FindingChange(was[n.Key], n.Value))]);
    }

    private static IEnumerable<PlanChange> Wires(Plan before, Plan after)
    {
        var (was, now) = (ByEnds(before), ByEnds(after));
        foreach (var (key, wire) in was.Where(w => !now.ContainsKey(w.Key)))
        {
            yield return new("wire", wire.Id, "wire", Told(wire), null);
        }

        foreach (var (key, wire) in now)
        {
            if (!was.TryGetValue(key, out var old))
            {
                yield return new("wire", wire.Id, "wire", null, Told(wire));
                continue;
            }

            foreach (var change in (PlanChange[])
            [
                new("wire", wire.Id, "id", old.Id, wire.Id), new("wire", wire.Id, "size", Size(old), Size(wire)), new("wire", wire.Id, "cut length", Millimetres(old.CutLengthMm), Millimetres(wire.CutLengthMm)),
                new("wire", wire.Id, "from", old.From.ToString(), wire.From.ToString()), new("wire", wire.Id, "to", old.To.ToString(), wire.To.ToString()),
                new("wire", wire.Id, "terminals", Terminals(old), Terminals(wire)), new("wire", wire.Id, "colour", old.Colour, wire.Colour), new("wire", wire.Id, "decided by", old.DecidedBy, wire.DecidedBy),
            ])
            {
                if (change.Before != change.After)
                {
                    yield return change;
                }
            }
        }
    }

    private static IEnumerable<PlanChange> Fuses(Plan before, Plan after)
    {
        foreach (var fuse in after.Fuses)
        {
            var old = before.Fuses.FirstOrDefault(f => f.Id == fuse.Id);
            foreach (var change in (PlanChange[])
            [
                new("fuse", fuse.Id, "rating", Amperes(old?.RatingA), Amperes(fuse.RatingA)), new("fuse", fuse.Id, "largest that its wires bear", Amperes(old?.LargestA), Amperes(fuse.LargestA)),
                new("fuse", fuse.Id, "load", Amperes(old?.LoadA), Amperes(fuse.LoadA)),
                .. old?.RatingA == fuse.RatingA ? Array.Empty<PlanChange>() : [new("fuse", fuse.Id, "volts lost in it, which its wires cannot lose", LostIn(old), LostIn(fuse))],
            ])
            {
                if (change.Before != change.After)
                {
                    yield return change;
                }
            }
        }
    }

    // a larger fuse loses less: its loops may be thinner elsewhere
    private static string? LostIn(FuseChoice? fuse) =>
        fuse is { RatingA: not null, LoadA: > 0 and var loadA } ? string.Create(CultureInfo.InvariantCulture, $"{1000 * loadA * PlanningOptions.Usual.FuseOhm(fuse.RatingA):0} mV") : null;

    /// <summary>Behind a larger fuse as much copper bears the same drop with less of it: least copper then makes wires thinner that are well as they are.</summary>
    private static IEnumerable<PlanChange> NeedNotFollow(Plan before, Plan after)
    {
        var (was, now) = (ByEnds(before), ByEnds(after));
        var isLarger = after.Fuses.Any(f => f.RatingA > before.Fuses.FirstOrDefault(b => b.Id == f.Id)?.RatingA);
        var thinner = isLarger ? was.Where(w => now.TryGetValue(w.Key, out var wire) && wire.AreaMm2 < w.Value.AreaMm2).Select(w => (Was: w.Value, Now: now[w.Key])).ToList() : [];
        return thinner.Count == 0
            ? []
            : [new("harness", after.Harness.Id, "wires that may stay as they are, as no larger fuse asks for thinner ones (it loses fewer volts itself):", Listed(thinner.Select(t => t.Was)), Listed(thinner.Select(t => t.Now)))];

        static string Listed(IEnumerable<Wire> wires) => string.Join(", ", wires.Select(w => $"{w.Id} {Size(w)}"));
    }

    private static IEnumerable<PlanChange> Copper(Plan before, Plan after)
    {
        static string Cm3(Plan plan) => string.Create(CultureInfo.InvariantCulture, $"{plan.Wires.Sum(w => w.AreaMm2 * (w.CutLengthMm ?? 0)) / 1000:0.0} cm3");
        return Cm3(before) == Cm3(after) ? [] : [new("harness", after.Harness.Id, "copper", Cm3(before), Cm3(after))];
    }

    private static Dictionary<string, Wire> ByEnds(Plan plan)
    {
        var wires = new Dictionary<string, Wire>(StringComparer.Ordinal);
        foreach (var wire in plan.Wires)
        {
            var key = $"{wire.Circuit} | {(wire.From.IsSplice ? "splice" : wire.From.At)} | {(wire.To.IsSplice ? "splice" : wire.To.At)}";
            for (var n = 1; !wires.TryAdd($"{key} | {n}", wire); n++)
            {
            }
        }

        return wires;
    }

    private static SortedDictionary<string, Finding> Keyed(ImmutableArray<Finding> findings, Dictionary<string, string> names)
    {
        var keyed = new SortedDictionary<string, Finding>(StringComparer.Ordinal);
        foreach (var finding in findings)
        {
            keyed.TryAdd(KeyOf(finding, names), finding);
        }

        return keyed;
    }

    // a wire's id may have moved on: a finding about it is known by what the wire joins
    private static string KeyOf(Finding finding, Dictionary<string, string> names)
    {
        var about = finding.Where.FirstOrDefault() ?? finding.Message;
        return $"{finding.Rule} {names.GetValueOrDefault(about, about)} {finding.Severity}";
    }

    private static Dictionary<string, string> Names(Plan plan)
    {
        var names = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (key, wire) in ByEnds(plan))
        {
            names.TryAdd(wire.Id, key);
        }

        return names;
    }

    private static string Told(Wire wire) => $"{PointWords.Of(wire.From)} to {PointWords.Of(wire.To)}, {wire.Colour}, {Size(wire)}, {Millimetres(wire.CutLengthMm)}, by {string.Join(' ', wire.Segments)}";

    private static string Size(Wire wire) => wire.Awg is null ? $"{wire.SizeLabel} mm2" : wire.SizeLabel;

    private static string Millimetres(double? mm) => mm is { } known ? string.Create(CultureInfo.InvariantCulture, $"{known:0} mm") : "unknown length";

    private static string? Amperes(double? amperes) => amperes is { } known ? string.Create(CultureInfo.InvariantCulture, $"{known:0.##} A") : null;

    private static string Terminals(Wire wire) => $"{wire.From.Terminal} {wire.To.Terminal}".Trim();
}
