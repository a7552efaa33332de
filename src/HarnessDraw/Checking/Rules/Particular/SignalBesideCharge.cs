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
        var signals = context.Plan.Wires.Where(w => context.Circuit(w.Circuit) is { Duty: Duty.Signal, Cable: not ({ Screened: true } or { TwistPitchMm: > 0 }) } && Pulses.Any(p => w.Circuit.Contains(p, StringComparison.OrdinalIgnoreCase))).ToList();
        foreach (var lead in context.Plan.Wires.Where(w => posts.Contains(w.From.ToString()) || posts.Contains(w.To.ToString())))
        {
            var beside = signals.Where(s => s.Id != lead.Id && context.CanMeet(lead.Builds, s.Builds)).Select(s => (Wire: s, Mm: s.Segments.Intersect(lead.Segments).Select(context.Segment).Sum(g => g?.LengthMm ?? 0))).OrderByDescending(p => p.Mm).ThenBy(p => p.Wire.Id, StringComparer.Ordinal).ToList();
            if (beside.Count > 0)
            {
                var limit = context.Limit(Info, "side by side");
                var near = beside.Where(p => p.Mm > limit).ToList();
                yield return new($"{beside[0].Wire.Named()} beside {lead.Named()}", beside[0].Mm, limit, "mm", () => context.Found(Info,
                    $"{Wording.List(near.Select(p => $"{p.Wire.Named()} runs {Figure.Millimetres(p.Mm)}"))} in one bundle with {lead.Named()}.", "Route one of them another way, cross at 90°, or use a twisted or screened pair.",
                    [lead.Id, .. near.Select(p => p.Wire.Id)], near.Count == 1 ? near[0].Wire.Builds.And(lead.Builds) : null, context.Circuit(near[0].Wire.Circuit)?.At));
            }
        }
    }
}
