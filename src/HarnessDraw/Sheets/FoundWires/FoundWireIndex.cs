using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Fabrication;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.FoundWires;

/// <summary>The found-wire index: all wires by colour, tracer and size, with where they lie, both ends, what they do and whether they are always live.</summary>
public static class FoundWireIndex
{
    private static readonly ImmutableSortedDictionary<string, string> Aged = ImmutableSortedDictionary<string, string>.Empty
        .Add("WH", "white yellows with heat").Add("YE", "faded yellow may pass for white").Add("PK", "faded pink may pass for white")
        .Add("VT", "faded violet may pass for grey or blue").Add("RD", "faded red may pass for pink or orange").Add("OG", "faded orange may pass for yellow")
        .Add("GN", "old green may pass for blue").Add("BN", "dirty brown may pass for black").Add("TN", "tan may be faded yellow").Add("GY", "grey may be faded violet or dirty white");

    /// <summary>As many A4 (or Letter) pages as the wires need; none where the build holds no wire.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options) => WirePages.Compose(plan, findings, options,
        _ => new(SheetKinds.FoundWires, "FOUND-WIRE INDEX", "index")
        {
            Aside = "which wire is this? by colour, tracer, size",
            Caution = "Battery disconnected before you cut or pull. A cut wire may still be live: every wire marked LIVE is, with the key off.",
            Paper = PaperSizes.A4,
        },
        (flow, shown) =>
        {
            var keys = new OptionKeys(shown.Wires.Select(w => w.Builds));
            flow.Table(Table(flow.Area, shown, keys, options.Units));
            flow.Heading("OLD AND DIRTY INSULATION", 8);
            flow.Paragraph($"Wipe the wire and look where tape kept the light away. {string.Join("; ", Aged.Values)} (common practice, no source). Compare size and both ends before you believe a colour.");
            if (!keys.IsEmpty)
            {
                flow.Paragraph($"Option {string.Join("; ", keys.Explained)}.");
            }
        });

    private static TextTable<Wire> Table(Box area, Plan plan, OptionKeys keys, UnitsShown units)
    {
        var measure = new TreeMeasure(plan);
        var circuits = plan.Harness.Circuits.GroupBy(c => c.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var segments = plan.Tree.Segments.GroupBy(s => s.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var order = ColourCodes.All.Select(c => c.Code).ToImmutableArray();
        ImmutableArray<Wire> rows =
        [
            .. plan.Wires.OrderBy(w => Rank(order, WireColour.Parse(w.Colour).Base.Code))
                .ThenBy(w => WireColour.Parse(w.Colour).Base.Code, StringComparer.Ordinal)
                .ThenBy(w => WireColour.Parse(w.Colour).Tracer is { } t ? 1 + Rank(order, t.Code) : 0)
                .ThenBy(w => w.Colour, StringComparer.Ordinal)
                .ThenBy(w => w.AreaMm2)
                .ThenBy(w => w.Id, StringComparer.Ordinal),
        ];
        bool Live(Wire w) => circuits.TryGetValue(w.Circuit, out var circuit) && !circuit.IsReturn && circuit.LiveWith == KeyPosition.Off;
        string Lies(Wire w) => w.Segments.Any(segments.ContainsKey)
            ? string.Join(", ", w.Segments.Where(segments.ContainsKey).Select(s => measure.Branch(segments[s].To)).Distinct(StringComparer.Ordinal))
            : plan.Harness.Things.FirstOrDefault(t => t.Id == w.From.At) is { } thing ? measure.Branch(thing.Place) : Shown.Unknown;
        return new TextTable<Wire>(
            rows, area,
            new TextColumn<Wire>("colour", w => w.Colour) { Swatch = w => w.Colour, Style = TextStyle.Bold },
            new TextColumn<Wire>(plan.Wires.Any(w => w.Awg is not null) ? "size" : "mm²", w => w.SizeLabel) { Right = true },
            new TextColumn<Wire>(units switch { UnitsShown.Inch => "Ø in", UnitsShown.Both => "Ø", _ => "Ø mm" }, w => units switch { UnitsShown.Inch => InchLength.Words(w.OutsideMm, 2), UnitsShown.Both => LengthWords.Small(w.OutsideMm, units), _ => Shown.Fixed(w.OutsideMm, 1) }) { Right = true },
            new TextColumn<Wire>("wire", w => w.Id + (keys.KeyOf(w.Builds) is { Length: > 0 } key ? $" ({key})" : "")) { Style = TextStyle.Bold, Tag = w => new() { For = w.Id } },
            new TextColumn<Wire>("from end to end", w => $"{EndText.Words(w.From)} to {EndText.Words(w.To)}") { LeastMm = 52 },
            new TextColumn<Wire>("what it does and where it lies", w => $"{w.Circuit}; {Lies(w)}") { LeastMm = 52 },
            new TextColumn<Wire>("key off", w => Live(w) ? "LIVE" : "") { Style = TextStyle.Bold })
        { GroupOf = w => WireColour.Parse(w.Colour).Base.Word };
    }

    private static int Rank(ImmutableArray<string> order, string code) => order.IndexOf(code) is >= 0 and var at ? at : order.Length;
}
