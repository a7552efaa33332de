using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using HarnessDraw.Reading;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Findings;

namespace HarnessDraw.Cli.Commands;

/// <summary>'fit': where a new load goes.</summary>
internal static class FitCommand
{
    private static readonly ImmutableArray<string> Formats = ["text", "json"];

    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var load = new Option<string>("--load") { Description = "What it draws: '6 A' or '55 W'", HelpName = "LOAD", Required = true };
        var place = new Option<string>("--at") { Description = "A place of the vehicle layout", HelpName = "PLACE", Required = true };
        var format = ListedOption.One("--format", "Form of the answer", Formats, "text");
        var rules = CommonArguments.Rules();
        var output = CommonArguments.Out("usual: the answer goes to standard output");
        var command = new ExampledCommand(
            "fit",
            "Where a new load goes: a fuse with room, a spare cavity, route, length, size, and what it does to every rule",
            "harnessdraw fit examples/brackmere-six.yaml --load '3 A' --at 'left lamp'")
        {
            file, load, place, format, rules, output,
        };
        command.SetAction(parsed =>
        {
            var settings = RuleFiles.Read(terminal, parsed.GetValue(rules));
            var name = parsed.GetRequiredValue(file);
            var before = settings is null ? null : PlannedFile.Read(terminal, name, settings);
            if (before is null)
            {
                return ExitCode.Problems;
            }

            var (typed, where) = (parsed.GetRequiredValue(load), parsed.GetRequiredValue(place));
            var fits = LoadFitter.Fit(name, new DiskFiles(), settings!, before, typed, where);
            if (fits.Problem is { } problem)
            {
                throw new WrongUsageException(problem);
            }

            ImmutableArray<FitRow> rows = [.. fits.Ways.Select(w => new FitRow(w.Fuse, w.IsNewFuse, w.Holder, w.Wires, w.Difference.New, OtherChanges(w)))];
            var (ending, content) = parsed.GetValue(format) == "json"
                ? ("json", FitWriter.Json(typed, where, rows))
                : ("txt", Encoding.UTF8.GetBytes(FitWriter.Text(typed, where, rows)));
            Results.Put(terminal, parsed.GetValue(output), $"{OutputNames.Safe(before.Plan.Harness.Id)}.fit.{ending}", content);
            return rows.Any(r => r.New.All(f => f.Severity < Diagnostics.Severity.Error)) ? ExitCode.Done : ExitCode.Problems;
        });
        return command;
    }

    // beside its own wires and its own fuse; ids that move on are no change to the harness
    private static int OtherChanges(LoadFit way)
    {
        var own = way.Wires.Select(w => w.Id).ToHashSet(StringComparer.Ordinal);
        return way.Difference.Changes.Count(c => c.What != "id" && c.Kind != "harness" && !(c.Kind == "wire" && own.Contains(c.Id)) && !(c.Kind == "fuse" && c.Id == way.Fuse.Id));
    }
}
