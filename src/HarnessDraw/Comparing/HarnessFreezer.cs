using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Comparing;

/// <summary>Takes down what a plan would build.</summary>
public static class HarnessFreezer
{
    public static FrozenHarness Freeze(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var harness = plan.Harness;
        var revision = harness.Drawing.Revisions.IsDefaultOrEmpty ? null : harness.Drawing.Revisions[^1].Rev;
        var nets = plan.Wires.ToDictionary(w => w.Id, w => w.Net, StringComparer.Ordinal);
        var wires = plan.Wires.Select(w => new FrozenWire(w.Id, w.Circuit, w.Net, w.From.ToString(), w.To.ToString(), w.Colour, w.WireType, w.SizeLabel, w.CutLengthMm) { Half = HalfOf(plan, w), Segments = w.Segments }).ToImmutableArray();
        return new()
        {
            Harness = harness.Id,
            Title = harness.Title,
            Vehicle = harness.Vehicle,
            Revision = revision,
            SourceHash = harness.SourceHash,
            Wires = wires,
            Cavities = [.. plan.Cavities.Where(c => c.Wire is not null && nets.ContainsKey(c.Wire)).Select(c => new FrozenCavity(c.Connector, c.Cavity, c.Wire!, nets[c.Wire!]))],
            Splices = [.. plan.Splices.Select(s => (Splice: s, Segment: plan.Tree.Segments.FirstOrDefault(t => t.Id == s.Segment))).Select(s => new FrozenSplice(s.Splice.Id, s.Splice.Net, s.Splice.Segment, s.Splice.AtMm) { From = s.Segment?.From, To = s.Segment?.To })],
            HalfRevisions = wires.Select(w => w.Half).OfType<string>().Distinct(StringComparer.Ordinal).ToImmutableSortedDictionary(h => h, _ => revision ?? "", StringComparer.Ordinal),
        };
    }

    private static string? HalfOf(Plan plan, Wire wire) => plan.Harness.Things
        .Where(t => t.Kind == ThingKind.Mate && (t.Id == wire.From.At || t.Id == wire.To.At))
        .Select(t => t.Pins.FirstOrDefault(p => p.Name == (t.Id == wire.From.At ? wire.From.Pin : wire.To.Pin))?.Half)
        .FirstOrDefault(h => h is not null);
}
