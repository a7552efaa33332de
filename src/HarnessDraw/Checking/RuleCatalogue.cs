using System.Collections.Immutable;
using HarnessDraw.Checking.Rules.Choices;
using HarnessDraw.Checking.Rules.Colouring;
using HarnessDraw.Checking.Rules.Connectors;
using HarnessDraw.Checking.Rules.Fusing;
using HarnessDraw.Checking.Rules.Grounding;
using HarnessDraw.Checking.Rules.Identity;
using HarnessDraw.Checking.Rules.Making;
using HarnessDraw.Checking.Rules.Network;
using HarnessDraw.Checking.Rules.Particular;
using HarnessDraw.Checking.Rules.Routing;
using HarnessDraw.Checking.Rules.Splicing;
using HarnessDraw.Checking.Rules.Sizing;

namespace HarnessDraw.Checking;

/// <summary>Every rule, in the order they run. A rule is added here and nowhere else.</summary>
public static class RuleCatalogue
{
    private static readonly Lazy<ImmutableArray<IDesignRule>> Rules = new(() =>
    [
        new IdNotSpreadsheetSafe(), new MeasurementsDisagree(), new EstimatedLengths(), new LengthsUnknown(), new OpenQuestions(), new LoadNotConnected(), new WireEndsOnItself(), new PowerFiguresDisagree(),
        new NominalVoltsDiffer(), new OptionsContradict(), new DeadChoice(), new NeverBuilt(), new NotFittedNoFate(),
        new UnfusedTooLong(), new SourcesJoinedUnfused(), new FuseAboveWire(), new FuseAboveContact(), new FuseFarAboveLoad(), new FuseLoadHigh(), new FuseOverloaded(), new FuseStateSum(),
        new ShortWillNotOpenFuse(), new WireSurvivesShort(), new FusesNotSelective(), new AlternatorFuseSmall(), new FusibleLinkInCabin(), new NoSuchFuseRating(),
        new FuseLoadWithOption(), new FusePlaceUnknown(), new SharedLampFuse(), new CriticalWithNuisance(), new InstrumentsWithMotor(), new UnfusedLeadUnguarded(), new InrushOpensFuse(),
        new WireOverloaded(), new ReturnOverloaded(), new LoopDrop(), new ChargeLeadDrop(), new StarterLoopDrop(), new WireTooThin(), new OutsideCrimpRange(), new InsulationUnsupported(),
        new InsulationTooCool(), new CrossLinkedInFuel(), new GaugeNotItsArea(), new SizeNotStocked(), new ParallelWires(), new PairSizesDiffer(),
        new MirroredPinMap(), new SealantNotNamed(), new TwoWiresInCavity(), new TwoWiresOnBlade(), new NetDiffersAcrossMate(), new ColourChangesAtFirewall(), new WrongHalf(), new ContactOverloaded(), new LoadedNeighbours(), new FirewallPasses(),
        new LiveBesideSender(), new LeftBesideRight(), new ApartButNeighbours(), new MixedVoltsInConnector(), new ForeignTerminal(), new SealDoesNotGrip(), new CavityUnplugged(), new TooManyCircuits(),
        new NoReserve(), new RingNotItsStud(), new RingsPerStud(), new TorqueNotGiven(), new LivePinsBare(), new PlugsSwappable(),
        new NoSource(), new DeadShort(), new FloatingNet(), new NoLengthLeft(), new NeverOn(), new OnButDead(), new JumperBesideWire(), new AmmeterBelowOutput(), new SenderByItsThread(),
        new GroundBackFeed(), new NoReturn(), new ReturnThroughNonMetal(), new BatteryNotBonded(), new StrapSmall(), new GroundCrowded(), new SenderSharesReturn(), new ScreenNotGrounded(), new GroundFinishMissing(),
        new MotorFedTwice(), new InterlockBypassed(), new CoilBallast(), new IgnitionOffWhileTurning(), new OneSideNamed(), new FlasherUnderloaded(), new BrakeWarningUnproved(), new TriggerFeedsLoad(), new RelayContactOverloaded(), new CoilAboveContact(), new DiodeReversed(), new PositiveGround(), new ExciterRunOn(), new ExciterCurrentLow(), new OneWireKeepsExciter(),
        new LiveBladeBare(), new KeyOffDrain(), new GreenYellowUsed(), new SignalBesideCharge(),
        new NoRoute(), new ShorterThanStraight(), new ClipsTooFar(), new GrommetFit(), new PartDoesNotPass(), new SlackOverMovement(), new BundleTooThick(), new TooNearKeepClear(), new ForbiddenZone(), new CutTooShort(), new HoleEdgeBare(), new LongerThanReel(), new WireNotOnce(), new ReadingOff(),
        new BendTooTight(), new OpeningsTooClose(), new DatumNotGiven(), new DripLoopMissing(), new NoNewTerminal(), new NotReachable(), new GrommetClosedIn(), new HandRouteOffPath(), new NoTerminalFits(), new SizeStepsDown(), new SpliceUnbalanced(), new CurrentNotGiven(), new ElectronicsBeforeIsolation(), new RevisionsMixed(),
        new SplicesTooNear(), new SpliceNearEnd(), new SpliceOverfilled(), new SpliceFlexing(), new SpliceInPassage(), new SpliceWet(), new SpliceManyWires(), new SpliceInPowerLead(), new SplicesInSeries(),
        new FusibleLinkSize(), new CrankingSag(), new CrossLinkedReplaced(), new CoilUnsuppressed(), new HeadlampsThroughSwitch(),
        new SameColourAndSize(), new ColoursConfusable(), new BaseTracerSwapped(), new BlackFeedRedGround(), new ColourNotStocked(),
    ]);

    private static readonly Lazy<ImmutableArray<RuleInfo>> AllInfos = new(() => [.. Rules.Value.Select(r => r.Info), WaiverRules.IncompleteInfo, WaiverRules.IdleInfo, .. SheetRules.Infos]);

    private static readonly Lazy<Dictionary<string, RuleInfo>> ById = new(() => Infos.ToDictionary(i => i.Id, StringComparer.Ordinal));

    public static ImmutableArray<IDesignRule> All => Rules.Value;

    /// <summary>What is known about every rule, those about waivers and sheets included.</summary>
    public static ImmutableArray<RuleInfo> Infos => AllInfos.Value;

    /// <summary>The page of rules in Markdown.</summary>
    public static string Markdown() => RuleTable.Markdown();

    /// <summary>Null for findings that planning made under a rule of its own.</summary>
    public static RuleInfo? Info(string id) => ById.Value.GetValueOrDefault(id);
}
