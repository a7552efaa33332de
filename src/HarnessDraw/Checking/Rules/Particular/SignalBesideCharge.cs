using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class SignalBesideCharge : MeasuredRule
{
    private static readonly string[] Pulses = ["tach", "speed", "crank", "wheel sensor", "pulse"];

    public override RuleInfo Info { get; } = new("signal-beside-charge-lead", "Pulse signal runs in the bundle of the charge lead", Severity.Warning, Consequence.DoesNotWork, "workshop practice, no standard",
        "Ripple of the charge current couples into the signal: the needle jumps.")
    {
        Limits = [new("side by side", 300, "mm", "workshop practice: more than 300 mm at under 50 mm")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context)
    {
        var posts = context.Graph.Posts.Where(p => p.Source.Kind == SourceKind.Alternator).Select(p => p.Node).ToHashSet(StringComparer.Ordinal);
        var charge = context.Plan.Wires.Where(w => posts.Contains(w.From.ToString()) || posts.Contains(w.To.ToString())).ToList();
        foreach (var signal in context.Plan.Wires.Where(w => context.Circuit(w.Circuit)?.Duty == Duty.Signal && Pulses.Any(p => w.Circuit.Contains(p, StringComparison.OrdinalIgnoreCase)) && context.Circuit(w.Circuit)?.Cable is not { Screened: true }))
        {
            foreach (var lead in charge.Where(l => context.CanMeet(l.Builds, signal.Builds)).Take(1))
            {
                var shared = signal.Segments.Intersect(lead.Segments).Select(context.Segment).Sum(s => s?.LengthMm ?? 0);
                yield return new($"{signal.Named()} beside {lead.Named()}", shared, context.Limit(Info, "side by side"), "mm", () => context.Found(Info,
                    $"{signal.Named()} runs {Figure.Millimetres(shared)} in one bundle with {lead.Named()}.", "Route one of them another way, cross at 90°, or use a twisted or screened pair.", [signal.Id, lead.Id], signal.Builds.And(lead.Builds), context.Circuit(signal.Circuit)?.At));
            }
        }
    }
}
