using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning.Sizing;

namespace HarnessDraw.Planning;

/// <summary>The problems that only planning can see, worded in one place.</summary>
internal sealed class PlanningFindings
{
    private readonly List<Finding> found = [];

    public ImmutableArray<Finding> All => [.. found];

    public void AddMissingPaths(RoutedHarness routed)
    {
        foreach (var segment in routed.Tree.Segments.Where(s => s.Run.Path is null))
        {
            var (a, b) = (routed.Tree.PlaceId(segment.From), routed.Tree.PlaceId(segment.To));
            Add("no-path", Severity.Error, $"No path of the layout reaches '{b}': a straight run of {segment.LengthMm:0} mm from '{a}' is assumed. Its wires cannot be cut by it.",
                $"Describe a path from '{a}' to '{b}' with its measured length.", [a, b], null);
        }
    }

    public void AddMissingGrounds(Harness harness)
    {
        var wired = harness.Nets.SelectMany(n => n.Ends.Append(n.Root)).Select(p => p.ToString()).ToHashSet(StringComparer.Ordinal);
        var open = harness.Things.Where(t => t.Side == Side.Bay).SelectMany(t => t.Returns.Where(p => !wired.Contains($"{t.Id}.{p.Pin}")).Select(p => (Thing: t, Pin: p))).ToList();
        // one cause, one finding: the ground point that all of them lack, or that those lack which name it
        foreach (var lacking in open.GroupBy(o => o.Pin.To, StringComparer.Ordinal))
        {
            var pins = lacking.Select(o => PointWords.Of(o.Thing.Id, o.Pin.Pin)).ToList();
            Add("no-ground-point", Severity.Error, $"{Named(pins)} must be wired to ground, but {(lacking.Key is null ? "no ground point is described" : $"'{lacking.Key}' is not described")}.",
                harness.Power.Returns == ReturnPath.Wire && lacking.Key is null
                    ? "The body returns nothing here (returns-by: wire): name the bus bar or post that each goes back to, as in 'returns: { 31: minus bar }', and wire that to the battery."
                    : $"Describe a ground point on bare metal near {(pins.Count == 1 ? "it" : "them")}.", [.. lacking.Select(o => o.Thing.Id).Distinct(StringComparer.Ordinal)], lacking.First().Thing.At);
        }
    }

    private static string Named(List<string> points) =>
        points.Count == 1 ? points[0] : $"{string.Join(", ", points.Take(points.Count - 1))} and {points[^1]}";

    public void AddSplicesWithoutPlace(Harness harness, IEnumerable<int> nets)
    {
        foreach (var net in nets.Distinct())
        {
            var id = harness.Nets[net].Circuit;
            Add("no-splice-place", Severity.Warning, $"The splice of '{id}' found no place that is still, cool, measured and clear of breakouts: it is put in the middle of the longest segment.",
                "Measure a longer path, or join the wires at a stud.", [id], harness.CircuitOf(id).At);
        }
    }

    public void AddTooSmall(WireRow wire, string id, string? fuse, double? ratingA) =>
        Add("no-size-large-enough", Severity.Error, wire.AmbientC >= wire.Type.MaxC
            ? $"Wire {id} of '{wire.Circuit.Id}' lies where it is {wire.AmbientC:0} degC hot, and {wire.Type.Title} bears {wire.Type.MaxC:0} degC: no size of it bears any current there."
            : ratingA is { } rating && rating > wire.SteadyA
            ? $"Wire {id} of '{wire.Circuit.Id}': no size of {wire.Type.Title} bears the {rating:0.#} A of {fuse} where it lies (largest: {wire.DeratedA(wire.Sizes.Length - 1):0.0} A)."
            : $"Wire {id} of '{wire.Circuit.Id}': no size of {wire.Type.Title} bears {wire.SteadyA:0.0} A where it lies (largest: {wire.DeratedA(wire.Sizes.Length - 1):0.0} A).",
            "Use a wire type of a higher class, a cooler route, or a smaller fuse.", [id, wire.Circuit.Id], wire.Circuit.At, wire.Draft.Builds);

    /// <param name="wires">Each with the fuse over it.</param>
    public void AddNoTerminals(IEnumerable<(WireRow Wire, string Id, string? Fuse, double? RatingA)> wires)
    {
        // wires that one fuse makes so thick, and not what they carry, are one finding
        foreach (var same in wires.GroupBy(w => w.Fuse is not null && w.Wire.ByProtection > Math.Max(w.Wire.ByMechanics, w.Wire.ByAmpacity) ? w.Fuse : w.Id, StringComparer.Ordinal))
        {
            var list = same.ToList();
            var (wire, id, fuse, ratingA) = list[0];
            var byFuse = same.Key == fuse;
            if (list.Count == 1)
            {
                Add("no-terminal-fits", Severity.Error, $"Wire {id} of '{wire.Circuit.Id}': {Size(wire)} (outside {wire.SizeNow.OutsideMm:0.0} mm) is larger than every terminal of its pins takes{(byFuse ? $": it must bear the {ratingA:0.#} A of {fuse} and carries {wire.SteadyA:0.0#} A" : "")}.",
                    byFuse ? $"Use a smaller fuse than {fuse} is, or a larger contact." : "Use a larger contact, split the load, or step down behind a fuse.", byFuse ? [id, wire.Circuit.Id, fuse!] : [id, wire.Circuit.Id], wire.Circuit.At, wire.Draft.Builds);
                continue;
            }

            Add("no-terminal-fits", Severity.Error, $"{list.Count} wires behind {fuse} are larger than every terminal of their pins takes, because each must bear its {ratingA:0.#} A where it lies: {Named([.. list.Select(w => $"{w.Id} ({w.Wire.Circuit.Id}) {Size(w.Wire)}")])}. The most that one of them carries is {list.Max(w => w.Wire.SteadyA):0.0#} A.",
                $"Share what {fuse} feeds among several smaller fuses, use larger contacts, or lead the wires where it is cooler and fewer lie together.",
                [.. list.Select(w => w.Id), .. list.Select(w => w.Wire.Circuit.Id).Distinct(StringComparer.Ordinal), fuse!], wire.Circuit.At, list.TrueForAll(w => w.Wire.Draft.Builds == wire.Draft.Builds) ? wire.Draft.Builds : null);
        }
    }

    private static string Size(WireRow wire) => wire.SizeNow.Label.Contains("AWG", StringComparison.Ordinal) ? wire.SizeNow.Label : $"{wire.SizeNow.Label} mm²";

    /// <param name="missing">How many wires have no cavity in that connector.</param>
    /// <param name="larger">The next larger connector of the catalogue in which all of them would have one.</param>
    public void AddNoCavity(WireRow wire, string id, Thing connector, int missing, ConnectorPart? larger) =>
        Add("no-cavity", Severity.Error, $"Wire {id} of '{wire.Circuit.Id}' has no cavity left in {connector.Id} of its half and size{(missing == 1 ? "" : $", one of {missing} wires")}.",
            $"{(larger is null ? "No connector of the catalogue is larger: join" : $"Use {larger.Id} with {larger.Cavities.Length} cavities, join")} circuits before the mate, or free {(missing == 1 ? "a cavity" : $"{missing} cavities")}.",
            [id, wire.Circuit.Id, connector.Id], wire.Circuit.At, wire.Draft.Builds);

    public void AddNoRating(Protection protection, double loadA) =>
        Add("no-fuse-rating", Severity.Error, $"{protection.Id}: no standard rating is large enough for {loadA:0.0} A.", "Use another kind of fuse, or split the circuits.", [protection.Id], protection.At);

    private void Add(string rule, Severity severity, string message, string cure, ImmutableArray<string> where, SourceSpan? at, BuildCondition? builds = null) =>
        found.Add(new() { Rule = rule, Severity = severity, Message = message, Cure = cure, Where = where, At = at, Source = "common practice, no source", Builds = builds ?? BuildCondition.Always });
}
