using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Model;

namespace HarnessDraw.Sheets;

/// <summary>What a connector sheet says in sentences: where the first and last cavity lie, what to beware of.</summary>
internal static class ConnectorWords
{
    public static IEnumerable<string> Places(ConnectorSubject subject, UnitsShown units)
    {
        var cavities = subject.Part.Cavities.OrderBy(c => c.Name, CavityOrder.Instance).ToList();
        var (first, last) = (cavities[0], cavities[^1]);
        yield return $"Wire-entry side toward you, latch up: {Two(subject.Part, first, last, mating: false)}{Key(subject.Part, mating: false)}";
        yield return $"Mating side toward you, latch up: {Two(subject.Part, first, last, mating: true)}{Key(subject.Part, mating: true)} Positions mirror, numbers do not.";
        var (distance, edge) = NearestEdge(subject.Part, first);
        yield return $"Check, wire-entry side: the middle of {first.Name} lies {LengthWords.Small(distance, units)} from the {edge} edge. If not, the moulded numbers differ: stop and ask.";
    }

    /// <summary>'A1, B3' of the cavities that are live with the key off, or what to assume where that is not known.</summary>
    public static string Live(ConnectorSubject subject)
    {
        var live = subject.Rows.Where(r => r.AlwaysLive).Select(r => r.Cavity).Distinct(StringComparer.Ordinal).ToList();
        var unknown = subject.Rows.Any(r => r.Wire is not null && r.OffV is null);
        return (live.Count, unknown) switch
        {
            (0, false) => "Battery off before you part the halves.",
            (0, true) => "Battery off before you part the halves: any cavity with – under off may be live.",
            _ => $"Battery off before you part the halves. {string.Join(", ", live)} {(live.Count == 1 ? "is" : "are")} live with the key off{(unknown ? ", and any with – under off may be" : "")}.",
        };
    }

    /// <summary>The bolt's torque and how to treat it; null where there is no bolt.</summary>
    public static string? Bolt(ConnectorSubject subject, UnitsShown units)
    {
        if (!subject.Part.CentreBolt)
        {
            return null;
        }

        var torque = subject.Thing.TorqueNm ?? subject.Part.BoltTorqueNm;
        var words = torque is { } nm ? TorqueWords(nm, units) : "see its maker: ______ N·m";
        return $"Bolt: hand tools, {words}. Too tight cracks the body. Never pull crossed halves together with the bolt.";
    }

    // one pound-force foot is 1.3558179483 N·m (exact factors of foot, pound and standard gravity)
    private static string TorqueWords(double nm, UnitsShown units)
    {
        var metric = $"{nm.ToString("0.#", CultureInfo.InvariantCulture)} N·m";
        var feet = $"{(nm / 1.3558179483).ToString("0.0", CultureInfo.InvariantCulture)} lbf·ft";
        return units switch { UnitsShown.Inch => $"{feet} ({metric})", UnitsShown.Both => $"{metric} ({feet})", _ => metric };
    }

    public static string Under(ConnectorSubject subject)
    {
        var side = subject.IsMate ? subject.Side == Side.Bay ? "bay side, " : "cabin side, " : "";
        var halves = subject.Thing.Halves.IsEmpty ? "" : $" Halves: {string.Join(", ", subject.Thing.Halves.OrderBy(h => h.Letter, StringComparer.Ordinal).Select(h => $"{h.Letter} {h.Name}"))}; one body{(subject.Part.CentreBolt ? ", one bolt" : "")}.";
        return $"{subject.Thing.Id}, {side}at {subject.Thing.Place}. {subject.Part.Title} ({subject.Part.Id}).{halves}";
    }

    private static string Two(ConnectorPart part, CavityPart first, CavityPart last, bool mating) =>
        first.Name == last.Name ? $"{first.Name} is {Place(part, first, mating)}." : $"{first.Name} is {Place(part, first, mating)}, {last.Name} is {Place(part, last, mating)}.";

    private static string Key(ConnectorPart part, bool mating) => FacePainter.Mirrored(part.Key, mating) switch
    {
        "left" => " The key rib is on the left.",
        "right" => " The key rib is on the right.",
        "bottom" => " The key rib is at the bottom.",
        _ => "",
    };

    private static string Place(ConnectorPart part, CavityPart cavity, bool mating)
    {
        var across = (mating ? part.WidthMm - cavity.Xmm : cavity.Xmm) / part.WidthMm;
        var level = Third(cavity.Ymm / part.HeightMm, "top", "in the middle row", "bottom");
        var side = Third(across, "left", "centre", "right");
        return level == "in the middle row" && side == "centre" ? "in the middle" : $"{level}{(level == "in the middle row" ? "," : "")} {side}";
    }

    private static string Third(double part, string low, string middle, string high) => part < 0.4 ? low : part > 0.6 ? high : middle;

    private static (double Mm, string Edge) NearestEdge(ConnectorPart part, CavityPart c)
    {
        ImmutableArray<(double Mm, string Edge)> edges = [(c.Xmm, "left"), (part.WidthMm - c.Xmm, "right"), (c.Ymm, "top"), (part.HeightMm - c.Ymm, "bottom")];
        return edges.MinBy(e => e.Mm);
    }
}
