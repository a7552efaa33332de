using CsCheck;
using HarnessDraw.Checking;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Checking;

/// <summary>A larger fuse never makes a protection finding go away.</summary>
public sealed class FuseInvariantTests
{
    // 26 hands over to 25 where a larger fuse no longer opens at all: the two are held as one
    private static readonly string[][] Rules = [["fuse-above-wire"], ["fuse-above-contact"], ["short-will-not-open-fuse", "wire-survives-short"], ["fuses-not-selective"]];

    [Fact]
    public void A_larger_fuse_never_removes_a_finding()
    {
        var plans = ((string[])["brackmere-six", "dunmarrow-18"]).Select(ExamplePlans.Of).Append(SmallPlan.Plan).ToArray();
        var kept = 0;
        Gen.Select(Gen.Int[0, plans.Length - 1], Gen.Int[0, 1000], Gen.Double[0.3, 3], Gen.Double[1.05, 6]).Sample((p, f, first, factor) =>
        {
            var plan = plans[p];
            var fuse = plan.Fuses[f % plan.Fuses.Length];
            if (fuse.RatingA is not { } rating)
            {
                return true;
            }

            var (small, large) = (Found(plan, fuse.Id, rating * first), Found(plan, fuse.Id, rating * first * factor));
            kept += small.Count;
            return small.IsSubsetOf(large);
        }, iter: 120, seed: "0000Kdrh5Yz1", threads: 1);
        Assert.True(kept > 50, $"{kept} findings stayed");
    }

    /// <summary>Findings that name the fuse as the one that protects: of two in a row, a larger main fuse is better for the branch.</summary>
    private static HashSet<string> Found(Plan plan, string fuse, double ratingA)
    {
        var changed = plan with { Fuses = [.. plan.Fuses.Select(f => f.Id == fuse ? f with { RatingA = ratingA } : f)] };
        var context = new RuleContext(changed, RuleSettings.BuiltIn);
        return [.. RuleCatalogue.All.Where(r => Array.Exists(Rules, g => g.Contains(r.Info.Id)))
            .SelectMany(r => r.Find(context)).Where(f => f.Where.Contains(fuse) && !(f.Rule == "fuses-not-selective" && f.Where[0] == fuse))
            .Select(f => $"{Array.FindIndex(Rules, g => g.Contains(f.Rule))} {(f.Rule == "fuses-not-selective" ? f.Where[0] : fuse)}")];
    }
}
