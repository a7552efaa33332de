using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;
using HarnessDraw.Sheets.TraceSheets;
using HarnessDraw.Tracing;

namespace HarnessDraw.Sheets.SetChecks;

/// <summary>
/// The last look before sheets are written. Each wire stands once in cut list, lay order of the board and bench test, with a label an end and its cavities on the connector
/// sheets; the board draws each run as long as its segment; a trace shows its one circuit; all sheets name the same source and revision, and a wire's length is the
/// same wherever it is printed. A sheet that fails is no use to anybody and is refused.
/// </summary>
public static partial class SetCheck
{
    private const double BoardToleranceMm = 0.5;

    /// <summary>The kinds among the sheets of one ink that fail, with the reason; empty when all hold.</summary>
    /// <param name="plan">The plan as it is shown, filtered to its build.</param>
    /// <param name="sheets">Sheets of one ink.</param>
    /// <param name="partly">Kinds of which a part was refused for want of room: what they leave out has been said.</param>
    /// <param name="about">Circuits that the traces are of; null: all.</param>
    public static ImmutableArray<(string Kind, string Because)> Check(Plan plan, IEnumerable<Sheet> sheets, ImmutableArray<string> partly = default, ImmutableArray<string>? about = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(sheets);
        var kinds = sheets.GroupBy(s => s.Name).ToDictionary(g => g.Key, g => g.ToImmutableArray(), StringComparer.Ordinal);
        var ways = new Lazy<ILookup<string, TraceWay>>(() => CircuitTraceSheets.Ways(plan, about).Select(w => w.Way).ToLookup(w => w.Circuit, StringComparer.Ordinal));
        ImmutableArray<Sheet> Of(string kind) => kinds.GetValueOrDefault(kind, []);
        return
        [
            .. WireCoverage.Check(plan, kinds.Values.SelectMany(k => k)),
            .. partly.IsDefaultOrEmpty || !partly.Contains(SheetKinds.Connectors) ? Cavities(plan, Of(SheetKinds.Connectors)) : [],
            .. Board(plan, Of(SheetKinds.BuildBoard)),
            .. Traces(SheetKinds.Trace, Of(SheetKinds.Trace), ways),
            .. Traces(SheetKinds.Projector, Of(SheetKinds.Projector), ways),
            .. kinds.Values.SelectMany(k => Titles(plan, k)),
            .. kinds.Values.SelectMany(k => Lengths(plan, k)),
        ];
    }

    // the table names a wire once for each of its cavities; letters in the faces stand in the middle of their rings
    private static IEnumerable<(string, string)> Cavities(Plan plan, ImmutableArray<Sheet> sheets)
    {
        if (sheets.IsEmpty)
        {
            yield break;
        }

        var named = ShownItems.Texts(sheets).FindAll(t => t.Anchor == TextAnchor.Start && t.Tag?.For is { } wire && IsName(t.Text, wire)).CountBy(t => t.Tag!.For!).ToDictionary(StringComparer.Ordinal);
        foreach (var uses in plan.Cavities.Where(c => c.Wire is not null).GroupBy(c => c.Wire!, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            if (named.GetValueOrDefault(uses.Key) != uses.Count())
            {
                yield return (SheetKinds.Connectors, $"it names {uses.Key} {Shown.Count(named.GetValueOrDefault(uses.Key), "time")}, but the wire has {Shown.Count(uses.Count(), "cavity", "cavities")}: {string.Join(", ", uses.Select(u => $"{u.Connector} {u.Cavity}"))}");
                yield break;
            }
        }
    }

    private static bool IsName(string text, string wire) => text == wire || (text.EndsWith('…') && wire.StartsWith(text[..^1], StringComparison.Ordinal));

    private static IEnumerable<(string, string)> Board(Plan plan, ImmutableArray<Sheet> sheets)
    {
        if (sheets.IsEmpty)
        {
            yield break;
        }

        var drawn = sheets.SelectMany(s => ShownItems.All(s.Items)).OfType<PathItem>().Where(p => p.Tag?.Segment is not null).ToLookup(p => p.Tag!.Segment!, p => CentreLine.Of(p.Outline).Sum(l => l.LengthMm), StringComparer.Ordinal);
        foreach (var segment in plan.Tree.Segments.Where(s => !s.Wires.IsEmpty))
        {
            if (!drawn.Contains(segment.Id))
            {
                yield return (SheetKinds.BuildBoard, $"it does not show the run {segment.From} to {segment.To}");
            }
            else if (segment.LengthMm is > 0 and var mm && drawn[segment.Id].Any(d => Math.Abs(d - mm) > BoardToleranceMm))
            {
                yield return (SheetKinds.BuildBoard, $"it draws the run {segment.From} to {segment.To} {Shown.Number(drawn[segment.Id].First(), 1)} mm long instead of {Shown.Number(mm, 1)} mm");
            }
        }
    }

    // what is drawn for a circuit, on all its pages: the wires of its own ways and no others
    private static IEnumerable<(string, string)> Traces(string kind, ImmutableArray<Sheet> sheets, Lazy<ILookup<string, TraceWay>> ways)
    {
        if (sheets.IsEmpty)
        {
            yield break;
        }

        var drawn = sheets.SelectMany(s => ShownItems.Circuits(s.Items)).ToLookup(g => g.Tag!.Circuit!, g => ShownItems.All(g.Items).Where(i => i.Role == ItemRole.Lane).Select(i => i.Tag?.Wire ?? ""), StringComparer.Ordinal);
        foreach (var circuit in ways.Value)
        {
            var own = circuit.SelectMany(w => w.Hops).Select(h => h.Wire).OfType<string>().ToHashSet(StringComparer.Ordinal);
            var shown = drawn[circuit.Key].SelectMany(w => w).ToHashSet(StringComparer.Ordinal);
            var wrong = shown.Except(own, StringComparer.Ordinal).Select(w => $"shows {w}, which is not on its way").Concat(own.Except(shown, StringComparer.Ordinal).Select(w => $"does not show {w}")).Order(StringComparer.Ordinal).FirstOrDefault();
            if (wrong is not null)
            {
                yield return (kind, $"the trace of {circuit.Key} {wrong}");
                yield break;
            }
        }
    }

    private static IEnumerable<(string, string)> Titles(Plan plan, ImmutableArray<Sheet> sheets)
    {
        var rev = plan.Harness.Drawing.Revisions.IsEmpty ? "" : plan.Harness.Drawing.Revisions[^1].Rev;
        foreach (var sheet in sheets)
        {
            var frame = sheet.Items.FirstOrDefault(i => i is GroupItem { Name: "frame" }) is GroupItem found ? ShownItems.Texts(found.Items).ConvertAll(t => t.Text) : [];
            if (!frame.Exists(t => t.Contains(plan.Harness.SourceHash, StringComparison.Ordinal)))
            {
                yield return (sheet.Name, $"'{sheet.Title}' does not name the source {plan.Harness.SourceHash}");
                yield break;
            }

            if (rev.Length is > 0 and < 6 && !frame.Contains(rev))
            {
                yield return (sheet.Name, $"'{sheet.Title}' does not name revision {rev}");
                yield break;
            }
        }
    }

    // a length beside a wire's id: '1770 mm' among other words, or the large figure of the cut list; inches come from the same exact value and are not compared
    private static IEnumerable<(string, string)> Lengths(Plan plan, ImmutableArray<Sheet> sheets)
    {
        var known = plan.Wires.GroupBy(w => w.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().CutLengthMm, StringComparer.Ordinal);
        var texts = ShownItems.Texts(sheets);
        var large = sheets[0].Name == SheetKinds.CutList && texts.Exists(t => t.Text == "cut mm");
        foreach (var text in texts.FindAll(t => t.Tag?.For is not null))
        {
            var match = Millimetres().Match(text.Text);
            var figure = match.Success ? match.Groups[1].Value : large && text.CapHeightMm > 3 && WholeFigure().IsMatch(text.Text) ? text.Text : null;
            if (figure is not null && known.TryGetValue(text.Tag!.For!, out var length) && length is { } mm && Shown.Number(mm) != figure)
            {
                yield return (sheets[0].Name, $"it prints {figure} mm for {text.Tag.For}, whose cut length is {mm.ToString("0", CultureInfo.InvariantCulture)} mm");
                yield break;
            }
        }
    }

    [GeneratedRegex(@"(?:^|, )(\d+) mm(?: \([^)]*\))?(?: E)?(?:,|$)", RegexOptions.CultureInvariant)]
    private static partial Regex Millimetres();

    [GeneratedRegex(@"^\d+$", RegexOptions.CultureInvariant)]
    private static partial Regex WholeFigure();
}
