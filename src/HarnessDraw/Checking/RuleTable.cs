using System.Text;

namespace HarnessDraw.Checking;

/// <summary>The rules as a table for people: README.md beside the rules is this text.</summary>
internal static class RuleTable
{
    public static string Markdown()
    {
        var text = new StringBuilder();
        text.Append("# The design rules\n\n");
        text.Append("This page is written by `RuleCatalogue.Markdown()`; a test keeps it current. Errors: do not build. Warnings: build only with a written\n");
        text.Append("reason. Advice: good to know. Rules with two levels say so in their limits. Findings are sorted by consequence, worst first.\n\n");
        text.Append("A rule file (`check --rules FILE`) changes severities and limits; names and units are those of the table:\n\n");
        text.Append("```yaml\nrules:\n  fuse-load-high: { severity: error, limits: { share: 75 %, share in heat: 65 % } }\n  clips-too-far: { limits: { support: 450 mm } }\n```\n\n");
        text.Append("It changes what is told and never the plan, which `cut` and `trace` make without it: sizes and fuses are planned by the limits of the table.\n\n");
        text.Append("One finding is accepted by a waiver in the description, with reason, name and date; it is then printed with the waiver:\n\n");
        text.Append("```yaml\nwaivers: [{ rule: shared-lamp-fuse, for: [dipped beam], because: original layout kept, by: owner, on: 2026-09-11 }]\n```\n");
        foreach (var group in RuleCatalogue.Infos.GroupBy(i => i.Consequence).OrderBy(g => g.Key))
        {
            text.Append($"\n## {Heading(group.Key)}\n\n| rule | severity | what | why | limits | source |\n| --- | --- | --- | --- | --- | --- |\n");
            foreach (var info in group.OrderBy(i => i.Id, StringComparer.Ordinal))
            {
                var limits = string.Join("; ", info.Limits.Select(l => $"{l} ({l.Source})"));
                text.Append($"| `{info.Id}` | {info.Severity.ToString().ToLowerInvariant()} | {Cell(info.Title)} | {Cell(info.Why)} | {Cell(limits)} | {Cell(info.Source)} |\n");
            }
        }

        return text.ToString();
    }

    private static string Heading(Consequence consequence) => consequence switch
    {
        Consequence.Fire => "Fire",
        Consequence.LostFunction => "A lamp, brake or ignition fails",
        Consequence.Damage => "Damage",
        Consequence.DoesNotWork => "Does not work",
        Consequence.DoesNotLast => "Does not last",
        _ => "Untidy",
    };

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
