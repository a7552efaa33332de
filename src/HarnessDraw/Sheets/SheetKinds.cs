using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>The kinds of sheets in the order of the set. The name is the one in file names and on the command line.</summary>
public static class SheetKinds
{
    public const string WallChart = "wall-chart";
    public const string Connectors = "connectors";
    public const string CutList = "cut-list";

    public const string FuseCard = "fuse-card";
    public const string Labels = "label-sheet";
    public const string SpliceTable = "splice-table";
    public const string Trace = "trace";
    public const string BenchTest = "bench-test";
    public const string BuildBoard = "build-board";
    public const string LayOrder = "lay-order";
    public const string OpeningTemplate = "opening-template";
    public const string Power = "power";
    public const string Installation = "installation";
    public const string Commissioning = "commissioning";
    public const string FoundWires = "found-wire-index";
    public const string Survey = "survey";
    public const string Symptoms = "symptom-table";
    public const string Handout = "handout";
    public const string HandoutKey = "handout-key";
    public const string Projector = "projector";

    /// <summary>Drawn where a built state was named to compare with; not asked for by name.</summary>
    public const string Changes = "changes";

    public static ImmutableArray<string> All { get; } = [WallChart, Connectors, CutList, FuseCard, Labels, SpliceTable, Trace, BuildBoard, LayOrder, BenchTest, OpeningTemplate, Power, Installation, Commissioning, FoundWires, Symptoms, Survey, Handout, HandoutKey, Projector];

    /// <summary>What is drawn when nothing is asked for by name.</summary>
    public static ImmutableArray<string> Usual { get; } = [WallChart, Connectors, CutList];

    /// <param name="kind">One of <see cref="All"/>, or <see cref="Changes"/>.</param>
    /// <param name="plan">The plan, already filtered when one build is shown.</param>
    /// <param name="findings">What was found in it; errors mark the sheets.</param>
    /// <param name="options">What the person asked for.</param>
    public static SheetResult Compose(string kind, Plan plan, ImmutableArray<Finding> findings, SheetOptions options) => kind switch
    {
        WallChart => Sheets.WallChart.Compose(plan, findings, options),
        Connectors => ConnectorSheets.Compose(plan, findings, options),
        CutList => CutListSheets.Compose(plan, findings, options),
        FuseCard => FuseCards.FuseCardSheets.Compose(plan, findings, options),
        Labels => HarnessDraw.Sheets.Labels.LabelSheets.Compose(plan, findings, options),
        SpliceTable => SpliceTables.SpliceSheets.Compose(plan, findings, options),
        Trace => TraceSheets.CircuitTraceSheets.Compose(plan, findings, options),
        BenchTest => BenchTests.BenchTestSheets.Compose(plan, findings, options),
        BuildBoard => BuildBoards.BuildBoardSheet.Compose(plan, findings, options),
        LayOrder => BuildBoards.LayOrderSheet.Compose(plan, findings, options),
        OpeningTemplate => OpeningTemplates.OpeningTemplateSheets.Compose(plan, findings, options),
        Power => PowerSheets.PowerSheet.Compose(plan, findings, options),
        Installation => HarnessDraw.Sheets.Installation.InstallationSheets.Compose(plan, findings, options),
        Commissioning => CommissioningSheets.CommissioningTable.Compose(plan, findings, options),
        FoundWires => HarnessDraw.Sheets.FoundWires.FoundWireIndex.Compose(plan, findings, options),
        Symptoms => SymptomTables.SymptomSheets.Compose(plan, findings, options),
        Survey => SurveySheets.SurveySheet.Compose(plan, findings, options),
        Handout => Teaching.HandoutSheets.Compose(plan, findings, options),
        HandoutKey => Teaching.HandoutSheets.ComposeKey(plan, findings, options),
        Projector => Teaching.ProjectorSheets.Compose(plan, findings, options),
        Changes => HarnessDraw.Sheets.Changes.ChangeSheets.Compose(plan, findings, options),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "not a kind of sheet"),
    };
}
