using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class GreenYellowUsed : IDesignRule
{
    // what IEC 61140 calls extra-low voltage ends at 50 V AC
    private const double MainsFromV = 50;

    public RuleInfo Info { get; } = new("green-yellow-used", "Green and yellow together on a wire", Severity.Warning, Consequence.Fire, "IEC 60757 and IEC 60445: green-and-yellow is the protective conductor",
        "On a vehicle with a mains hook-up it is taken for protective earth.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var wires = context.Plan.Wires.Where(w => w.Colour is "GN/YE" or "YE/GN" or "GNYE").ToList();
        if (wires.Count > 0)
        {
            var mains = context.Harness.Power.Sources.Any(s => s.NominalV >= MainsFromV);
            yield return context.Found(Info, $"{Wording.List(wires.Select(w => $"{w.Named()} is {w.Colour}"))}: reserved for protective earth{(mains ? ", and there is a hook-up on board" : " wherever a mains hook-up may come on board")}.", "Use another tracer: GN/WH, YE/BK.", wires.Select(w => w.Id), severity: mains ? Severity.Error : Severity.Warning);
        }
    }
}
