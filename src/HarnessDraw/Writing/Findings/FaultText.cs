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
        foreach (var f in study.Shorts.Where(f => f.Outcome != ShortOutcome.FuseOpens && f.CurrentA >= LeastToldA).OrderByDescending(f => f.Outcome == ShortOutcome.Burns).ThenByDescending(f => f.HottestC).ThenBy(f => f.Wire, StringComparer.Ordinal))
        {
            text.Append("  ").Append(Short(f)).Append('\n');
        }

        text.Append(Text($"  in {study.Shorts.Count(f => f.Outcome == ShortOutcome.FuseOpens)} of {study.Shorts.Length} wires the fuse opens first\n"));
        text.Append("one fuse or ground point opened at a time\n");
        foreach (var what in study.Opens.GroupBy(o => o.What, StringComparer.Ordinal))
        {
            text.Append("  ").Append(what.Key).Append(" open: ").Append(Open([.. what])).Append('\n');
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
            string[] names = [.. states.SelectMany(of).Select(l => l.Load).Distinct(StringComparer.Ordinal)];
            return names.Length == 0 ? "" : $"{words} {string.Join(", ", names)}";
        }

        return string.Join("; ", new[] { Loads("dead", s => s.Dead), Loads("dim", s => s.Dim), Loads("fed another way", s => s.Sneaks) }.Where(t => t.Length > 0));
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
