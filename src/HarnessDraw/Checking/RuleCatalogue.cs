using System.Collections.Immutable;
using HarnessDraw.Checking.Rules.Fusing;
using HarnessDraw.Checking.Rules.WireSize;

namespace HarnessDraw.Checking;

/// <summary>Every rule, in the order they run. A rule is added here and nowhere else.</summary>
public static class RuleCatalogue
{
    private static readonly Lazy<ImmutableArray<IDesignRule>> Rules = new(() =>
    [
        new UnfusedTooLong(), new SourcesJoinedUnfused(), new FuseAboveWire(), new FuseAboveContact(), new FuseLoadHigh(), new FuseOverloaded(), new FuseStateSum(),
        new ShortWillNotOpenFuse(), new WireSurvivesShort(), new FusesNotSelective(), new AlternatorFuseSmall(), new FusibleLinkInCabin(), new NoSuchFuseRating(),
        new SharedLampFuse(), new CriticalWithNuisance(), new UnfusedLeadUnguarded(), new InrushOpensFuse(),
        new WireOverloaded(), new ReturnOverloaded(),
    ]);

    private static readonly Lazy<Dictionary<string, RuleInfo>> ById = new(() =>
        Rules.Value.Select(r => r.Info).Append(WaiverRules.IncompleteInfo).Append(WaiverRules.IdleInfo).ToDictionary(i => i.Id, StringComparer.Ordinal));

    public static ImmutableArray<IDesignRule> All => Rules.Value;

    /// <summary>Null for findings that planning made under a rule of its own.</summary>
    public static RuleInfo? Info(string id) => ById.Value.GetValueOrDefault(id);
}
