using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Units;

namespace HarnessDraw.Reading;

/// <summary>Wire families: sizes of a family that is there already are added to it and replace those of the same name.</summary>
internal sealed class CatalogueWires(DiagnosticBag bag)
{
    public ImmutableArray<WireType> Merge(ImmutableArray<WireType> under, InputMap? rows)
    {
        var merged = under;
        foreach (var entry in rows?.Entries ?? [])
        {
            if (entry.Value is not InputMap row || Family(entry.Key, row, merged.FirstOrDefault(w => w.Id == entry.Key.Value)) is not { } family)
            {
                continue;
            }

            // one family is the usual one, and the latest word counts
            merged = family.IsUsual ? [.. merged.Select(w => w with { IsUsual = false })] : merged;
            merged = CatalogueReader.Over(merged, [family], w => w.Id);
        }

        return merged;
    }

    private WireType? Family(InputText id, InputMap row, WireType? old)
    {
        var title = row.Text("title") ?? old?.Title;
        var maxC = row.Number("max") ?? old?.MaxC;
        var source = SourceOf(row) ?? old?.Source;
        foreach (var (key, missing) in new[] { ("title", title is null), ("max", maxC is null), ("sources", source is null) })
        {
            if (missing && !row.Has(key))
            {
                bag.Error(DiagnosticCodes.MissingKey, $"wire family {id.Value} lacks '{key}'", id.At, "only a family that is in the catalogue already may leave it out");
            }
        }

        if (title is null || maxC is null || source is null)
        {
            return null;
        }

        // figures of a size that a user gives without a source are his own, not those of the family they are put into
        var usualSource = SourceOf(row) ?? "given in the parts file, no source named";
        var sizes = CatalogueReader.Over(old?.Sizes ?? [], Sizes(row, usualSource, maxC.Value), s => s.Label);
        return new(id.Value, title, maxC.Value, row.YesNo("cross-linked") ?? old?.CrossLinked ?? false, [.. sizes.OrderBy(s => s.AreaMm2).ThenBy(s => s.Label, StringComparer.Ordinal)], source)
        {
            IsUsual = row.YesNo("usual") ?? old?.IsUsual ?? false,
            Colours = row.Has("colours") ? row.Texts("colours") : old?.Colours ?? [],
        };
    }

    private IEnumerable<WireSize> Sizes(InputMap row, string usualSource, double classC)
    {
        foreach (var entry in row.Map("sizes")?.Entries ?? [])
        {
            if (!Quantity.TryParse(entry.Key.Value, QuantityKind.WireSize, out var size, out var problem))
            {
                bag.Error(DiagnosticCodes.Quantity, $"'{entry.Key.Value}' is not a wire size ({problem})", entry.Key.At, "write it like '0.75 mm2' or '16 AWG'");
                continue;
            }

            if (entry.Value is not InputMap figures || figures.Number("resistance") is not { } milliohm || figures.Number("outside") is not { } outsideMm)
            {
                continue;
            }

            var areaMm2 = figures.Number("area") ?? (size.IsAwg ? null : size.Value);
            if (areaMm2 is null or <= 0 || milliohm <= 0 || outsideMm <= 0)
            {
                bag.Error(DiagnosticCodes.Quantity, $"wire size {entry.Key.Value} needs its area, resistance and outside diameter, all above zero", entry.Key.At, size.IsAwg ? "AWG is never converted: give 'area: 1.22 mm2'" : null);
                continue;
            }

            yield return new(Label(size), areaMm2.Value, size.IsAwg ? size.NumberText : null, milliohm, outsideMm, figures.Number("amps"), figures.Number("mass"), figures.Text("source") ?? usualSource)
            {
                Basis = BasisOf(figures, row, classC),
            };
        }
    }

    /// <summary>What the currents hold for, by the size or else by its family; null where neither says it.</summary>
    private AmpacityBasis? BasisOf(InputMap figures, InputMap row, double classC)
    {
        var (ambientC, conductorC) = (figures.Number("amps-ambient") ?? row.Number("amps-ambient"), figures.Number("amps-conductor") ?? row.Number("amps-conductor"));
        if (ambientC is null && conductorC is null)
        {
            return null;
        }

        var basis = new AmpacityBasis(ambientC ?? AmpacityBasis.AssumedAmbientC, conductorC ?? classC, classC);
        if (basis.ConductorC > basis.AmbientC && classC > AmpacityBasis.AssumedAmbientC)
        {
            return basis;
        }

        bag.Error(DiagnosticCodes.Quantity, string.Create(CultureInfo.InvariantCulture, $"a current is stated for a conductor of {basis.ConductorC:0.#} degC in an ambient of {basis.AmbientC:0.#} degC"),
            figures.At, "a conductor that carries current is warmer than what is around it: 'amps-conductor' must lie above 'amps-ambient'");
        return null;
    }

    /// <summary>'0.75', '1.0', '10' and '16 AWG': as the sheets print it.</summary>
    private static string Label(Quantity size) =>
        size.IsAwg ? $"{size.NumberText} AWG" : size.Value.ToString(size.Value < 10 ? "0.0#" : "0.##", CultureInfo.InvariantCulture);

    private static string? SourceOf(InputMap row) =>
        row.Map("sources") is { } each ? string.Join("; ", each.Entries.Select(e => $"{e.Key.Value}: {(e.Value as InputText)?.Value}")) : row.Text("sources");
}
