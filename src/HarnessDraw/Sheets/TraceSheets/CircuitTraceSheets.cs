using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;
using HarnessDraw.Tracing;

namespace HarnessDraw.Sheets.TraceSheets;

/// <summary>
/// Circuit traces: each way from the source through a load and back, hop by hop, with the volts a meter should read and a box for what it does read.
/// </summary>
public static class CircuitTraceSheets
{
    /// <summary>Every circuit that is not a mere return, in the order of the description; short ways share pages, one too long for a page goes on over the next.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var shown = options.Build is { } build ? plan.For(build) : plan;
        return Compose(plan, findings, options, Ways(shown, options.About));
    }

    /// <summary>The pages of some ways.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options, Trace trace)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(trace);
        var shown = options.Build is { } build ? plan.For(build) : plan;
        return Compose(plan, findings, options, [.. Told(shown, trace)]);
    }

    private static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options, ImmutableArray<(TraceWay Way, TraceWords Words)> ways)
    {
        if (ways.IsEmpty)
        {
            return new([]);
        }

        var shown = options.Build is { } build ? plan.For(build) : plan;
        var plus = shown.Harness.Power.Ground == GroundPolarity.Negative;
        var form = new PageForm(SheetKinds.Trace, "CIRCUIT TRACE", "trace")
        {
            Caution = $"Meter's other lead on the battery's {(plus ? "minus" : "plus")} post. Battery disconnected before a connector is parted. Do not pierce insulation. Hands clear of fan and belts.",
            Build = options.Build is null && plan.Builds.Length > 1 ? "all options; volts: usual build" : null,
        };
        var maker = new PageMaker(plan, findings, options, form);
        var pages = new TracePages(maker);
        foreach (var (way, words) in ways)
        {
            pages.Add(new(shown, way, words, options.Units, maker.Area.Width));
        }

        pages.Paint();
        return maker.ToResult();
    }

    /// <summary>The ways of all circuits (or of these) that are built and no mere return, in the order of the description.</summary>
    internal static ImmutableArray<(TraceWay Way, TraceWords Words)> Ways(Plan shown, ImmutableArray<string>? about = null)
    {
        var tracer = new CircuitTracer(shown);
        var built = shown.Wires.Select(w => w.Circuit).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. shown.Harness.Circuits.Where(c => !c.IsReturn && built.Contains(c.Id) && about?.Contains(c.Id) != false)
                .Select(c => tracer.Of(c.Id).Value)
                .OfType<Trace>()
                .SelectMany(t => Told(shown, t)),
        ];
    }

    private static IEnumerable<(TraceWay Way, TraceWords Words)> Told(Plan shown, Trace trace) =>
        trace.Ways.Where(w => w.Stops.Length > 1).Select(w => (w, new TraceWords(shown, w, trace.NotKnown)));
}
