using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Cures;

/// <summary>Other cavities for the wires that a finding names, and other bodies.</summary>
internal static class CavityCures
{
    private const int MostRungs = CureLadder.MostRungs;

    /// <summary>Free cavities of the same mate and half with a larger contact, the nearest first.</summary>
    public static IEnumerable<CureLadder> Larger(RuleContext context, Finding finding) =>
        Ends(context, finding).Take(1).SelectMany(e => Ladder(context, e, e.Own.Half,
            free => free.Where(c => Bears(context, e.Part, c) > Bears(context, e.Part, e.Own)).OrderBy(c => Bears(context, e.Part, c)).ThenBy(c => Apart(c, e.Own)).DistinctBy(c => c.Size)));

    /// <summary>Free cavities of the same half, those with fewest neighbours first, for each of the first two wires.</summary>
    public static IEnumerable<CureLadder> Free(RuleContext context, Finding finding) =>
        Ends(context, finding).Take(2).SelectMany(e => Ladder(context, e, e.Own.Half, free => Lonely(context, e, free)));

    /// <summary>Free cavities of the half that the wire belongs to.</summary>
    public static IEnumerable<CureLadder> OwnHalf(RuleContext context, Finding finding) =>
        Ends(context, finding).Take(1).SelectMany(e => Ladder(context, e, context.Circuit(e.Wire.Circuit)?.Half is { } half ? e.Mate.Halves.FirstOrDefault(h => h.Name == half)?.Letter ?? half : null, free => Lonely(context, e, free)));

    /// <summary>The cavity whose kept wire comes from where the circuit does; what sits there changes places with it.</summary>
    public static IEnumerable<CureLadder> AsKept(RuleContext context, Finding finding)
    {
        foreach (var (wire, mate, _, own) in Ends(context, finding).Take(1))
        {
            var from = context.Circuit(wire.Circuit)?.From;
            if (context.Harness.Kept.FirstOrDefault(k => k.Connector == mate.Id && k.ComesFrom is not null && (k.ComesFrom == from?.ToString() || k.ComesFrom == from?.Thing)) is { } kept)
            {
                var there = context.EndsAt(mate.Id, kept.Cavity).Select(e => e.Wire).FirstOrDefault();
                yield return there is null
                    ? CureLadder.Of($"'{wire.Circuit}' through cavity {kept.Cavity}", $"circuit.{wire.Circuit}.cavity={kept.Cavity}")
                    : CureLadder.Of($"'{wire.Circuit}' through cavity {kept.Cavity} and '{there.Circuit}' through {own.Name}", $"circuit.{wire.Circuit}.cavity={kept.Cavity}", $"circuit.{there.Circuit}.cavity={own.Name}");
            }
        }
    }

    /// <summary>Bulkhead bodies of the catalogue with more cavities, the fewest first.</summary>
    public static IEnumerable<CureLadder> LargerMate(RuleContext context, Finding finding) =>
        from mate in context.ThingsNamed(finding).Where(t => t.Kind == ThingKind.Mate).Take(1)
        let own = context.PartOf(mate)
        where own is not null
        select new CureLadder([.. context.Harness.Catalogue.Connectors.Where(c => c.IsBulkhead && c.Cavities.Length > own.Cavities.Length).OrderBy(c => c.Cavities.Length).ThenBy(c => c.Id, StringComparer.Ordinal).Take(MostRungs)
            .Select(c => new CureCandidate([$"thing.{mate.Id}.mate={c.Id}"], $"{mate.Id} as {c.Title}"))]);

    /// <summary>Sockets in the half that stays live.</summary>
    public static IEnumerable<CureLadder> Sockets(RuleContext context, Finding finding) =>
        context.ThingsNamed(finding).Where(t => t.Contacts == ContactGender.Pins).Take(1).Select(t => CureLadder.Of($"sockets in the half of {t.Id} that stays live", $"thing.{t.Id}.contacts=sockets"));

    private static IEnumerable<CureLadder> Ladder(RuleContext context, MatedEnd end, string? half, Func<IEnumerable<CavityPart>, IEnumerable<CavityPart>> choose)
    {
        var taken = Taken(context, end.Mate);
        var free = choose(end.Part.Cavities.Where(c => c.Half == half && !taken.Contains(c.Name)));
        yield return new([.. free.Take(MostRungs).Select(c => new CureCandidate([$"circuit.{end.Wire.Circuit}.cavity={c.Name}"], $"'{end.Wire.Circuit}' through cavity {c.Name} ({c.Size} contact) of {end.Mate.Id}"))]);
    }

    private static Ordered<CavityPart> Lonely(RuleContext context, MatedEnd end, IEnumerable<CavityPart> free)
    {
        var (taken, beside) = (Taken(context, end.Mate), CavityNeighbours.Of(end.Part));
        return free.OrderBy(c => end.Part.Cavities.Count(o => taken.Contains(o.Name) && beside.Contains((c.Name, o.Name)))).ThenBy(c => Apart(c, end.Own)).ThenBy(c => c.Name, StringComparer.Ordinal);
    }

    private static HashSet<string> Taken(RuleContext context, Thing mate) => context.Plan.Cavities.Where(c => c.Connector == mate.Id && c.Wire is not null).Select(c => c.Cavity).ToHashSet(StringComparer.Ordinal);

    private static double Bears(RuleContext context, ConnectorPart part, CavityPart cavity) =>
        context.Harness.Catalogue.Terminals.Where(t => t.Size == cavity.Size && part.TerminalFamilies.Contains(t.Family)).Select(t => t.CurrentA).DefaultIfEmpty(0).Max();

    private static double Apart(CavityPart a, CavityPart b) => Math.Abs(a.Xmm - b.Xmm) + Math.Abs(a.Ymm - b.Ymm);

    // ends in a mate of the wires that the finding names; where it names a cavity, that one alone
    private static IEnumerable<MatedEnd> Ends(RuleContext context, Finding finding)
    {
        var ends = from wire in finding.Where.Select(context.Wire).OfType<Wire>()
                   from end in new[] { wire.From, wire.To }
                   let mate = context.Thing(end.At)
                   where mate?.Kind == ThingKind.Mate
                   let part = context.PartOf(mate)
                   let own = part?.Cavities.FirstOrDefault(c => c.Name == end.Pin)
                   where own is not null
                   select (Named: finding.Where.Contains(end.ToString()), End: new MatedEnd(wire, mate, part, own));
        var all = ends.ToList();
        return (all.Exists(e => e.Named) ? all.Where(e => e.Named) : all).Select(e => e.End);
    }

    private sealed record MatedEnd(Wire Wire, Thing Mate, ConnectorPart Part, CavityPart Own);
}
