using System.Collections.Immutable;

namespace HarnessDraw.Sheets;

/// <summary>The sheets that one person needs, as a set with a name.</summary>
public static class ReadySets
{
    /// <summary>Who makes the harness at the bench, who fits it, who looks for a fault, who teaches.</summary>
    public static ImmutableArray<string> Names { get; } = ["builder", "fabricator", "troubleshooter", "teacher"];

    /// <summary>The set whose sheets say what commonly goes wrong.</summary>
    public const string Teacher = "teacher";

    /// <param name="name">One of <see cref="Names"/>.</param>
    public static ImmutableArray<string> Of(string name) => name switch
    {
        "builder" => [SheetKinds.WallChart, SheetKinds.Connectors, SheetKinds.FuseCard, SheetKinds.OpeningTemplate, SheetKinds.Power, SheetKinds.Installation, SheetKinds.Commissioning, SheetKinds.Survey],
        "fabricator" => [SheetKinds.WallChart, SheetKinds.Connectors, SheetKinds.CutList, SheetKinds.Labels, SheetKinds.SpliceTable, SheetKinds.BuildBoard, SheetKinds.LayOrder, SheetKinds.BenchTest],
        "troubleshooter" => [SheetKinds.WallChart, SheetKinds.Connectors, SheetKinds.FuseCard, SheetKinds.Trace, SheetKinds.Symptoms, SheetKinds.Power, SheetKinds.FoundWires],
        "teacher" => [SheetKinds.WallChart, SheetKinds.Connectors, SheetKinds.Trace, SheetKinds.Symptoms, SheetKinds.BenchTest, SheetKinds.Power, SheetKinds.FoundWires, SheetKinds.Installation, SheetKinds.Handout, SheetKinds.HandoutKey, SheetKinds.Projector],
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "not a ready set"),
    };
}
