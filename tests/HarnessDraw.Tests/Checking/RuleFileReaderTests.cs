using HarnessDraw.Checking;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;
using HarnessDraw.Reading;

namespace HarnessDraw.Tests.Checking;

public class RuleFileReaderTests
{
    [Fact]
    public void Severities_and_limits_are_read_in_the_unit_of_the_limit()
    {
        var read = Read("rules:\n  fuse-load-high: { severity: error, limits: { share: 75 %, heat from: 60 degC } }\n  wire-too-thin: { limits: { in the bay: 0.75 mm2 } }\n");
        Assert.Empty(read.Diagnostics);
        Assert.Equal(["fuse-load-high: error", "fuse-load-high: share 75 %", "fuse-load-high: heat from 60 °C", "wire-too-thin: in the bay 0.75 mm²"], read.Value!.Changes);
    }

    /// <summary>What the planner works by is what its plans are held to, where no rule file says otherwise.</summary>
    [Fact]
    public void Limits_that_plans_are_made_by_are_those_of_the_planner()
    {
        var options = PlanningOptions.Usual;
        (string Rule, string Limit, double Planned)[] shared =
        [
            ("fuse-load-high", "share", 100 * options.MostFuseShare), ("fuse-load-high", "share in heat", 100 * options.MostFuseShareInHeat), ("fuse-load-high", "heat from", options.FuseHeatC),
            ("fuse-load-with-option", "share", 100 * options.MostFuseShare), ("fuse-state-sum", "share", 100 * options.MostFuseShare), ("fuse-above-contact", "of contact", options.FuseOverContact),
            ("inrush-opens-fuse", "blade times rating", options.PeakOverBlade), ("inrush-opens-fuse", "bolt-in times rating", options.PeakOverBoltIn), ("alternator-fuse-small", "of output", 100 * options.FuseOverOutput),
            ("loop-drop", "critical", 100 * options.CriticalDrop), ("loop-drop", "motor", 100 * options.MotorDrop), ("loop-drop", "other", 100 * options.OrdinaryDrop), ("charge-lead-drop", "at 12 V", options.ChargeDropAt12V),
            ("wire-too-thin", "in the bay", options.SmallestAreaMm2), ("splices-too-near", "apart", options.SpliceClearMm), ("splices-too-near", "apart, sealed", options.SealedSpliceClearMm), ("bend-too-tight", "times diameter", options.BendFactor),
        ];
        Assert.All(shared, s => Assert.Equal(s.Planned, RuleCatalogue.Info(s.Rule)!.Limit(s.Limit).Value));
    }

    [Theory]
    [InlineData("rules: { fuse-above-wier: { severity: error } }", DiagnosticCodes.UnknownName, 10, "did you mean 'fuse-above-wire'?")]
    [InlineData("rules: { wire-too-thin: { limits: { in the bya: 1 mm2 } } }", DiagnosticCodes.UnknownName, 37, "did you mean 'in the bay'?")]
    [InlineData("rules: { wire-too-thin: { limits: { in the bay: 1 mm } } }", DiagnosticCodes.Quantity, 49, "as built in: 0.5 mm²")]
    [InlineData("rules: { wire-too-thin: { limits: { in the bay: unknown } } }", DiagnosticCodes.Quantity, 49, "as built in: 0.5 mm²")]
    [InlineData("rules: { wire-too-thin: { severity: off } }", DiagnosticCodes.UnknownChoice, 37, "a single finding is accepted by a waiver in the description")]
    [InlineData("rules: { wire-too-thin: { limit: { } } }", DiagnosticCodes.UnknownKey, 27, "did you mean 'limits'?")]
    [InlineData("ruels: { }", DiagnosticCodes.UnknownKey, 1, "did you mean 'rules'?")]
    [InlineData("rules: { wire-too-thin: error }", DiagnosticCodes.ShapeMismatch, 25, "write 'severity:' or 'limits:' in it")]
    public void Mistakes_are_told_with_their_place_and_the_nearest_name(string text, string code, int column, string hint)
    {
        var read = Read(text);
        Assert.Null(read.Value);
        var said = Assert.Single(read.Diagnostics);
        Assert.Equal((code, column, hint), (said.Code, said.At!.Column, said.Hint));
    }

    [Fact]
    public void A_missing_file_is_a_message() => Assert.Equal(DiagnosticCodes.FileMissing, Assert.Single(RuleFileReader.Read("none.yaml", new MemoryFiles(new Dictionary<string, string>())).Diagnostics).Code);

    private static Outcome<RuleSettings> Read(string text)
    {
        var read = RuleFileReader.Read("rules.yaml", new MemoryFiles(new Dictionary<string, string> { ["rules.yaml"] = text }));
        return read.Value is { } file ? RuleFileResolver.Resolve(file) : new(null, read.Diagnostics);
    }
}
