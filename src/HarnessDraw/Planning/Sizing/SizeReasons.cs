using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Electrical;
using HarnessDraw.Model;

namespace HarnessDraw.Planning.Sizing;

/// <summary>Why a wire has its size: the rule that decided, the next smaller size and what is wrong with it, and the room left.</summary>
internal sealed record SizeReason(string DecidedBy, string? RunnerUp, double? Margin);

/// <summary>Words the reasons, with numbers, from the settled rows.</summary>
internal sealed class SizeReasons(SizingResult sizing, LoadFlow flow, PlanningOptions options)
{
    // cases of each build, builds in the order of the cases
    private readonly ImmutableArray<(ImmutableSortedDictionary<string, string> Build, ImmutableArray<int> Cases)> builds =
        [.. Enumerable.Range(0, flow.Cases.Count).GroupBy(c => string.Join(';', flow.Cases[c].Build.Values), StringComparer.Ordinal).Select(g => (flow.Cases[g.First()].Build, g.ToImmutableArray()))];

    private readonly ILookup<WireRow, LoopBudget> loopsOf = sizing.Loops.SelectMany(l => l.Wires.Select(w => (w.Wire, Loop: l))).ToLookup(p => p.Wire, p => p.Loop);

    public SizeReason Of(WireRow wire)
    {
        if (wire.Given)
        {
            return new("given by hand", null, WorstLoop(wire) is { } given ? Room(LoopV(given, null, 0), given.Path.LimitV) : null);
        }

        if (wire.IsLevelled)
        {
            var others = wire.IsStrap ? "the starter's cable, whose current returns by it" : "the unfused cables before and behind it";
            return new("unfused cable", $"{Smaller(wire)} would be thinner than {others}, or all of them would lose too much", Electrical(wire));
        }

        if (wire.ByGivenAlike == wire.Size && wire.Size > LeastAlone(wire))
        {
            return new("sized alike", "one that it is to be like has its size given by hand", Electrical(wire));
        }

        if (SmallerAlone(wire) is { } alone)
        {
            return new("sized alike", $"{alone.Label}{(alone.Awg is null ? " mm2" : "")} would do by itself: it is to be as {Like(wire)}", Electrical(wire));
        }

        var least = Math.Max(wire.ByMechanics, Math.Max(wire.ByAmpacity, wire.ByProtection));
        if (wire.ByDrop > 0 && WorstLoop(wire) is { } loop)
        {
            if (wire.Size > 0 && !sizing.Sizer.HasTerminal(wire, wire.Size - 1))
            {
                return new("terminal", $"{Smaller(wire)} is outside the crimp or insulation range of the terminal", Room(loop.WiresV, Budget(loop)));
            }

            return new("voltage drop", DropRunnerUp(wire), Room(loop.WiresV, Budget(loop)));
        }

        if (wire.ByBuilt > Math.Max(least, wire.ByTerminal))
        {
            return new("as built", Text($"a new wire could be {wire.Sizes[Math.Max(least, wire.ByTerminal)].Label}, as far as it alone is concerned"), Electrical(wire));
        }

        if (wire.ByTerminal > least)
        {
            return new("terminal", $"{Smaller(wire)} is outside the crimp or insulation range of the terminal", Electrical(wire));
        }

        if (wire.ByAmpacity >= wire.ByProtection && wire.ByAmpacity > wire.ByMechanics)
        {
            return new("ampacity", wire.Size == 0 ? null : Text($"{Smaller(wire)} bears {wire.DeratedA(wire.Size - 1):0.0} A here, the load is {wire.SteadyA:0.0} A"), Room(wire.SteadyA, wire.DeratedA(wire.Size)));
        }

        if (wire.ByProtection > wire.ByMechanics && sizing.Sizer.RatingOver(wire) is { } rating)
        {
            return new("protection", wire.Size == 0 ? null : Text($"{Smaller(wire)} bears {wire.DeratedA(wire.Size - 1):0.0} A here, {(wire.SeriesA <= rating ? Text($"the load before it lets {rating:0.#} A pass") : Text($"{sizing.Sizer.FuseOver(wire)} is {rating:0.#} A"))}"), Room(rating, wire.DeratedA(wire.Size)));
        }

        return new("mechanical minimum", wire.Size == 0 ? null : Text($"{Smaller(wire)} is below the {options.SmallestAreaMm2:0.##} mm2 minimum"), Electrical(wire));
    }

    // the next smaller size that would do, were it not for those that it is to be like
    private WireSize? SmallerAlone(WireRow wire)
    {
        if (wire.Alike.IsEmpty)
        {
            return null;
        }

        var least = LeastAlone(wire);
        for (var s = wire.Size - 1; s >= least; s--)
        {
            if (sizing.Sizer.HasOwnTerminal(wire, s))
            {
                return loopsOf[wire].All(l => l.WiresVWith(wire, s) <= Budget(l)) ? wire.Sizes[s] : null;
            }
        }

        return null;
    }

    private static int LeastAlone(WireRow wire) => Math.Max(Math.Max(wire.ByMechanics, wire.ByAmpacity), Math.Max(wire.ByProtection, wire.ByBuilt));

    private static string Like(WireRow wire)
    {
        string[] others = [.. wire.Alike.Where(w => w.Circuit != wire.Circuit).Select(w => w.Circuit.Id).Distinct(StringComparer.Ordinal)];
        return others.Length > 0 ? string.Join(", ", others) : $"the other legs of {wire.Circuit.Id}";
    }

    public ImmutableArray<LoopBudget> LoopsOf(WireRow wire) => [.. loopsOf[wire]];

    private double? Electrical(WireRow wire) => wire.SteadyA > 0 ? Room(Math.Max(wire.SteadyA, sizing.Sizer.RatingOver(wire) ?? 0), wire.DeratedA(wire.Size)) : null;

    private LoopBudget? WorstLoop(WireRow wire) => loopsOf[wire].OrderByDescending(l => l.WiresV / Budget(l)).FirstOrDefault();

    private double Budget(LoopBudget loop) => sizing.Sizer.AllowedV(loop);

    private string DropRunnerUp(WireRow wire)
    {
        if (wire.Size == 0)
        {
            return "no smaller size is stocked";
        }

        // the loop that the smaller size would break first
        var loop = loopsOf[wire].OrderByDescending(l => l.WiresVWith(wire, wire.Size - 1) / Budget(l)).First();
        if (Budget(loop) > loop.RemainderV + 1e-9)
        {
            var why = sizing.Sizer.Unmet.Contains((loop.Path.Load, loop.Path.Case)) ? "no copper meets" : "thin hand-given wires in it keep it from";
            return Text($"{Smaller(wire)} would lose {100 * loop.WiresVWith(wire, wire.Size - 1) / loop.Path.NominalV:0.00} % in the wires to {loop.Path.Load}, which are held to {100 * Budget(loop) / loop.Path.NominalV:0.00} %: {why} {100 * loop.Path.LimitFraction:0.#} % beside the {100 * loop.Path.FixedV / loop.Path.NominalV:0.0} % that is lost in contacts, fuses and kept wiring");
        }

        var volts = LoopV(loop, wire, wire.Size - 1);
        var kept = Text($", of which {100 * loop.Path.FixedV / loop.Path.NominalV:0.0} % is lost in contacts, fuses and kept wiring");
        return Text($"{Smaller(wire)} would be {100 * volts / loop.Path.NominalV:0.0} % at {loop.Path.Load}, limit {100 * loop.Path.LimitFraction:0.#} %{kept}");
    }

    private static double LoopV(LoopBudget loop, WireRow? changed, int size) => loop.Path.FixedV + (changed is null ? loop.WiresV : loop.WiresVWith(changed, size));

    private string Smaller(WireRow wire) => $"{(wire.Size == 0 ? "a smaller size" : wire.Sizes[wire.Size - 1].Label)} {(wire.Size > 0 && wire.Sizes[wire.Size - 1].Awg is null ? "mm2" : "")}".TrimEnd();

    private static double? Room(double value, double limit) => limit > 0 ? Math.Round((limit - value) / limit, 4) : null;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>The largest current in each build that has the wire; empty where they are alike.</summary>
    public ImmutableArray<BuildCurrent> BuildCurrentsOf(WireRow wire)
    {
        var currents = ImmutableArray.CreateBuilder<BuildCurrent>(builds.Length);
        var areAlike = true;
        foreach (var (build, cases) in builds)
        {
            if (wire.Draft.Builds.Holds(build))
            {
                var mostA = double.NegativeInfinity;
                foreach (var c in cases)
                {
                    mostA = Math.Max(mostA, Math.Round(wire.CaseA[c], 3));
                }

                currents.Add(new(build, mostA));
                areAlike &= mostA == currents[0].CurrentA;
            }
        }

        return areAlike ? [] : currents.ToImmutable();
    }

    /// <summary>Worst state of a wire: the largest current, cranking included.</summary>
    public WorstState? WorstOf(WireRow wire)
    {
        if (wire.CaseA.Length == 0)
        {
            return null;
        }

        var worst = 0;
        for (var i = 1; i < wire.CaseA.Length; i++)
        {
            worst = wire.CaseA[i] > wire.CaseA[worst] + 1e-9 ? i : worst;
        }

        var currentA = wire.CaseA[worst];
        var steady = flow.Cases[worst].Momentary ? currentA / options.MomentaryFactor : currentA;
        var celsius = double.IsNaN(wire.CaseC[worst]) ? wire.SteadyC(wire.Size, steady) : wire.CaseC[worst];
        return new(flow.Cases[worst].State, Math.Round(currentA, 3), Math.Round(currentA * wire.OhmAt(wire.Size, celsius), 4), Math.Round(celsius, 1));
    }
}
