using System.Collections.Immutable;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Troubleshooting;
using HarnessDraw.Writing.Suspects;
using Microsoft.Playwright;

namespace HarnessDraw.Tests.Writing;

/// <summary>Readings, suspects and the next test on the page.</summary>
public sealed class LivePageFaultTests(LivePageFixture pages) : IClassFixture<LivePageFixture>
{
    [Fact]
    public async Task Readings_narrow_what_is_suspected()
    {
        var page = await pages.Open();
        await page.Locator("#state").SelectOptionAsync(new SelectOptionValue { Index = await LivePageFixture.StateOf(page, "signalling") });
        await LivePageFixture.Find(page, "horns");
        await LivePageFixture.Note(page, (await page.Locator("#expected").TextContentAsync())!.Replace("Expect ", "", StringComparison.Ordinal));
        await Assertions.Expect(page.Locator("#verdict")).ToContainTextAsync("out of order");
        await page.Locator("#load").SelectOptionAsync("horn high coil 1");
        await page.Locator("#does").SelectOptionAsync("dead");
        await page.Locator("#noteload button").ClickAsync();
        await Assertions.Expect(page.Locator("#verdict")).ToContainTextAsync("single faults are likely");
        var suspects = await page.Locator("#suspects li").CountAsync();
        Assert.True(suspects > 1);

        // the plug of the horn has its volts: the feed is whole
        await page.Locator("#stops button", new() { HasText = "horn high 1" }).First.ClickAsync();
        await LivePageFixture.Note(page, "12.3");
        Assert.True(await page.Locator("#suspects li").CountAsync() < suspects);
        await Assertions.Expect(page.Locator("#suspects li").First).ToContainTextAsync("horn high");
        await page.Locator("#suspects").ScrollIntoViewIfNeededAsync();
        await LivePageFixture.Picture(page, "readings");
        await LivePageFixture.Note(page, "20");
        await Assertions.Expect(page.Locator("#readings")).ToContainTextAsync("too high");
        await Assertions.Expect(page.Locator("#verdict")).ToContainTextAsync("None of them explains everything");
        await page.Locator("#forget").ClickAsync();
        await Assertions.Expect(page.Locator("#verdict")).ToContainTextAsync("Nothing is noted");
        await LivePageFixture.Note(page, "dead");
        await Assertions.Expect(page.Locator("#said")).ToContainTextAsync("no reading");
    }

    /// <summary>From complaint to the end: each time the page and the command suspect the same group first, as likely as that within what the page rounds, and ask for the same test; then the likelier half of its outcomes is answered.</summary>
    [Theory]
    [InlineData("headlamp left beams 56b", "night and rain")]
    [InlineData("horn high coil 1", "signalling")]
    [InlineData("headlamp right beams 56a", "full beam")]
    public async Task The_next_test_of_the_page_is_that_of_the_command(string load, string state)
    {
        var shooter = new Troubleshooter(ExamplePlans.Of("brackmere-six"));
        Assert.True(shooter.Bench.Loads.Any(l => l.Name == load), string.Join(", ", shooter.Bench.Loads.Select(l => l.Name)));
        Assert.True(shooter.Bench.States.Any(s => s.Id == state), string.Join(", ", shooter.Bench.States.Select(s => s.Id)));
        var page = await pages.Open();
        await Assertions.Expect(page.Locator("#test")).ToContainTextAsync("Say what a load does");
        await page.Locator("#state").SelectOptionAsync(new SelectOptionValue { Index = await LivePageFixture.StateOf(page, state) });
        await page.Locator("#load").SelectOptionAsync(load);
        await page.Locator("#does").SelectOptionAsync("dead");
        await page.Locator("#noteload button").ClickAsync();
        ImmutableArray<VehicleNote> notes = [new(NoteKind.Dead, load, state, 0)];
        for (var tests = 0; tests < 4; tests++)
        {
            var found = shooter.Diagnose(notes);
            var shown = await page.Locator("#suspects > li").First.TextContentAsync() ?? "";

            // of groups that are equally likely the one or the other may stand first
            var first = found.Groups.Select(g => g.Group).First(g => shown.Contains(g.Suspects[0].Fault.Words, StringComparison.Ordinal));
            Assert.InRange(first.Probability, found.Groups[0].Group.Probability - 0.03, 1);
            Assert.All(first.Suspects.Take(8), s => Assert.Contains(s.Fault.Words, shown, StringComparison.Ordinal));
            Assert.InRange(int.Parse(System.Text.RegularExpressions.Regex.Match(shown, @"\d+").Value, System.Globalization.CultureInfo.InvariantCulture) / 100.0, first.Probability - 0.04, first.Probability + 0.04);
            if (found.Next is not { } next)
            {
                Assert.True(tests > 0);
                return;
            }

            var asked = await page.Locator("#test").TextContentAsync() ?? "";

            // the volts that follow are rounded to steps of a meter in the page
            var words = DiagnosisText.Words(found.Bench, next).Split(';')[0];
            Assert.Equal(words, asked[..Math.Min(words.Length, asked.Length)]);
            await LivePageFixture.Picture(page, $"next-{tests}");
            var outcome = next.Outcomes[0];
            Assert.Contains($"then {outcome.Leaves[0].Fault.Words}", await page.Locator("#outcomes li").First.TextContentAsync(), StringComparison.Ordinal);
            switch (next.Kind)
            {
                case TestKind.Volts or TestKind.Lost:
                    var volts = Math.Round((outcome.LowV + outcome.HighV) / 2, 2);
                    await page.Locator("#testreading").FillAsync(volts.ToString(System.Globalization.CultureInfo.InvariantCulture));
                    await page.Keyboard.PressAsync("Enter");
                    notes = notes.Add(new(next.Kind == TestKind.Lost ? NoteKind.Lost : NoteKind.Volts, found.Bench.Points[next.Number].Name, found.Bench.States[next.State].Id, volts));
                    break;
                case TestKind.Fuse:
                    await page.Locator("#testanswers button").Filter(new() { HasText = outcome.Words.Split(' ')[0] }).ClickAsync();
                    notes = notes.Add(new(NoteKind.Fuse, shooter.Bench.Plan.Fuses[next.Number].Id, null, outcome.Words == "holds" ? 1 : 0));
                    break;
                default:
                    await page.Locator("#testanswers button").Filter(new() { HasText = outcome.Words }).ClickAsync();
                    var kind = outcome.Words switch { "works" => NoteKind.Works, "dead" => NoteKind.Dead, "dim or slow" => NoteKind.Dim, _ => NoteKind.AlwaysOn };
                    notes = notes.Add(new(kind, shooter.Bench.Loads[next.Number].Name, found.Bench.States[next.State].Id, 0));
                    break;
            }
        }
    }
}
