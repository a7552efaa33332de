using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Reads what is said about the harness as a whole: title block, groups to keep apart and to size alike, waivers.</summary>
internal static class RemarkReader
{
    public static DrawingData Drawing(Draft draft, Func<InputText?, BroughtFile?> bring)
    {
        var title = draft.Root.Map("sheet-title") ?? new InputMap([], draft.Root.At);
        return new DrawingData
        {
            Number = title.Text("number"),
            Owner = title.Text("owner"),
            Drawn = title.Text("drawn"),
            Approved = title.Text("approved"),
            IssuedOn = title.Text("issued"),
            Language = title.Text("language") ?? "en",
            Logo = bring(title.TextNode("logo")),
            Font = bring(title.TextNode("font")),
            Revisions = [.. title.List("revisions").OfType<InputMap>().Select(Revision)],
        };
    }

    public static ImmutableArray<KeepApart> Apart(Draft draft) =>
    [
        .. draft.Root.List("keep-apart").OfType<InputList>()
            .Select(g => new KeepApart([.. g.Items.OfType<InputText>().Where(draft.IsCircuit).Select(c => c.Value)], g.At))
            .Where(k => k.Circuits.Length > 1),
    ];

    public static ImmutableArray<SizedAlike> Alike(Draft draft) =>
    [
        .. draft.Root.List("sized-alike").OfType<InputList>().Select(g => Alike(draft, [.. g.Items.OfType<InputText>()], g.At)).Where(a => a.Names.Length > 1),
    ];

    // a lamp and its circuit often have one name: things go first, unless only circuits have all of them
    private static SizedAlike Alike(Draft draft, InputText[] names, SourceSpan? at)
    {
        string[] things = [.. draft.Things.Select(t => t.Id)];
        var areCircuits = !Array.Exists(names, n => things.Contains(n.Value)) || (Array.Exists(names, n => !things.Contains(n.Value)) && Array.TrueForAll(names, n => draft.CircuitNames.Contains(n.Value)));
        return new([.. names.Where(n => areCircuits ? draft.IsCircuit(n) : NameRules.Known(n, things, "thing", draft.Bag)).Select(n => n.Value).Distinct(StringComparer.Ordinal)], areCircuits, at);
    }

    public static ImmutableArray<Waiver> Waivers(Draft draft) =>
    [
        .. draft.Root.List("waivers").OfType<InputMap>()
            .Select(w => new Waiver(w.Text("rule") ?? "", [.. w.TextNodes("for").Where(f => IsNamed(draft, f)).Select(f => f.Value)], w.Text("because") ?? "", w.Text("by") ?? "", w.Text("on") ?? "", w.At)),
    ];

    // ids that the plan will give (E07, S12, SP3) are not known yet: the check says when they match nothing
    private static bool IsNamed(Draft draft, InputText name)
    {
        string[] known =
        [
            .. draft.Things.Select(t => t.Id), .. draft.CircuitNames, .. draft.PlaceNames, .. draft.Options.Options.Select(o => o.Id),
            .. draft.Root.Map("states")?.Entries.Select(e => e.Key.Value) ?? [], .. draft.Root.Map("circuits")?.Entries.Select(e => e.Value).OfType<InputMap>().SelectMany(HandIds) ?? [],
        ];
        var pinOf = name.Value.LastIndexOf('.') is > 0 and var dot ? name.Value[..dot] : name.Value;
        return known.Contains(pinOf) || IsPlannedId(name.Value) || NameRules.Known(name, known, "thing, circuit or place", draft.Bag);
    }

    private static IEnumerable<string> HandIds(InputMap circuit) => circuit.List("by-hand").OfType<InputMap>().Select(w => w.Text("wire")).Append(circuit.Text("wire")).OfType<string>();

    private static bool IsPlannedId(string text)
    {
        var letters = text.TakeWhile(char.IsAsciiLetterUpper).Count();
        return letters is > 0 and <= 3 && text.Length > letters && text[letters..].All(char.IsAsciiDigit);
    }

    private static Revision Revision(InputMap map) => new(map.Text("rev") ?? "", map.Text("on") ?? "", map.Text("what") ?? "", map.Text("where"), map.Text("who"));
}
