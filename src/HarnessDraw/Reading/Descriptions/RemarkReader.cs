using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Reads what is said about the harness as a whole: title block, groups to keep apart, waivers.</summary>
internal static class RemarkReader
{
    public static DrawingData Drawing(Draft draft)
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
            LogoFile = title.Text("logo"),
            FontFile = title.Text("font"),
            Revisions = [.. title.List("revisions").OfType<InputMap>().Select(Revision)],
        };
    }

    public static ImmutableArray<KeepApart> Apart(Draft draft) =>
    [
        .. draft.Root.List("keep-apart").OfType<InputList>()
            .Select(g => new KeepApart([.. g.Items.OfType<InputText>().Where(draft.IsCircuit).Select(c => c.Value)], g.At))
            .Where(k => k.Circuits.Length > 1),
    ];

    public static ImmutableArray<Waiver> Waivers(Draft draft) =>
    [
        .. draft.Root.List("waivers").OfType<InputMap>()
            .Select(w => new Waiver(w.Text("rule") ?? "", [.. w.Texts("for")], w.Text("because") ?? "", w.Text("by") ?? "", w.Text("on") ?? "", w.At)),
    ];

    private static Revision Revision(InputMap map) => new(map.Text("rev") ?? "", map.Text("on") ?? "", map.Text("what") ?? "", map.Text("where"), map.Text("who"));
}
