using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Checking;

/// <summary>The post of a source that is not grounded, with the volts it stands at when charged (2.1 V a lead-acid cell).</summary>
public sealed record LivePost(Source Source, string Node, double Volts, double InternalOhm)
{
    private const double ChargedPerNominal = 1.05;

    public static ImmutableArray<LivePost> Of(Harness harness)
    {
        ArgumentNullException.ThrowIfNull(harness);
        return
        [
            .. harness.Power.Sources
                .Select(s => (Source: s, Thing: harness.Things.FirstOrDefault(t => t.Id == s.Id)))
                .Where(p => p.Thing is not null)
                .SelectMany(p => p.Thing!.Elements.Where(e => e.Kind == ElementKind.Source).Take(1).Select(e => Post(harness, p.Source, e))),
        ];
    }

    private static LivePost Post(Harness harness, Source source, Element element)
    {
        // pin A is the positive pole; with positive ground the other one is live
        var pin = harness.Power.Ground == GroundPolarity.Positive && element.PinB is { } minus ? minus : element.PinA;
        return new(source, $"{source.Id}.{pin}", harness.Power.LiveV(source) * ChargedPerNominal, harness.Power.LiveOhm(source));
    }
}
