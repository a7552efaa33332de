using System.Text.Json;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Writing.PlanFile;

/// <summary>A finding as an object of the plan file.</summary>
internal static class FindingJson
{
    public static void Write(Utf8JsonWriter json, Finding finding)
    {
        json.WriteString("rule", finding.Rule);
        json.WriteString("severity", Word(finding.Severity));
        json.WriteString("message", finding.Message);
        json.Strings("where", finding.Where);
        json.Builds(finding.Builds);
        json.WriteString("waivedBecause", finding.WaivedBy?.Because);
    }

    private static string Word(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "advice",
    };
}
