using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Planning.Sizing;

/// <summary>Finds the terminals and seals that fit a pin, and those among them that take a wire.</summary>
internal sealed class TerminalChooser(HarnessIndex index)
{
    private readonly Dictionary<(PinRef Pin, string? Cavity), ImmutableArray<TerminalPart>> known = [];
    // the smallest first
    private readonly ImmutableArray<SealPart> seals = [.. index.Harness.Catalogue.Seals.OrderBy(s => s.MaxInsulationMm).ThenBy(s => s.Id, StringComparer.Ordinal)];
    private readonly ImmutableHashSet<string> plugFamilies = [.. index.Harness.Catalogue.Connectors.SelectMany(c => c.TerminalFamilies)];

    /// <summary>Terminals for a pin, smallest crimp range first; for a mate, of the cavity or (null) of any of its cavities.</summary>
    public ImmutableArray<TerminalPart> For(PinRef pin, string? cavity)
    {
        if (!known.TryGetValue((pin, cavity), out var found))
        {
            found = [.. Search(pin, cavity).OrderBy(t => t.MaxAreaMm2).ThenBy(t => t.Id, StringComparer.Ordinal)];
            known.Add((pin, cavity), found);
        }

        return found;
    }

    public bool IsStud(PinRef? pin) => pin is not null && index.IsStud(pin);

    public ConnectorPart? ConnectorAt(PinRef pin) => index.Connector(index.Thing(pin.Thing)?.ConnectorPart);

    public static TerminalPart? Fitting(ImmutableArray<TerminalPart> terminals, WireSize size)
    {
        // asked for every size of every wire: no closure
        foreach (var terminal in terminals)
        {
            if (Takes(terminal, size))
            {
                return terminal;
            }
        }

        return null;
    }

    public SealPart? SealFor(PinRef pin, string contactSize, WireSize size)
    {
        if (ConnectorAt(pin) is not { Sealed: true })
        {
            return null;
        }

        foreach (var seal in seals)
        {
            if (seal.Size == contactSize && size.OutsideMm >= seal.MinInsulationMm - 1e-9 && size.OutsideMm <= seal.MaxInsulationMm + 1e-9)
            {
                return seal;
            }
        }

        return null;
    }

    /// <summary>Contact size of a pin: of its cavity in the connector body, else as the thing says.</summary>
    public string? SizeOf(PinRef pin, string? cavity)
    {
        var name = cavity ?? index.PinOf(pin)?.Cavity ?? pin.Pin;
        return ConnectorAt(pin)?.Cavities.FirstOrDefault(c => c.Name == name)?.Size ?? (index.PinOf(pin) ?? index.PinOf(pin with { Pin = name }))?.Size;
    }

    private static bool Takes(TerminalPart t, WireSize size) =>
        size.AreaMm2 >= t.MinAreaMm2 - 1e-9 && size.AreaMm2 <= t.MaxAreaMm2 + 1e-9
        && size.OutsideMm >= t.MinInsulationMm - 1e-9 && size.OutsideMm <= t.MaxInsulationMm + 1e-9;

    private IEnumerable<TerminalPart> Search(PinRef pin, string? cavity)
    {
        var all = index.Harness.Catalogue.Terminals;
        var connector = ConnectorAt(pin);
        if (connector is not null && !index.IsStud(pin))
        {
            string?[] sizes = index.IsMate(pin) && pin.Pin is null && cavity is null ? [.. connector.Cavities.Select(c => c.Size).Distinct()] : [SizeOf(pin, cavity)];
            var inBody = all.Where(t => !t.Ring && sizes.Contains(t.Size) && connector.TerminalFamilies.Contains(t.Family)).ToArray();
            return connector.Sealed && inBody.Any(t => t.Sealed) ? inBody.Where(t => t.Sealed) : inBody;
        }

        var size = SizeOf(pin, cavity);
        switch (index.PinOf(pin)?.Style)
        {
            case PinStyle.Stud:
                return all.Where(t => t.Ring && t.Size == size);
            case PinStyle.Lead or null:
                return [];
            default:
                // a bare blade takes push-on terminals that belong to no plug, or any of the size
                var open = all.Where(t => !t.Ring && t.Size == size).ToArray();
                var loose = open.Where(t => !plugFamilies.Contains(t.Family)).ToArray();
                return loose.Length > 0 ? loose : open.Where(t => !t.Sealed);
        }
    }
}
