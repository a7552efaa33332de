using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Sheets;

namespace HarnessDraw.Writing;

/// <summary>File formats of a sheet.</summary>
public enum SheetFormat
{
    Svg,
    Png,
    Pdf,

    /// <summary>One page for a browser: the chart that can be pressed, searched and stepped through.</summary>
    Html,
}

/// <summary>What a person asks of a drawing run. The defaults give every sheet in colour and every format.</summary>
public sealed record DrawOrder
{
    /// <summary>Kinds of sheets, see <see cref="SheetKinds.All"/>.</summary>
    public ImmutableArray<string> Sheets { get; init; } = SheetKinds.Usual;
    public ImmutableArray<SheetFormat> Formats { get; init; } = [SheetFormat.Svg, SheetFormat.Png, SheetFormat.Pdf];

    /// <summary>False for colour, true for black ink; each gives its own files.</summary>
    public ImmutableArray<bool> BlackInks { get; init; } = [false];

    /// <summary>Paper of the wall chart, or of the only sheet asked for; null takes the smallest that fits.</summary>
    public Paper? Paper { get; init; }

    /// <summary>True when several wall charts may be drawn where that paper is too small for one.</summary>
    public bool SeveralCharts { get; init; }

    /// <summary>See <see cref="SheetOptions.BandOver"/>.</summary>
    public int BandOver { get; init; }

    /// <summary>See <see cref="SheetOptions.TrueToScale"/>.</summary>
    public bool TrueToScale { get; init; }

    /// <summary>Paper that the wall chart and the build board are also cut onto, or null.</summary>
    public Paper? TileOnto { get; init; }

    /// <summary>The one build to show (option to choice), or null for everything the harness may hold.</summary>
    public ImmutableSortedDictionary<string, string>? Build { get; init; }

    /// <summary>Sheets that go circuit by circuit show these circuits alone; null: all.</summary>
    public ImmutableArray<string>? About { get; init; }

    /// <summary>True for a class: see <see cref="SheetOptions.Teaching"/>.</summary>
    public bool Teaching { get; init; }
    public UnitsShown Units { get; init; } = UnitsShown.Metric;

    /// <summary>What has changed since a built state: marked on the sheets and told on one of its own.</summary>
    public ChangeMarks? Changes { get; init; }
    public int Dpi { get; init; } = 200;
    public bool EmbedFonts { get; init; }
    public FaceSet Faces { get; init; } = FaceSet.Shipped;

    /// <summary>The rules the plan was checked by, as every title block names them.</summary>
    public string Rules { get; init; } = "built in";

    /// <summary>Drawn in every title block; null when there is none.</summary>
    public DrawnOutlines? Logo { get; init; }

    public SheetOptions OptionsFor(string kind, bool blackInk) => new()
    {
        Paper = kind == SheetKinds.WallChart || Sheets.Length == 1 ? Paper : null,
        TileOnto = TileOnto,
        SeveralCharts = SeveralCharts,
        BandOver = BandOver,
        TrueToScale = TrueToScale,
        BlackInk = blackInk,
        Build = Build,
        About = About,
        Units = Units,
        Rules = Rules,
        Logo = Logo,
        Teaching = Teaching,
        Changes = Changes,
    };
}
