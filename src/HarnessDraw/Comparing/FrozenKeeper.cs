using System.Globalization;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Comparing;

/// <summary>Makes a changed description keep what was built: cavities, splices and ids before planning, cut lengths after it.</summary>
public static class FrozenKeeper
{
    private const string GivenByHand = "given by hand";

    /// <summary>The harness with the cavities and wire ids that were built, where the description leaves them open.</summary>
    public static Harness Keep(Harness harness, FrozenHarness frozen)
    {
        ArgumentNullException.ThrowIfNull(harness);
        ArgumentNullException.ThrowIfNull(frozen);
        var mates = harness.Things.Where(t => t.Kind == ThingKind.Mate).Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        return harness with { Built = frozen, Nets = [.. harness.Nets.Select(n => Keep(n, frozen, mates))] };
    }

    private static Net Keep(Net net, FrozenHarness frozen, HashSet<string> mates)
    {
        var mine = frozen.Wires.Where(w => w.Net == net.Id).ToArray();
        var cavity = net.Ends.Append(net.Root).Where(p => p.Pin is null && mates.Contains(p.Thing))
            .Select(p => frozen.Cavities.FirstOrDefault(c => c.Net == net.Id && c.Connector == p.Thing)?.Cavity).FirstOrDefault(c => c is not null);
        return net with
        {
            FixedCavity = net.FixedCavity ?? cavity,
            FixedWireId = net.FixedWireId ?? (net.Ends.Length == 1 && net.ByHand.IsEmpty && mine.Length == 1 ? mine[0].Id : null),
        };
    }

    /// <summary>The plan with the lengths that were built, and a warning for each built wire that is now too short.</summary>
    public static Plan KeepLengths(Plan plan, FrozenHarness frozen)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(frozen);
        var built = frozen.Wires.ToDictionary(w => w.Id, StringComparer.Ordinal);
        var findings = plan.PlanningFindings.ToBuilder();
        findings.AddRange(MovedSplices(plan, frozen));
        var wires = plan.Wires.Select(wire =>
        {
            if (built.TryGetValue(wire.Id, out var sized) && sized.Size != wire.SizeLabel && wire.DecidedBy != GivenByHand && !wire.ByHand)
            {
                findings.Add(OtherSize(wire, sized));
            }

            if (!built.TryGetValue(wire.Id, out var old) || old.CutMm is not { } cutMm || old.From != wire.From.ToString() || old.To != wire.To.ToString() || cutMm == wire.CutLengthMm || wire.ByHand)
            {
                return wire;
            }

            if (wire.LeastCutMm is { } leastMm && cutMm < leastMm - 0.5)
            {
                findings.Add(new Finding
                {
                    Rule = "built-wire-short",
                    Severity = Severity.Warning,
                    Message = string.Create(CultureInfo.InvariantCulture, $"Wire {wire.Id} was built {cutMm:0} mm long and needs {leastMm:0} mm now ({wire.PathLengthMm:0} mm of route and {leastMm - wire.PathLengthMm:0} mm of allowances): it does not reach."),
                    Cure = string.Create(CultureInfo.InvariantCulture, $"Cut it anew, {wire.CutLengthMm:0} mm, as the cut list and the list of changes have it; or take the route back."),
                    Source = "geometry",
                    Where = [wire.Id],
                    Builds = wire.Builds,
                });
                return wire;
            }

            return wire with { CutLengthMm = cutMm };
        });
        return plan with { Wires = [.. wires], PlanningFindings = findings.ToImmutable() };
    }

    private static Finding OtherSize(Wire wire, FrozenWire was) => new()
    {
        Rule = "built-wire-size",
        Severity = Severity.Warning,
        Message = $"Wire {wire.Id} was built as {was.Size} and that does not do now ({wire.DecidedBy}{(wire.RunnerUp is { } why ? $": {why}" : "")}): it is {wire.SizeLabel} in this plan.",
        Cure = "Cut it anew in the new size, or take back what changed its circuit.",
        Source = "see the rule that decides",
        Where = [wire.Id, wire.Circuit],
        Builds = wire.Builds,
    };

    // a net that lost its splices altogether is told by its wires
    private static IEnumerable<Finding> MovedSplices(Plan plan, FrozenHarness frozen)
    {
        var places = plan.Tree.Segments.ToDictionary(s => s.Id, s => (s.From, s.To), StringComparer.Ordinal);
        var nets = plan.Splices.ToLookup(s => s.Net, StringComparer.Ordinal);
        foreach (var was in frozen.Splices.Where(s => s.From is not null && nets[s.Net].Any()))
        {
            var now = nets[was.Net].FirstOrDefault(s => s.Id == was.Id);
            var (from, to) = now is null ? default : places.GetValueOrDefault(now.Segment);
            var isThere = now is not null && ((from, to) == (was.From, was.To) || (to, from) == (was.From, was.To));
            if (!isThere)
            {
                yield return new Finding
                {
                    Rule = "built-splice-moved",
                    Severity = Severity.Warning,
                    Message = $"Splice {was.Id} was built {was.AtMm:0} mm from {was.From} towards {was.To}; that stretch no longer holds it, and its circuit is spliced anew.",
                    Cure = "Take the path back, or open the harness there and splice it anew.",
                    Source = "geometry",
                    Where = [was.Id, .. nets[was.Net].Select(s => s.Circuit).Distinct(StringComparer.Ordinal)],
                };
            }
        }
    }
}
