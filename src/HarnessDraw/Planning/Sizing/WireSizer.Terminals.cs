using HarnessDraw.Model;

namespace HarnessDraw.Planning.Sizing;

/// <summary>Which sizes the terminals at a wire's ends take.</summary>
internal sealed partial class WireSizer
{
    /// <summary>The least size from <paramref name="from"/> on that both ends, and those of all that are sized alike, can be terminated with, or -1.</summary>
    public int NextWithTerminal(WireRow wire, int from)
    {
        for (var s = from; s < wire.Sizes.Length; s++)
        {
            if (HasTerminal(wire, s))
            {
                return s;
            }
        }

        return -1;
    }

    /// <summary>True where both ends, and those of all that are sized alike, take it.</summary>
    public bool HasTerminal(WireRow wire, int size)
    {
        foreach (var other in wire.Alike)
        {
            if (!HasOwnTerminal(other, size))
            {
                return false;
            }
        }

        return HasOwnTerminal(wire, size);
    }

    /// <summary>True where both ends of that wire alone take it.</summary>
    public bool HasOwnTerminal(WireRow wire, int size) => (wire.Terminated ??= Terminated(wire))[size];

    private int NextWithOwnTerminal(WireRow wire, int from)
    {
        for (var s = from; s < wire.Sizes.Length; s++)
        {
            if (HasOwnTerminal(wire, s))
            {
                return s;
            }
        }

        return -1;
    }

    private bool[] Terminated(WireRow wire)
    {
        bool[] fits = [.. Enumerable.Repeat(true, wire.Sizes.Length)];
        Narrow(wire.Draft.From.Pin, wire.FromCavity);
        Narrow(wire.Draft.To.Pin, wire.ToCavity);
        return fits;

        void Narrow(PinRef? pin, string? cavity)
        {
            var candidates = pin is null ? [] : terminals.For(pin, cavity);
            for (var s = 0; s < fits.Length && !candidates.IsEmpty; s++)
            {
                fits[s] = fits[s] && TerminalChooser.Fitting(candidates, wire.Sizes[s]) is not null;
            }
        }
    }

    private bool HasStud(WireRow wire) => terminals.IsStud(wire.Draft.From.Pin) && terminals.IsStud(wire.Draft.To.Pin);
}
