using Deque.AxeCore.Playwright;
using HarnessDraw.Tests.Layout;
using HarnessDraw.Tests.Sheets;
using Microsoft.Playwright;

namespace HarnessDraw.Tests.Writing;

public sealed class LivePageTests(LivePageFixture pages) : IClassFixture<LivePageFixture>
{
    /// <summary>How long it takes is told in the output and measured by <c>page-ready.sh</c> of the benchmarks; a start makes little beside the drawings themselves.</summary>
    [Fact]
    public async Task The_page_gets_ready_by_itself_and_asks_for_nothing()
    {
        var page = await pages.Open();
        Assert.Empty(pages.Asked);
        var (all, drawn) = (await page.Locator("*").CountAsync(), await page.Locator("svg, svg *").CountAsync());
        Assert.InRange(all - drawn, 1, drawn / 10);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"ready after {await page.Locator("html").GetAttributeAsync("data-ready")} ms, {all} elements, {drawn} of them in drawings"));
        await LivePageFixture.Picture(page, "desktop");
    }

    [Fact]
    public async Task A_wire_is_found_by_its_name_and_lights_its_circuit()
    {
        var page = await pages.Open();
        await LivePageFixture.Find(page, "E01");
        await Assertions.Expect(page.Locator("#name")).ToHaveTextAsync("Wire E01");
        Assert.True(await page.Locator(".drawing.shown .light [data-wire=E01]").CountAsync() > 0);
        Assert.True(await page.Locator(".drawing.shown svg.lit").CountAsync() == 1);
        await LivePageFixture.Picture(page, "desktop-lit");
        await page.Keyboard.PressAsync("Escape");
        Assert.Equal(0, await page.Locator("svg.lit").CountAsync());
    }

    [Theory]
    [InlineData("firewall A1", "firewall A1", "Cavity firewall A1")]
    [InlineData("F1", "F1", "Fuse F1")]
    [InlineData("lamp panel feed", "lamp panel feed", "Circuit lamp panel feed")]
    [InlineData("red white lamp panel", "E01", "Wire E01")]
    public async Task Anything_is_found(string text, string first, string name)
    {
        var page = await pages.Open();
        await page.Locator("#find").FillAsync(text);
        await page.Locator("#found li").Filter(new() { Has = page.GetByText(first, new() { Exact = true }) }).First.ClickAsync();
        await Assertions.Expect(page.Locator("#name")).ToHaveTextAsync(name);
        Assert.True(await page.Locator(".light [data-wire]").CountAsync() > 0);
    }

    [Theory]
    [InlineData(".drawing.shown text[data-for=E01]", "Wire E01")]
    [InlineData(".drawing.shown text[data-cavity='firewall:A1']", "Cavity firewall A1")]
    [InlineData(".drawing.shown text[data-fuse=F1]", "Fuse F1")]
    [InlineData(".drawing.shown text[data-load='headlamp left']", "headlamp")]
    public async Task A_press_on_the_drawing_lights_the_circuit(string mark, string name)
    {
        var page = await pages.Open();
        await page.Locator("#larger").ClickAsync();
        await page.Locator("#larger").ClickAsync();
        await page.Locator(mark).First.ClickAsync();
        await Assertions.Expect(page.Locator("#name")).ToContainTextAsync(name, new() { IgnoreCase = true });
        Assert.True(await page.Locator(".light [data-wire]").CountAsync() > 0);
    }

    [Fact]
    public async Task Steps_lead_along_the_way_with_what_the_meter_should_read()
    {
        var page = await pages.Open();
        await LivePageFixture.Find(page, "E01");
        await Assertions.Expect(page.Locator("#stopname")).ToContainTextAsync("1. ");
        await Assertions.Expect(page.Locator("#expected")).ToContainTextAsync(" V");
        var before = await page.Locator("#stopname").TextContentAsync();
        await page.Locator("#on").ClickAsync();
        await Assertions.Expect(page.Locator("#stopname")).ToContainTextAsync("2. ");
        Assert.NotEqual(before, await page.Locator("#stopname").TextContentAsync());
        var running = await page.Locator("#expected").TextContentAsync();
        await page.Locator("#state").SelectOptionAsync(new SelectOptionValue { Index = 0 });
        Assert.NotEqual(running, await page.Locator("#expected").TextContentAsync());
    }

    [Fact]
    public async Task The_keyboard_alone_does_it_all()
    {
        var page = await pages.Open();
        await page.Keyboard.PressAsync("Tab");
        Assert.Equal("find", await Focused(page));
        await page.Keyboard.TypeAsync("headlamp");
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#chosen")).ToBeVisibleAsync();
        for (var i = 0; i < 40 && await Focused(page) != "on"; i++)
        {
            await page.Keyboard.PressAsync("Tab");
        }

        Assert.Equal("on", await Focused(page));
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#stopname")).ToContainTextAsync("2. ");
        await Assertions.Expect(page.Locator("#said")).ToContainTextAsync("Point 2");
    }

    [Fact]
    public async Task Options_take_wires_away_and_black_ink_draws_dashes()
    {
        var page = await pages.Open();
        var absent = await page.Locator(".absent[data-wire]").CountAsync();
        await page.Locator("#option-0").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        Assert.NotEqual(absent, await page.Locator(".absent[data-wire]").CountAsync());
        await page.Locator("#black").CheckAsync();
        Assert.True(await page.Locator(".core[stroke-dasharray]").CountAsync() > 0);

        // red with a white tracer: white core, dashes of red, a gap and two thin bars for the light tracer; black with none stays black
        Assert.Equal(4, await CoresOf(page, "E01"));
        Assert.Equal(0, await CoresOf(page, "F38"));
        await page.Locator("#large").CheckAsync();
        await LivePageFixture.Picture(page, "black-large");
    }

    [Fact]
    public async Task A_page_of_one_build_shows_all_its_wires_and_no_other_choice()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var page = await pages.Open(LivePageFixture.PageFile("single", LivePageFixture.PageOf(plan, plan.Builds[0].SetItem("charging", "single wire"))));
        Assert.Equal(0, await page.Locator(".absent").CountAsync());
        Assert.Equal("single wire", await page.Locator("#option-0").InputValueAsync());
        Assert.Equal(1, await page.Locator("#option-0 option").CountAsync());
    }

    // volts and what a load does mean something in one state only: it is chosen before them, without scrolling
    [Fact]
    public async Task The_state_stands_above_what_is_said_of_it()
    {
        var page = await pages.Open(null, 1280, 800);
        await LivePageFixture.Find(page, "E01");
        var (state, volts, load) = (await page.Locator("#state").BoundingBoxAsync(), await page.Locator("#expected").BoundingBoxAsync(), await page.Locator("#load").BoundingBoxAsync());
        Assert.InRange(state!.Y, 0, 400);
        Assert.True(state.Y + state.Height <= volts!.Y && volts.Y < load!.Y);
    }

    [Fact]
    public async Task Both_connector_views_are_there()
    {
        var page = await pages.Open();
        await page.Locator("#drawing").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        var words = await page.Locator(".drawing.shown").TextContentAsync() ?? "";
        Assert.Contains("wire-entry side", words, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("mating side", words, StringComparison.OrdinalIgnoreCase);
        await LivePageFixture.Picture(page, "connectors");
    }

    [Fact]
    public async Task Print_shows_the_circuit_and_leaves_the_controls_out()
    {
        var page = await pages.Open();
        await LivePageFixture.Find(page, "E01");
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await Assertions.Expect(page.Locator("#stops li").First).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#find")).ToBeHiddenAsync();
        await Assertions.Expect(page.Locator("#settings")).ToBeHiddenAsync();
        await LivePageFixture.Picture(page, "print");
        Assert.True((await page.PdfAsync()).Length > 10_000);
    }

    [Fact]
    public async Task A_phone_shows_everything_in_its_width_with_large_targets()
    {
        var page = await pages.Open(null, 360, 740, touch: true);
        await LivePageFixture.Find(page, "E01");
        Assert.InRange(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"), 1, 360);
        Assert.InRange((await page.Locator("#stage").BoundingBoxAsync())!.Height, 250, 740);
        Assert.True(await page.Locator(".drawing.shown .light").IsVisibleAsync());
        var small = await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('button, select, input:not([type=checkbox]), .tick')].filter(e => e.offsetParent && e.getBoundingClientRect().height < 47.5).map(e => e.id || e.textContent)");
        Assert.Empty(small);
        await LivePageFixture.Picture(page, "phone");
        await page.Locator("#stepper").ScrollIntoViewIfNeededAsync();
        await LivePageFixture.Picture(page, "phone-steps");
        await page.Locator("#large").CheckAsync();
        Assert.InRange(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"), 1, 360);
    }

    [Theory]
    [InlineData(1280, 800)]
    [InlineData(360, 740)]
    public async Task No_serious_finding_of_the_accessibility_check(int width, int height)
    {
        var page = await pages.Open(null, width, height);
        await LivePageFixture.Find(page, "E01");
        var result = await page.RunAxe();
        Assert.Empty(result.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{v.Id}: {v.Help} {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}"));
    }

    [Fact]
    public async Task Names_of_a_hostile_harness_stay_words()
    {
        const string bad = "</script><img src=x onerror=\"window.hurt=1\"><script>window.hurt=1</script>{{script}}";
        var real = ExamplePlans.Of("brackmere-six");
        var plan = real with
        {
            Harness = real.Harness with
            {
                Title = bad,
                Vehicle = bad,
                Things = [.. real.Harness.Things.Select(t => t with { Label = bad })],
                Circuits = [.. real.Harness.Circuits.Select(c => c.Id == "horns" ? c with { Id = bad } : c)],
                Nets = [.. real.Harness.Nets.Select(n => n.Circuit == "horns" ? n with { Circuit = bad } : n)],
            },
            Wires = [.. real.Wires.Select(w => w.Circuit == "horns" ? w with { Circuit = bad } : w)],
        };
        var page = await pages.Open(LivePageFixture.PageFile("hostile", LivePageFixture.PageOf(plan)));
        Assert.Equal(bad, await page.TitleAsync());
        await LivePageFixture.Find(page, "onerror");
        await Assertions.Expect(page.Locator("#name")).ToHaveTextAsync("Circuit " + bad);
        Assert.False(await page.EvaluateAsync<bool>("() => 'hurt' in window || document.querySelector('img, main script:not([type])') !== null"));
        Assert.Empty(pages.Asked);
    }

    /// <summary>Whatever else the harness has is left alone: no more changes than a few a drawing, and no more copies than the circuit has marks. How long it takes is told in the output.</summary>
    [Fact]
    public async Task The_work_of_a_press_goes_with_the_circuit_and_not_with_the_harness()
    {
        var plan = ExamplePlans.Of("aldervane-coach");
        Assert.True(plan.Wires.Length > 300, $"{plan.Wires.Length} wires");
        var page = await pages.Open(LivePageFixture.PageFile("coach", LivePageFixture.PageOf(plan)));
        await LivePageFixture.Find(page, plan.Wires[0].Id);
        await page.EvaluateAsync("""
            () => {
              window.changes = 0;
              window.watch = new MutationObserver(list => { window.changes += list.length; });
              window.watch.observe(document.getElementById('stage'), { subtree: true, childList: true, attributes: true });
            }
            """);
        foreach (var wire in plan.Wires.Where((_, i) => i % 60 == 1))
        {
            await page.EvaluateAsync("() => { window.changes = 0; }");
            await LivePageFixture.Find(page, wire.Id);
            var drawings = await page.Locator(".drawing").CountAsync();
            var changes = await page.EvaluateAsync<int>("() => { window.changes += window.watch.takeRecords().length; return window.changes; }");
            // the old light goes, the new one comes, a class is set, and the drawing that has the wire may be brought into sight
            Assert.InRange(changes, 1, (3 * drawings) + 4);
            Assert.True(await page.Locator(".light *").CountAsync() < await page.Locator("svg *").CountAsync() / 4.0);
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"a press lights up in {await MiddleOfPresses(page, ".drawing.shown text[data-for]"):0.0} ms among {plan.Wires.Length} wires"));
        await LivePageFixture.Picture(page, "coach");
    }

    /// <summary>Sixteen times as many wires, and a press copies and changes as much as before; how long it takes is told in the output.</summary>
    [Fact]
    public async Task Five_hundred_wires_make_a_press_no_more_work_than_thirty()
    {
        var work = new List<(int Wires, int Copied)>();
        foreach (var circuits in new[] { 15, 250 })
        {
            var plan = GrowingHarness.Plan(circuits);
            var page = await pages.Open(LivePageFixture.PageFile($"growth-{circuits}", LivePageFixture.PageOf(plan)));
            await LivePageFixture.Find(page, "bulb 7");
            work.Add((plan.Wires.Length, await page.Locator(".light *").CountAsync()));
            TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"a press lights up in {await MiddleOfPresses(page, ".drawing.shown text[data-for]"):0.0} ms among {plan.Wires.Length} wires; ready after {await page.Locator("html").GetAttributeAsync("data-ready")} ms"));
        }

        Assert.True(work[1].Wires >= 500, $"{work[1].Wires} wires");
        Assert.InRange(work[1].Copied, 1, 3 * work[0].Copied);
    }

    [Fact]
    public async Task Two_fingers_make_the_drawing_larger_and_one_moves_it()
    {
        var page = await pages.Open(null, 360, 740, touch: true);
        var box = (await page.Locator("#stage").BoundingBoxAsync())!;
        var (x, y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        var session = await page.Context.NewCDPSessionAsync(page);
        Task Touch(string type, params float[] apart) => session.SendAsync("Input.dispatchTouchEvent", new()
        {
            ["type"] = type,
            ["touchPoints"] = apart.Select((a, i) => new Dictionary<string, object> { ["x"] = x + a, ["y"] = y, ["id"] = i }).ToArray(),
        });
        var before = (await page.Locator(".drawing.shown").BoundingBoxAsync())!.Width;
        await Touch("touchStart", -20, 20);
        await Touch("touchMove", -40, 40);
        await Touch("touchMove", -80, 80);
        await Touch("touchEnd");
        Assert.InRange((await page.Locator(".drawing.shown").BoundingBoxAsync())!.Width / before, 3.5, 4.5);
        await LivePageFixture.Picture(page, "phone-pinched");

        var at = await page.EvaluateAsync<int>("() => document.getElementById('stage').scrollLeft");
        await Touch("touchStart", 60);
        foreach (var step in Enumerable.Range(1, 8))
        {
            await Touch("touchMove", 60 - (15 * step));
        }

        await Touch("touchEnd");
        await page.WaitForFunctionAsync("from => document.getElementById('stage').scrollLeft - from > 60", at);
        Assert.Equal(0, await page.EvaluateAsync<int>("() => Math.round(window.scrollX)"));
    }

    private static Task<int> CoresOf(IPage page, string wire) => page.EvaluateAsync<int>("""
        wire => {
          let found = 0;
          for (let e = document.querySelector(`.drawing.shown [data-wire='${wire}']`).nextElementSibling; e?.classList.contains('core'); e = e.nextElementSibling) found++;
          return found;
        }
        """, wire);

    /// <summary>Milliseconds from a press to the finished arrangement of the page, the middle of up to nine presses spread over the marks.</summary>
    private static Task<double> MiddleOfPresses(IPage page, string marks) => page.EvaluateAsync<double>("""
        marks => {
          const all = [...document.querySelectorAll(marks)];
          const stage = document.getElementById('stage');
          const times = [];
          for (let i = 0; i < 9; i++) {
            const mark = all[Math.floor(i * all.length / 9)];
            mark.scrollIntoView({ block: 'center', inline: 'center' });
            const box = mark.getBoundingClientRect();
            const at = { bubbles: true, clientX: box.x + box.width / 2, clientY: box.y + box.height / 2 };
            document.getElementById('name').textContent = '';
            const start = performance.now();
            stage.dispatchEvent(new PointerEvent('pointerdown', at));
            stage.dispatchEvent(new MouseEvent('click', at));
            document.querySelector('.light')?.getBoundingClientRect();
            if (document.getElementById('name').textContent) times.push(performance.now() - start);
          }
          if (times.length < 5) throw new Error(`${times.length} of 9 presses lit anything`);
          return times.sort((a, b) => a - b)[times.length >> 1];
        }
        """, marks);

    private static Task<string> Focused(IPage page) => page.EvaluateAsync<string>("() => document.activeElement.id");
}
