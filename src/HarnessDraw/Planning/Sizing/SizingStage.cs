using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning.Cavities;
using HarnessDraw.Planning.Lengths;
using HarnessDraw.Planning.Splicing;

namespace HarnessDraw.Planning.Sizing;

/// <summary>What sizing hands on beside the rows.</summary>
internal sealed record SizingResult(
    Wiring Wiring, ImmutableArray<LoopBudget> Loops, ImmutableSortedDictionary<string, ChosenRating> Fuses, List<CavityGiven> Cavities, TerminalChooser Terminals, WireSizer Sizer,
    List<CavitySeeker> WithoutCavity);

/// <summary>Sizes, cavities and fuses settle one another in a few rounds: currents give fuses, fuses and drops give sizes, sizes give cavities.</summary>
internal sealed class SizingStage(RoutedHarness routed, PlanningOptions options)
{
    // rounds that may take copper back; sizes that still swing between two then keep the larger
    private const int RoundsBothWays = 4;
    private const int RoundsBeforeCavities = 2;
    private readonly HarnessIndex index = routed.Index;
    private readonly TerminalChooser terminals = new(routed.Index);
    private readonly LeafKeys keys = new(routed);
    private ImmutableSortedDictionary<string, ChosenRating> fuses = ImmutableSortedDictionary.Create<string, ChosenRating>(StringComparer.Ordinal);
    private List<CavityGiven> cavities = [];
    private List<CavitySeeker> withoutCavity = [];
    private ImmutableArray<LoopBudget> loops = [];
    private List<DropPath>? paths;
    private WireSizer sizer = new(options, new(routed.Index), _ => null);

    public ImmutableArray<WireRow> Size(Wiring wiring)
    {
        fuses = index.Harness.Protections.ToImmutableSortedDictionary(
            p => p.Id, p => FuseChooser.Choose(p, SeriesOf(p), routed.Flow.Fuses.GetValueOrDefault(p.Id), options), StringComparer.Ordinal);
        var rows = new RowMaker(index, options, routed.Tree, routed.Flow).Make(wiring);
        var nominal = Loops(rows);
        loops = nominal;
        SizeAll(rows);
        // cavities are given by what the wires will need there: a small terminal once chosen takes no larger wire
        var states = new SolvedStates(routed, options, terminals, rows, fuses);
        Settle(rows, states, nominal, RoundsBeforeCavities);
        AssignCavities(rows);
        Settle(rows, states, nominal, options.MostSizingRounds);
        return rows;
    }

    /// <summary>Sizes, lengths and the solved states settle one another: done when the sizes that the states ask for are those they were solved with.</summary>
    private void Settle(ImmutableArray<WireRow> rows, SolvedStates states, ImmutableArray<LoopBudget> nominal, int mostRounds)
    {
        for (var round = 0; round < mostRounds; round++)
        {
            SetLengths(rows);
            states.Solve();
            loops = [.. nominal.Select(states.Solved).OfType<LoopBudget>()];
            var before = rows.Select(r => r.Size).ToArray();
            SizeAll(rows);
            if (before.SequenceEqual(rows.Select(r => r.Size)))
            {
                break;
            }

            if (round >= RoundsBothWays)
            {
                for (var w = 0; w < rows.Length; w++)
                {
                    rows[w].Floor = Math.Max(rows[w].Floor, Math.Max(before[w], rows[w].Size));
                }
            }
        }
    }

    public SizingResult Finish(Wiring wiring, PlanningFindings findings)
    {
        foreach (var protection in index.Harness.Protections.Where(p => fuses[p.Id].RatingA is null))
        {
            findings.AddNoRating(protection, fuses[protection.Id].LoadA);
        }

        return new(wiring, loops, fuses, cavities, terminals, sizer, withoutCavity);
    }

    private FuseSeries? SeriesOf(Protection protection) => index.Harness.Catalogue.Fuses.FirstOrDefault(f => f.Kind == protection.Kind);

    private double FuseOhm(string id) => fuses.TryGetValue(id, out var fuse) && fuse.RatingA is { } rating ? options.FuseDropV / rating : 0.005;

    private ImmutableArray<LoopBudget> Loops(ImmutableArray<WireRow> rows)
    {
        // ways, contacts and fuses are the same for every wiring
        paths ??= routed.Flow.Paths(FuseOhm);
        var byNet = rows.ToLookup(r => r.Draft.Net);
        return
        [
            .. paths.Select(p => new LoopBudget(p,
            [
                .. p.Hops.SelectMany(h => byNet[h.Net].Where(w => w.Draft.FromSide.Contains(h.From) != w.Draft.FromSide.Contains(h.To)))
                    .Select(w => new LoopPass(w, w.CaseA[p.Case], null)),
            ])),
        ];
    }

    private void SizeAll(ImmutableArray<WireRow> rows)
    {
        sizer = new(options, terminals, id => fuses.TryGetValue(id, out var fuse) ? fuse.RatingA : null);
        sizer.Size(rows, loops);
    }

    private void AssignCavities(ImmutableArray<WireRow> rows)
    {
        var assigner = new CavityAssigner(index, terminals, sizer);
        cavities = [];
        var seekers = rows.SelectMany(r => new[] { (Row: r, AtFrom: true, r.Draft.From.Pin), (Row: r, AtFrom: false, r.Draft.To.Pin) })
            .Where(s => s.Pin is not null && index.IsMate(s.Pin) && s.Row.Net.Side == Side.Bay)
            .Select(s => new CavitySeeker(s.Row, s.AtFrom, s.Pin!, HalfLetter(s.Row.Circuit, s.Pin!), keys.KeyOf(s.Row)));
        foreach (var connector in seekers.GroupBy(s => s.Pin.Thing, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            if (index.Connector(index.Thing(connector.Key)!.ConnectorPart) is { } part)
            {
                cavities.AddRange(assigner.Assign(part, OnePerInline(connector.Key, [.. connector])));
            }
        }

        withoutCavity = assigner.WithoutCavity;
        foreach (var given in cavities)
        {
            SetCavity(given.Seeker.Wire, given.Seeker.AtFrom, given.Cavity);
        }

        FollowOtherSide(rows);
    }

    /// <summary>The two wires of a circuit that meet in an inline connector seek one cavity between them.</summary>
    private List<CavitySeeker> OnePerInline(string connector, List<CavitySeeker> seekers) =>
        index.Thing(connector)!.Kind == ThingKind.Inline ? [.. seekers.DistinctBy(s => s.Wire.Circuit.Id, StringComparer.Ordinal)] : seekers;

    /// <summary>Wires built on the cabin side, and second wires at an inline connector, take the cavity of their circuit.</summary>
    private void FollowOtherSide(ImmutableArray<WireRow> rows)
    {
        foreach (var row in rows)
        {
            foreach (var atFrom in (bool[])[true, false])
            {
                var end = atFrom ? row.Draft.From : row.Draft.To;
                if (end.Pin is { } pin && index.IsMate(pin) && (atFrom ? row.FromCavity : row.ToCavity) is null)
                {
                    var mine = cavities.FirstOrDefault(c => c.Seeker.Pin.Thing == pin.Thing && c.Seeker.Wire.Circuit.Id == row.Circuit.Id
                        && (row.Net.Side == Side.Cabin || index.Thing(pin.Thing)!.Kind == ThingKind.Inline));
                    SetCavity(row, atFrom, mine?.Cavity);
                }
            }
        }
    }

    private static void SetCavity(WireRow row, bool atFrom, string? cavity)
    {
        if (atFrom)
        {
            row.FromCavity = cavity;
        }
        else
        {
            row.ToCavity = cavity;
        }
    }

    private string? HalfLetter(Circuit circuit, PinRef pin) =>
        circuit.Half is null ? null : index.Thing(pin.Thing)?.Halves.FirstOrDefault(h => h.Name == circuit.Half)?.Letter ?? circuit.Half;

    /// <summary>Conductor lengths from the cut lengths of the sizes so far.</summary>
    private void SetLengths(ImmutableArray<WireRow> rows)
    {
        var model = new LengthModel(index, options, routed.Tree);
        var ends = new EndFitter(index, terminals);
        var bundles = RoughBundles(rows);
        foreach (var row in rows)
        {
            var allowances = model.Of(row, ends.Fit(row, true, []), ends.Fit(row, false, []), s => bundles[s]);
            row.ConductorMm = row.Draft.Hand?.CutLengthMm ?? model.RoundUp(row.PathMm + allowances.Sum(a => a.LengthMm));
        }
    }

    private double[] RoughBundles(ImmutableArray<WireRow> rows)
    {
        var squares = new double[routed.Tree.Segments.Count];
        foreach (var row in rows)
        {
            foreach (var s in row.Way)
            {
                squares[s] += row.SizeNow.OutsideMm * row.SizeNow.OutsideMm;
            }
        }

        return [.. squares.Select(s => options.BundleFactor * Math.Sqrt(s))];
    }
}
