using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using HarnessDraw.Checking;
using HarnessDraw.Comparing;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Reading;
using HarnessDraw.Reading.Edits;
using HarnessDraw.Writing.Frozen;

namespace HarnessDraw;

/// <summary>One way to feed a new load: the fuse, the wires that come with it, and what it does to everything else.</summary>
public sealed record LoadFit(FuseChoice Fuse, bool IsNewFuse, string? Holder, ImmutableArray<Wire> Wires, PlanDifference Difference)
{
    public int NewErrors => Difference.New.Count(f => f.Severity == Severity.Error);

    public int NewWarnings => Difference.New.Count(f => f.Severity == Severity.Warning);

    /// <summary>Copper of its wires, mm3.</summary>
    public double CopperMm3 => Wires.Sum(w => w.AreaMm2 * (w.CutLengthMm ?? w.PathLengthMm ?? 0));
}

/// <summary>The ways that were tried, the best first, or what is wrong with the question.</summary>
public sealed record LoadFits(ImmutableArray<LoadFit> Ways, string? Problem);

/// <summary>
/// Where a new load goes: it is written into the description in memory, behind every fuse that has room and behind a new one on each holder of fuses, and each
/// is planned and checked in full. The load is taken as on whenever its key position feeds it.
/// </summary>
public static class LoadFitter
{
    /// <summary>Name of the load and its circuit while it is tried.</summary>
    public const string Name = "new load";
    private const string NewFuse = "new fuse";
    private const int MostFuses = 4;
    private const int MostHolders = 3;

    // continuous load of a fuse, at the most (the trade's four fifths; common practice, no source)
    private const double MostShare = 0.8;

    public static LoadFits Fit(string descriptionFile, IFileSource files, RuleSettings rules, CheckedPlan before, string load, string place)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(before);
        var harness = before.Plan.Harness;
        if (harness.Layout.Places.All(p => p.Id != place))
        {
            return new([], $"the layout has no place '{place}'{(NearestName.Hint(place, harness.Layout.Places.Select(p => p.Id)) is { } hint ? $"; {hint}" : "")}");
        }

        if (Amperes(load, harness) is not { } amperes)
        {
            return new([], $"'{load}' is no load; expected a current or a power, as in '6 A' or '55 W'");
        }

        var text = files.ReadText(descriptionFile);
        var ways = Candidates(before.Plan, amperes).Select(c => Try(descriptionFile, files, rules, before, text, load, place, c)).OfType<LoadFit>();
        return new([.. ways.OrderBy(w => w.NewErrors).ThenBy(w => w.NewWarnings).ThenBy(w => w.IsNewFuse).ThenBy(w => w.CopperMm3).ThenBy(w => w.Fuse.Id, StringComparer.Ordinal).ThenBy(w => w.Holder, StringComparer.Ordinal)], null);
    }

    private static double? Amperes(string load, Harness harness)
    {
        var words = load.Trim().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var volts = harness.Power.NominalV;
        return words is [var number, var unit] && double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value > 0 && double.IsFinite(value)
            ? unit switch { "A" => value, "mA" => value / 1000, "W" => value / volts, "kW" => 1000 * value / volts, _ => null }
            : null;
    }

    /// <summary>Fuses with room, most room first, and the holders that could take one more; each with a circuit that shows how the cabin is passed.</summary>
    private static IEnumerable<Candidate> Candidates(Plan plan, double amperes)
    {
        var harness = plan.Harness;
        Circuit? From(string fuse) => harness.Circuits.FirstOrDefault(c => !c.IsReturn && c.From?.Thing == fuse && c.NominalV == harness.Power.NominalV);
        var fed = plan.Fuses.Where(f => From(f.Id) is { } c && c.Feeds.All(t => harness.Things.First(x => x.Id == t.Thing).Kind is not (ThingKind.FusePanel or ThingKind.BusBar))).ToList();
        foreach (var fuse in fed.Where(f => f.RatingA is { } rating && (f.LoadA ?? 0) + amperes <= MostShare * rating).OrderByDescending(f => (MostShare * f.RatingA!.Value) - (f.LoadA ?? 0)).ThenBy(f => f.Id, StringComparer.Ordinal).Take(MostFuses))
        {
            yield return new(fuse.Id, null, From(fuse.Id)!);
        }

        // a small load on a bus bar of bolt-in fuses gets a blade: the least bolt-in would ask for wire as thick as the bar's own feeds
        var blade = harness.Catalogue.Fuses.Where(f => f.Kind == ProtectionKind.Blade).SelectMany(f => f.Ratings).Any(r => amperes <= MostShare * r.RatingA);
        var holders = harness.Protections.Where(p => p.On is not null && From(p.Id) is not null).GroupBy(p => p.On!, StringComparer.Ordinal).Take(MostHolders);
        foreach (var holder in holders)
        {
            var like = holder.FirstOrDefault(p => fed.Exists(f => f.Id == p.Id)) ?? holder.First();
            yield return new(NewFuse, like, From(like.Id)!) { Kind = blade ? "blade" : "bolt-in" };
        }
    }

    private static LoadFit? Try(string file, IFileSource files, RuleSettings rules, CheckedPlan before, string text, string load, string place, Candidate candidate)
    {
        var like = candidate.Circuit;
        var way = (like.EntersBy is null ? "" : $"enters-by: '{like.EntersBy}', ") + (like.Half is null ? "" : $"half: '{like.Half}', ");
        var live = like.LiveWith == KeyPosition.Off ? "always" : "run";
        var edited = DescriptionEdit.Add(text, "things", Name, $"{{ at: '{place}', blades: {{ 1: 6.3 mm, 2: 6.3 mm }}, heater: {{ 1: '{load}' }}, returns: 2 }}");
        edited = edited is null ? null : DescriptionEdit.Add(edited, "circuits", Name, $"{{ from: '{candidate.Fuse}', {way}feeds: [{Name}.1], live: {live} }}");
        edited = edited is null || candidate.LikeFuse is not { } holder ? edited : DescriptionEdit.Add(edited, "protection", NewFuse, $"{{ kind: {candidate.Kind}, on: '{holder.On}' }}");
        if (edited is null)
        {
            return null;
        }

        var changed = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal).Add(file, edited);
        // what is there keeps its cavities and ids, as if it were built: the load takes what is free; what only a built harness can lack is not said of one that is on paper
        var frozen = InputFiles.Beside(file, System.IO.Path.GetFileNameWithoutExtension(file) + HarnessCompiler.FrozenEnding);
        var isBuilt = files.Exists(frozen);
        changed = isBuilt ? changed : changed.Add(frozen, Encoding.UTF8.GetString(FrozenJsonWriter.Write(HarnessFreezer.Freeze(before.Plan))));
        var planned = HarnessCompiler.Plan(file, new EditedFiles(files, changed), rules);
        return planned.Failed || planned.Value!.Plan.Fuses.FirstOrDefault(f => f.Id == candidate.Fuse) is not { } fuse
            ? null
            : new(fuse, candidate.LikeFuse is not null, candidate.LikeFuse?.On, [.. planned.Value.Plan.Wires.Where(w => w.Circuit == Name || w.From.At == Name || w.To.At == Name)],
                PlanDifference.Of(before.Plan, before.Findings, planned.Value.Plan, [.. planned.Value.Findings.Where(f => isBuilt || !f.Rule.StartsWith("built-", StringComparison.Ordinal))]));
    }

    private sealed record Candidate(string Fuse, Protection? LikeFuse, Circuit Circuit)
    {
        public string Kind { get; init; } = "";
    }
}
