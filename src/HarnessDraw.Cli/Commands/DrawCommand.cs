using System.Collections.Immutable;
using System.CommandLine;
using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Writing;

namespace HarnessDraw.Cli.Commands;

/// <summary>'draw': every sheet of a harness, its cut list and its plan as files.</summary>
internal static class DrawCommand
{
    private static readonly ImmutableArray<string> FormatWords = ["svg", "png", "pdf", "html"];
    private static readonly ImmutableArray<string> UsualFormats = ["svg", "png", "pdf"];
    private static readonly ImmutableArray<string> InkWords = ["colour", "black"];
    private static readonly ImmutableArray<string> UnitWords = ["metric", "inch", "both"];

    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var sheets = ListedOption.Several("--sheets", "Sheets to draw", SheetKinds.All, SheetKinds.Usual, "all");
        var whom = ListedOption.Choice("--for", "A ready set of sheets instead of the usual ones", ReadySets.Names);
        var formats = ListedOption.Several("--format", "File formats (html: one page with everything, for a phone or a screen)", FormatWords, UsualFormats);
        var inks = ListedOption.Several("--ink", "Inks", InkWords, ["colour"]);
        var paper = PaperOption("--paper", "Paper of the wall chart, or of the only sheet asked for (a build board goes over several where one is too small): auto, A4 to A0, 2A0, Letter, Tabloid, 'ANSI C' to 'ANSI E', 'roll 914 x 2400', with 'landscape' or 'portrait' behind");
        var several = new Option<bool>("--several-charts") { Description = "Share the harness among several wall charts when the paper asked for is too small for one; every circuit is whole on one of them" };
        var band = new Option<int>("--band-over") { Description = "On the wall chart, draw a bundle of more wires than this as one band with its count and list; its wires show again where they leave it (0: never)", HelpName = "WIRES" };
        var scale = new Option<bool>("--true-to-scale") { Description = "On the wall chart, draw the lengths between places at one scale, which the title block names, as far as the paper allows; a length that is drawn longer has a broken dimension line" };
        var tile = PaperOption("--tile", "Cut the wall chart, the build board and large templates onto small paper too: A4, A3, Letter or Tabloid", [.. Tiler.Pages.Select(p => p.Name)]);
        var build = CommonArguments.Build("Show one build only");
        var about = new Option<string?>("--about") { Description = "Draw traces and projector pages of this circuit, load, wire, cavity, splice or fuse alone, instead of all", HelpName = "WHAT" };
        var units = ListedOption.One("--units", "Units on the sheets", UnitWords, "metric");
        var dpi = new Option<int>("--dpi") { Description = "Pixels an inch of PNG pictures, 25 to 1200", DefaultValueFactory = _ => 200 };
        var embed = new Option<bool>("--embed-font") { Description = "Put the faces into the SVG files" };
        var font = new Option<string?>("--font") { Description = "A font file (TTF) for scripts that the shipped faces lack", HelpName = "FILE" };
        var since = new Option<string?>("--since") { Description = "Mark what has changed since a built state (a frozen file or an older description), keep the places of its wall chart, and draw a sheet of the changes", HelpName = "OLD" };
        var rules = CommonArguments.Rules();
        var output = CommonArguments.Out("usual: a folder named after the file, beside it");
        whom.Validators.Add(r =>
        {
            if (r.GetResult(sheets) is { Implicit: false })
            {
                r.AddError("--for and --sheets exclude each other: name the sheets, or the person");
            }
        });
        dpi.Validators.Add(r =>
        {
            if (r.Tokens.Count == 1 && int.TryParse(r.Tokens[0].Value, out var n) && n is < 25 or > 1200)
            {
                r.AddError($"--dpi: {n} is outside 25 to 1200");
            }
        });
        band.Validators.Add(r =>
        {
            if (r.Tokens.Count == 1 && int.TryParse(r.Tokens[0].Value, out var n) && n is not (0 or (>= 4 and <= 10_000)))
            {
                r.AddError($"--band-over: {n} wires are too few or too many for a band; expected 4 to 10000, or 0 for none");
            }
        });
        var command = new ExampledCommand(
            "draw",
            "Draw the wall chart, the connector faces and the cut list",
            "harnessdraw draw examples/brackmere-six.yaml",
            "harnessdraw draw examples/brackmere-six.yaml --sheets wall-chart --format pdf --paper A0 --ink colour,black",
            "harnessdraw draw examples/brackmere-six.yaml --for troubleshooter --format pdf",
            "harnessdraw draw examples/brackmere-six.yaml --sheets trace,projector --about horns --format pdf",
            "harnessdraw draw examples/brackmere-six.yaml --build charging=exciter --tile A4 --out print")
        {
            file, sheets, whom, formats, inks, paper, several, band, scale, tile, build, about, units, dpi, embed, font, since, rules, output,
        };
        command.SetAction(parsed =>
        {
            var descriptionFile = parsed.GetRequiredValue(file);
            var order = new DrawOrder
            {
                Sheets = parsed.GetValue(whom) is { } set ? ReadySets.Of(set) : parsed.GetValue(sheets),
                Formats = [.. parsed.GetValue(formats).Select(f => Enum.Parse<SheetFormat>(f, ignoreCase: true))],
                BlackInks = [.. parsed.GetValue(inks).Select(i => i == "black")],
                Paper = PaperOf(parsed.GetValue(paper)),
                SeveralCharts = parsed.GetValue(several),
                BandOver = parsed.GetValue(band),
                TrueToScale = parsed.GetValue(scale),
                TileOnto = PaperOf(parsed.GetValue(tile)),
                Units = Enum.Parse<UnitsShown>(parsed.GetValue(units)!, ignoreCase: true),
                Teaching = parsed.GetValue(whom) == ReadySets.Teacher,
                Dpi = parsed.GetValue(dpi),
                EmbedFonts = parsed.GetValue(embed),
                Faces = FontFiles.With(parsed.GetValue(font)),
            };
            return new DrawRun(terminal, order, parsed.GetValue(build), parsed.GetValue(about), parsed.GetValue(rules), parsed.GetValue(since), parsed.GetValue(output)).Run(descriptionFile);
        });
        return command;
    }

    private static Option<string?> PaperOption(string name, string description, params string[] only)
    {
        var option = new Option<string?>(name) { Description = description, HelpName = "PAPER" };
        option.Validators.Add(result =>
        {
            foreach (var token in result.Tokens.Where(t => !IsPaper(t.Value, only)))
            {
                result.AddError($"{name}: '{token.Value}' is no paper size that is known; expected {(only.Length > 0 ? string.Join(" or ", only) : "auto, " + string.Join(", ", PaperSizes.All.Select(p => p.Name)))}");
            }
        });
        return option;
    }

    private static bool IsPaper(string word, string[] only) =>
        only.Length > 0 ? only.Contains(word, StringComparer.OrdinalIgnoreCase) : word.Equals("auto", StringComparison.OrdinalIgnoreCase) || PaperSizes.Find(word) is not null;

    private static Paper? PaperOf(string? word) => word is null ? null : PaperSizes.Find(word);
}
