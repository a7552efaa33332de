using System.CommandLine;
using System.Text;
using HarnessDraw.Checking;
using HarnessDraw.Electrical;
using HarnessDraw.Reading;
using HarnessDraw.Sheets;
using HarnessDraw.Sheets.TraceSheets;
using HarnessDraw.Tracing;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Pdf;
using HarnessDraw.Writing.Traces;

namespace HarnessDraw.Cli.Commands;

/// <summary>'trace': from anything that can be named or found to the whole way from source to load to return, as text, JSON or sheet.</summary>
internal static class TraceCommand
{
    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var what = new Argument<string>("WHAT") { Description = "A circuit ('dipped beam'), load ('headlamp left'), wire ('E01'), cavity ('firewall B4'), splice or fuse; or a wire as it is found: 'BN/WH 1 mm2 near headlamp left'" };
        var build = CommonArguments.Build("One build only");
        var format = ListedOption.One("--format", "Form of the result", ["text", "json", "pdf"], "text");
        var output = CommonArguments.Out("usual: the result goes to standard output");
        var command = new ExampledCommand(
            "trace",
            "Follow a circuit from source to load to return: places, cavities, colours, sizes, lengths, volts in four states, volts lost at each hop and what shares it",
            "harnessdraw trace examples/brackmere-six.yaml horns",
            "harnessdraw trace examples/brackmere-six.yaml 'PK/GN wire near firewall'",
            "harnessdraw trace examples/brackmere-six.yaml 'fuse K19' --format pdf --out traces")
        {
            file, what, build, format, output,
        };
        command.SetAction(parsed =>
        {
            var planned = PlannedFile.Read(terminal, parsed.GetRequiredValue(file), RuleSettings.BuiltIn);
            if (planned is null)
            {
                return ExitCode.Problems;
            }

            var choice = CommonArguments.BuildOf(parsed, build, planned.Plan);
            planned = choice is null ? planned : planned with { Plan = NetworkSolver.InBuild(planned.Plan, choice) };
            var trace = CircuitTracer.Trace(choice is null ? planned.Plan : planned.Plan.For(choice), parsed.GetRequiredValue(what));
            DiagnosticText.Say(terminal, trace.Diagnostics, new DiskFiles());
            if (trace.Failed)
            {
                return ExitCode.WrongUsage;
            }

            var form = parsed.GetValue(format);
            var result = form switch
            {
                "json" => TraceJson.Of(trace.Value!),
                "pdf" => Pages(planned, new() { Build = choice }, trace.Value!),
                _ => Encoding.UTF8.GetBytes(TraceTextWriter.Write(trace.Value!)),
            };
            Results.Put(terminal, parsed.GetValue(output), $"{OutputNames.Safe(planned.Plan.Harness.Id)}.trace.{OutputNames.Safe(trace.Value!.Name)}.{(form == "text" ? "txt" : form)}", result);
            return ExitCode.Done;
        });
        return command;
    }

    private static byte[] Pages(CheckedPlan planned, SheetOptions options, Trace trace)
    {
        var pages = CircuitTraceSheets.Compose(planned.Plan, planned.Findings, options, trace).Sheets;
        return pages.IsEmpty
            ? throw new WrongUsageException($"'{DiagnosticText.Plain(trace.Name)}' has no way that a page could show")
            : PdfWriter.Write(SheetCount.Fill(pages), new($"{planned.Plan.Harness.Title}: {trace.Name}"));
    }
}
