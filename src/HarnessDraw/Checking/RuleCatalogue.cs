using System.Collections.Immutable;
using HarnessDraw.Checking.Rules.Choices;
using HarnessDraw.Checking.Rules.Fusing;
using HarnessDraw.Checking.Rules.Identity;
using HarnessDraw.Checking.Rules.WireSize;

namespace HarnessDraw.Checking;

/// <summary>Every rule, in the order they run. A rule is added here and nowhere else.</summary>
public static class RuleCatalogue
{
    private static readonly Lazy<ImmutableArray<IDesignRule>> Rules = new(() =>
    [
        new IdNotSpreadsheetSafe(), new MeasurementsDisagree(), new EstimatedLengths(), new LengthsUnknown(), new OpenQuestions(), new LoadNotConnected(), new WireEndsOnItself(), new PowerFiguresDisagree(),
        new NominalVoltsDiffer(), new OptionsContradict(), new DeadChoice(), new NeverBuilt(), new NotFittedNoFate(),
        new UnfusedTooLong(), new SourcesJoinedUnfused(), new FuseAboveWire(), new FuseAboveContact(), new FuseLoadHigh(), new FuseOverloaded(), new FuseStateSum(),
        new ShortWillNotOpenFuse(), new WireSurvivesShort(), new FusesNotSelective(), new AlternatorFuseSmall(), new FusibleLinkInCabin(), new NoSuchFuseRating(),
        new SharedLampFuse(), new CriticalWithNuisance(), new UnfusedLeadUnguarded(), new InrushOpensFuse(),
        new WireOverloaded(), new ReturnOverloaded(), new LoopDrop(), new ChargeLeadDrop(), new StarterLoopDrop(), new WireTooThin(), new OutsideCrimpRange(), new InsulationUnsupported(),
        new InsulationTooCool(), new CrossLinkedInFuel(), new GaugeNotItsArea(), new ParallelWires(),
    ]);

    private static readonly Lazy<ImmutableArray<RuleInfo>> AllInfos = new(() => [.. Rules.Value.Select(r => r.Info), WaiverRules.IncompleteInfo, WaiverRules.IdleInfo]);

    private static readonly Lazy<Dictionary<string, RuleInfo>> ById = new(() => Infos.ToDictionary(i => i.Id, StringComparer.Ordinal));

    public static ImmutableArray<IDesignRule> All => Rules.Value;

    /// <summary>What is known about every rule, those about waivers included.</summary>
    public static ImmutableArray<RuleInfo> Infos => AllInfos.Value;

    /// <summary>Null for findings that planning made under a rule of its own.</summary>
    public static RuleInfo? Info(string id) => ById.Value.GetValueOrDefault(id);
}
