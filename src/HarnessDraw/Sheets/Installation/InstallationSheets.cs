using System.Collections.Immutable;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.Installation;

/// <summary>The installation steps of one build in the order of the work: torques from the data or the maker, why each is done so, hold points to sign.</summary>
public static class InstallationSheets
{
    /// <summary>As many A4 (or Letter) pages as the steps need; none where the build holds no wire.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options) => WirePages.Compose(plan, findings, options,
        shown => new(SheetKinds.Installation, "INSTALLATION", "installation")
        {
            Aside = (options.Teaching ? "with common mistakes" : "stop at every HOLD") + (shown.Harness.Layout.Places.Any(p => p.Branch is not null) ? "; (3): flag 3 of the chart" : ""),
            Caution = "Battery disconnected until the step that connects it. Feeds up to the bolt-in fuses are not fused: sheathed, booted, clear of edges. Clear of exhaust, steering, pedals, fan, belts and fuel lines. If something does not fit, stop: never pull it in with a bolt.",
        },
        (flow, shown) =>
        {
            var steps = new InstallationPlan(plan, shown, options).Steps();
            var picture = new PlacePicture(shown, 20, 17, 40);
            var numbered = steps.Select((s, i) => (Step: i > 0 ? s.After(steps[i - 1]) : s, Number: i + 1)).ToImmutableArray();
            flow.Table(new TextTable<(InstallationStep Step, int Number)>(
                numbered, flow.Area,
                new TextColumn<(InstallationStep Step, int Number)>("", s => Shown.Number(s.Number)) { Right = true },
                TextColumn<(InstallationStep Step, int Number)>.Drawn("where", picture.WidthMm, picture.HeightMm, (s, corner) => picture.Of(s.Step.Places, corner)),
                new TextColumn<(InstallationStep Step, int Number)>("what", s => s.Step.What) { FloorMm = 50 },
                new TextColumn<(InstallationStep Step, int Number)>(options.Teaching ? "why, and what goes wrong" : "why", s => s.Step.Why)
                {
                    FloorMm = 28,
                    Style = TextStyle.Plain.Quiet,
                    Under = s => options.Teaching && s.Step.Mistake.Length > 0 ? $"Mistake: {s.Step.Mistake}" : "",
                    UnderStyle = TextStyle.Bold,
                },
                new TextColumn<(InstallationStep Step, int Number)>("torque, hold", s => s.Step.Torque)
                {
                    LeastMm = 30,
                    Style = TextStyle.Bold,
                    Under = s => s.Step.Holds ? "HOLD" : "",
                    UnderStyle = TextStyle.Bold with { Colour = Drawing.Ink.Caution },
                },
                TextColumn<(InstallationStep Step, int Number)>.Box("initials", 14))
            { LeastRowMm = 8, GroupOf = s => s.Step.Stage });
            flow.SignOff("Started", "finished", "by", "vehicle number");
        });
}
