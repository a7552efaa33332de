using HarnessDraw.Model;

namespace HarnessDraw.Checking.Rules.Choices;

/// <summary>A rule between options in words.</summary>
internal static class OptionWords
{
    public static string Of(OptionRule rule) => $"'{rule.IfOption}={rule.IfChoice} {(rule.Needs ? "needs" : "excludes")} {rule.ThenOption}={rule.ThenChoice}'";
}
