using System.Globalization;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication.Supplies;

/// <summary>Counts the parts of an order by catalogue id, in ordinal order; each build is counted by itself, so that a cavity without a wire gets its plug.</summary>
internal sealed class PartsCounter(FabricationOrder order)
{
    private readonly Catalogue catalogue = order.Plan.Harness.Catalogue;

    private IEnumerable<(WireEnd End, int Quantity)> Ends => order.Wires.SelectMany(w => new[] { (w.From, order.QuantityOf(w.Builds)), (w.To, order.QuantityOf(w.Builds)) });

    public IEnumerable<KeyValuePair<string, int>> Terminals() => Sum(Ends.Select(e => (e.End.Terminal, e.Quantity)));

    public IEnumerable<KeyValuePair<string, int>> Seals() => Sum(Ends.Select(e => (e.End.Seal, e.Quantity)));

    public IEnumerable<KeyValuePair<string, int>> Boots() =>
        Sum(Ends.SelectMany(e => e.End.ThreadOnFirst.Where(t => t.Contains("boot", StringComparison.OrdinalIgnoreCase)).Select(t => ((string?)t, e.Quantity))));

    public IEnumerable<KeyValuePair<string, int>> Splices() => Sum(order.Plan.Splices.Select(s => (s.Part, order.QuantityOf(s.Builds))));

    /// <summary>Bodies that the harness carries: of things that have a wire in a build.</summary>
    public IEnumerable<KeyValuePair<string, int>> Connectors() => Sum(order.Plan.Harness.Things
        .Where(t => t.ConnectorPart is not null)
        .Select(t => (t.ConnectorPart, Used(t).Sum(b => b.Quantity))));

    public IEnumerable<KeyValuePair<string, int>> Plugs() => Sum(order.Plan.Harness.Things
        .Where(t => t.ConnectorPart is not null)
        .SelectMany(t => Used(t).SelectMany(b => PlugsOf(t, b.Wired).Select(p => ((string?)p, b.Quantity)))));

    /// <summary>Fuses of the builds that have a wire behind them.</summary>
    public IEnumerable<KeyValuePair<string, int>> Fuses() => Sum(order.Each.SelectMany(b => b.Plan.Fuses
        .Where(f => f.RatingA is not null && (!f.Wires.IsEmpty || order.Plan.Fuses.First(o => o.Id == f.Id).Wires.IsEmpty))
        .Select(f => ((string?)string.Create(CultureInfo.InvariantCulture, $"{KindWords(f.Kind)} {f.RatingA:0.##} A"), b.Times))));

    public string Title(string part) =>
        catalogue.Connectors.FirstOrDefault(p => p.Id == part)?.Title
        ?? catalogue.Terminals.FirstOrDefault(p => p.Id == part)?.Title
        ?? catalogue.Seals.FirstOrDefault(p => p.Id == part)?.Title
        ?? catalogue.Plugs.FirstOrDefault(p => p.Id == part)?.Title
        ?? catalogue.Splices.FirstOrDefault(p => p.Id == part)?.Title
        ?? part;

    // the cavities of a thing that hold a wire, build by build
    private IEnumerable<(HashSet<string> Wired, int Quantity)> Used(Thing thing)
    {
        var uses = order.Plan.Cavities.Where(c => c.Connector == thing.Id && c.Wire is not null).ToArray();
        IEnumerable<(Func<BuildCondition, bool> Holds, int Quantity)> builds = order.Builds.IsEmpty
            ? [(_ => true, 1)]
            : order.Builds.Select(b => ((Func<BuildCondition, bool>)(c => c.Holds(b.Build)), b.Quantity));
        return builds
            .Select(b => (Wired: uses.Where(u => b.Holds(WireCondition(u))).Select(u => u.Cavity).ToHashSet(StringComparer.Ordinal), b.Quantity))
            .Where(b => b.Wired.Count > 0);
    }

    private BuildCondition WireCondition(CavityUse use) => order.Plan.Wires.FirstOrDefault(w => w.Id == use.Wire)?.Builds ?? use.Builds;

    // as the planner plugs them: sealed bodies and mates only
    private IEnumerable<string> PlugsOf(Thing thing, HashSet<string> wired)
    {
        var part = catalogue.Connectors.FirstOrDefault(p => p.Id == thing.ConnectorPart);
        return part is null || !(part.Sealed || thing.Kind == ThingKind.Mate)
            ? []
            : part.Cavities.Where(c => !wired.Contains(c.Name)).Select(c => catalogue.Plugs.FirstOrDefault(p => p.Size == c.Size)?.Id).OfType<string>();
    }

    private static string KindWords(ProtectionKind kind) => kind switch
    {
        ProtectionKind.BoltIn => "bolt-in fuse",
        ProtectionKind.Blade => "blade fuse",
        ProtectionKind.FusibleLink => "fusible link",
        _ => "breaker",
    };

    private static IEnumerable<KeyValuePair<string, int>> Sum(IEnumerable<(string? Part, int Quantity)> counted) => counted
        .Where(c => c.Part is not null && c.Quantity > 0)
        .GroupBy(c => c.Part!, StringComparer.Ordinal)
        .OrderBy(g => g.Key, StringComparer.Ordinal)
        .Select(g => KeyValuePair.Create(g.Key, g.Sum(c => c.Quantity)));
}
