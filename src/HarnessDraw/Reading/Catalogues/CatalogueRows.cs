using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Units;

namespace HarnessDraw.Reading;

/// <summary>Turns catalogue rows into parts. A row that lacks something (reported by its shape) gives null.</summary>
internal sealed class CatalogueRows(DiagnosticBag bag)
{
    private readonly CatalogueTexts _texts = new(bag);

    public ConnectorPart? Connector(string id, InputMap row)
    {
        var isBulkhead = row.YesNo("bulkhead") ?? false;
        var cavities = Cavities(id, row, isBulkhead);
        if (row.Text("title") is not { } title || row.Text("source") is not { } source || _texts.Box(row, "body") is not var (width, height) || cavities.IsEmpty)
        {
            return null;
        }

        return new(id, title, width, height, cavities, row.YesNo("sealed") ?? false, source)
        {
            TerminalFamilies = row.Texts("terminals"),
            TotalA = row.Number("total"),
            Key = row.Text("key") is { } key && key != "none" ? key : null,
            CentreBolt = row.Has("centre-bolt"),
            BoltTorqueNm = row.Map("centre-bolt")?.Number("torque"),
            IsBulkhead = isBulkhead,
            LargestPassMm = row.Number("passes"),
        };
    }

    public TerminalPart? Terminal(string id, InputMap row)
    {
        var stud = row.Text("stud");
        if ((stud is null) == !row.Has("size"))
        {
            bag.Error(DiagnosticCodes.MissingKey, $"terminal {id} needs either 'size' (a contact) or 'stud' (a ring)", row.At);
            return null;
        }

        var size = stud ?? SizeOf(row);
        return row.Text("title") is { } title && row.Text("source") is { } source && row.Text("family") is { } family && size is not null
            && _texts.Range(row, "crimp", QuantityKind.Area) is var (minArea, maxArea) && _texts.Range(row, "insulation", QuantityKind.Length) is var (minMm, maxMm)
            && row.Number("strip") is { } stripMm && row.Number("current") is { } currentA
            ? new(id, title, family, size, stud is not null, minArea, maxArea, minMm, maxMm, stripMm, currentA, source)
            {
                Sealed = row.YesNo("sealed") ?? false,
                BarrelMm = row.Number("barrel") ?? 8,
            }
            : null;
    }

    public SealPart? Seal(string id, InputMap row) =>
        row.Text("title") is { } title && row.Text("source") is { } source && SizeOf(row) is { } size && _texts.Range(row, "insulation", QuantityKind.Length) is var (min, max)
            ? new(id, title, size, min, max, source)
            : null;

    public PlugPart? Plug(string id, InputMap row) =>
        row.Text("title") is { } title && row.Text("source") is { } source && SizeOf(row) is { } size ? new(id, title, size, source) : null;

    public SplicePart? Splice(string id, InputMap row) =>
        row.Text("title") is { } title && row.Text("source") is { } source && _texts.Range(row, "total", QuantityKind.Area) is var (min, max) && row.Number("strip") is { } stripMm
            ? new(id, title, min, max, stripMm, row.YesNo("sealed") ?? false, source)
            : null;

    public FuseSeries? Fuse(string id, InputMap row)
    {
        var ratings = (row.Map("ratings")?.Entries ?? [])
            .Select(e => (RatingA: _texts.Quantity(e.Key, QuantityKind.Current), Row: e.Value as InputMap))
            .Where(r => r.RatingA is not null)
            .Select(r => new FuseRating(r.RatingA!.Value, r.Row?.Text("colour"), r.Row?.Number("resistance") * 1000))
            .OrderBy(r => r.RatingA).ToImmutableArray();
        ProtectionKind? kind = row.Text("kind") switch
        {
            "bolt-in" => ProtectionKind.BoltIn,
            "blade" => ProtectionKind.Blade,
            "fusible-link" => ProtectionKind.FusibleLink,
            "breaker" => ProtectionKind.Breaker,
            _ => null,
        };
        return row.Text("title") is { } title && row.Text("source") is { } source && kind is { } built
            ? new(id, title, built, ratings, source) { MaxV = row.Number("max-volts") }
            : null;
    }

    public CoveringPart? Covering(string id, InputMap row) =>
        row.Text("title") is { } title && row.Text("source") is { } source && row.Text("kind") is { } kind && _texts.Range(row, "bundle", QuantityKind.Length) is var (min, max)
            && row.Number("wall") is { } wallMm && row.Number("max") is { } maxC
            ? new(id, title, kind, min, max, wallMm, maxC, source)
            : null;

    public GrommetPart? Grommet(string id, InputMap row) =>
        row.Text("title") is { } title && row.Text("source") is { } source && row.Number("hole") is { } holeMm && row.Number("bore") is { } boreMm
            ? new(id, title, holeMm, boreMm, source)
            : null;

    private ImmutableArray<CavityPart> Cavities(string id, InputMap connector, bool isBulkhead)
    {
        var cavities = ImmutableArray.CreateBuilder<CavityPart>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in connector.List("cavities").OfType<InputMap>())
        {
            var (names, x, half) = (row.TextNodes("names"), row.TextNodes("x"), row.Text("half"));
            if (SizeOf(row) is not { } size || row.Number("y") is not { } y)
            {
                continue;
            }

            if (names.Length != x.Length)
            {
                bag.Error(DiagnosticCodes.ListLength, $"connector {id}: {names.Length} names, but {x.Length} places", row.At, "give one x for each name");
                continue;
            }

            if (isBulkhead && half is null)
            {
                bag.Error(DiagnosticCodes.MissingKey, $"connector {id}: this row of cavities lacks 'half'", row.At, "cavities of a bulkhead connector belong to half A or B");
            }

            for (var i = 0; i < names.Length; i++)
            {
                if (!seen.Add(names[i].Value))
                {
                    bag.Error(DiagnosticCodes.DuplicateName, $"connector {id} has two cavities '{names[i].Value}'", names[i].At);
                }

                cavities.Add(new(names[i].Value, x[i].Number ?? 0, y, size) { Half = half });
            }
        }

        return cavities.ToImmutable();
    }

    private static string? SizeOf(InputMap row) => row.Number("size")?.ToString("0.##", CultureInfo.InvariantCulture);
}
