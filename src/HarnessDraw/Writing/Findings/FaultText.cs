using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using HarnessDraw.Electrical;

namespace HarnessDraw.Writing.Findings;

/// <summary>A study of faults as text: shorts that end badly first, then what each fuse and ground point takes with it.</summary>
public static class FaultText
{
    /// <summary>A short that passes less than this harms nothing: a wire of a return, or one behind a load.</summary>
    private const double LeastToldA = 1;

    public static string Of(FaultStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        var text = new StringBuilder();
        text.Append(Text($"\nfaults tried one at a time in every state of the usual build: {study.Solved}\n"));
        text.Append("dead shorts to the body at the far end of each wire, worst state; k of IEC 60364-5-54, fuse windows of ISO 8820 as reprinted on data sheets\n");
        text.Append(Text($"  current as it flows: sources at their volts in the state behind their own ohms, copper as warm as it was, joints, fuses and {1000 * FaultFinder.ShortOhm:0.#} mohm of the short counted; the power sheet tells the most, with cold copper and none of these\n"));
        foreach (var f in study.Shorts.Where(f => f.Outcome != ShortOutcome.FuseOpens && f.CurrentA >= LeastToldA).OrderByDescending(f => f.Outcome == ShortOutcome.Burns).ThenByDescending(f => f.HottestC).ThenBy(f => f.Wire, StringComparer.Ordinal))
        {
            text.Append("  ").Append(Short(f)).Append('\n');
        }

        text.Append(Counted(study));
        text.Append("one fuse or ground point opened at a time\n");
        foreach (var what in study.Opens.GroupBy(o => o.What, StringComparer.Ordinal))
        {
            text.Append("  ").Append(what.Key).Append(" open: ").Append(Open([.. what])).Append('\n');
        }

        text.Append(Cranking(study.Cranking));
        text.Append("key turned off while the engine runs\n");
        text.Append(study.RunOn.IsEmpty ? "  nothing behind the key stays on, neither through the alternator's exciter terminal nor by a feed that the key does not switch\n" : "");
        foreach (var load in study.RunOn.GroupBy(r => r.Load, StringComparer.Ordinal).Select(g => g.MaxBy(r => r.Share)!).OrderByDescending(r => r.Share).ThenBy(r => r.Load, StringComparer.Ordinal))
        {
            text.Append(Text($"  {load.Load} stays on {(load.ByExciter ? "through the exciter" : "though the key is off (its feed is not switched by it, or another one feeds it)")} with {load.VoltageV:0.0} V, {100 * load.Share:0} % of its current ({load.State}){string.Concat(load.Holding.Select(h => Text($"; {h.Relay} holds with {h.CoilV:0.0} V, lets go below {h.DropsOutV:0.0} V")))}\n"));
        }

        var s = study.Switches;
        text.Append(Text($"switches at key run, each alone and in pairs that share a fuse, thing or ground point: {s.Tried} of {s.Possible} combinations\n"));
        text.Append(s.Sneaks.IsEmpty && s.Kills.IsEmpty ? "  no load is fed through another, none is put out by a second switch\n" : "");
        foreach (var sneak in s.Sneaks.GroupBy(e => e.Load, StringComparer.Ordinal).Select(g => g.MaxBy(e => e.Share)!))
        {
            text.Append(Text($"  {sneak.Load} gets {100 * sneak.Share:0} % of its current at less than half the volts, through another load, with {string.Join(" and ", sneak.Switches)}\n"));
        }

        foreach (var kill in s.Kills.GroupBy(e => (e.Load, e.Switches[^1])).Select(g => g.First()))
        {
            text.Append(Text($"  {kill.Load} is put out by {kill.Switches[^1]} while {kill.Switches[0]} is on\n"));
        }

        return text.ToString();
    }

    /// <summary>Every wire of the plan under one name: what adds up.</summary>
    private static string Counted(FaultStudy study)
    {
        var opens = study.Shorts.Count(f => f.Outcome == ShortOutcome.FuseOpens);
        string[] weak = [.. study.Shorts.Where(f => f.Outcome != ShortOutcome.FuseOpens && f.CurrentA < LeastToldA).Select(f => f.Wire)];
        var text = new StringBuilder(Text($"  wires shorted: {study.Shorts.Length}; the fuse opens first in {opens}, told above {study.Shorts.Length - opens - weak.Length}"));
        text.Append(weak.Length == 0 ? "" : Text($", less than {LeastToldA:0} A flows in {weak.Length} ({string.Join(", ", weak)})")).Append('\n');
        foreach (var (why, wires) in study.NotShorted)
        {
            text.Append(Text($"  not shorted, {why}: {wires.Length} ({string.Join(", ", wires)})\n"));
        }

        return text.ToString();
    }

    private static string Cranking(ImmutableArray<CrankingPoint> points)
    {
        var text = new StringBuilder(points.IsEmpty ? "" : "starter\n");
        foreach (var p in points)
        {
            text.Append(Text($"  {p.Starter} {(p.Stalled ? "still stands" : "turns")} ({p.State}): {p.StarterA:0} A, battery posts {p.BatteryV:0.0} V, starter {p.StarterV:0.0} V"));
            text.Append(p.Loads.IsEmpty ? "" : Text($"; least of its volts has {p.Loads[0].Load}, {p.Loads[0].VoltageV:0.0} V, {100 * p.Loads[0].Share:0} %"));
            text.Append(p.Loads.Any(l => l is { WorksContact: true, Pulled: false }) ? $"; not pulled in: {string.Join(", ", p.Loads.Where(l => l is { WorksContact: true, Pulled: false }).Select(l => l.Load))}" : "").Append('\n');
        }

        return text.ToString();
    }

    private static string Short(ShortFault f)
    {
        var fuse = f.Fuse is null ? "no fuse on the way"
            : f.LongestS is { } longest ? Text($"fuse {f.Fuse} of {f.FuseA:0.#} A ({f.TimesRating:0.0} times) opens in {f.ShortestS:0.###} to {longest:0.###} s")
            : Text($"fuse {f.Fuse} of {f.FuseA:0.#} A ({f.TimesRating:0.0} times) need not open");
        var wire = f.Outcome switch
        {
            ShortOutcome.Burns => Text($"the wire goes on to {f.HottestC:0} degC"),
            ShortOutcome.WireHarmedFirst => Text($"the wire may reach {f.HottestC:0} degC, its limit in a short is {f.FinalC:0}"),
            _ => Text($"the wire bears it at {f.HottestC:0} degC"),
        };
        return Text($"{f.Wire} shorted at {f.At} ({f.State}): {f.CurrentA:0} A; {fuse}; {wire}");
    }

    private static string Open(List<OpenFault> states)
    {
        string Loads(string words, Func<OpenFault, IEnumerable<ChangedLoad>> of)
        {
            // a load that is dead in one state and fed another way in the next is told with its states
            string[] names = [.. states.SelectMany(o => of(o).Select(l => (l.Load, o.State))).GroupBy(l => l.Load, StringComparer.Ordinal)
                .Select(g => states.Count(o => o.Dead.Concat(o.Dim).Concat(o.Sneaks).Any(l => l.Load == g.Key)) > g.Count() ? $"{g.Key} ({string.Join(", ", g.Select(l => l.State))})" : g.Key)];
            return names.Length == 0 ? "" : $"{words} {string.Join(", ", names)}";
        }

        return string.Join("; ", new[] { Loads("dead", s => s.Dead), Loads("dim", s => s.Dim), Loads("fed another way", s => s.Sneaks) }.Where(t => t.Length > 0));
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
