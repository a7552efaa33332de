using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Model;

/// <summary>A wire's length as it was cut, mm.</summary>
public sealed record MeasuredWire(string Wire, double CutMm, SourceSpan? At);

/// <summary>A way between two places of the layout as it was measured on the vehicle or the built harness, mm.</summary>
public sealed record MeasuredRun(string From, string To, double LengthMm, SourceSpan? At);

/// <summary>Volts read at a pin ('headlamp left.56b') in a state, against the grounded pole.</summary>
public sealed record VoltsRead(string Pin, string State, double Volts, SourceSpan? At);

/// <summary>Resistance read from one end of a wire to the other, milliohms.</summary>
public sealed record ResistanceRead(string Wire, double Milliohm, SourceSpan? At);

/// <summary>What was measured as built, from the file beside a description. Lengths go before what was planned or estimated; readings are what later ones are held against.</summary>
public sealed record AsBuilt(ImmutableArray<MeasuredWire> Wires, ImmutableArray<MeasuredRun> Runs, ImmutableArray<VoltsRead> Volts, ImmutableArray<ResistanceRead> Resistances)
{
    public static readonly AsBuilt Nothing = new([], [], [], []);

    /// <summary>Heads of the columns in the file, in the order in which they are written.</summary>
    public static readonly ImmutableArray<string> Columns = ["wire", "from", "to", "length_mm", "pin", "state", "volts", "milliohm"];

    /// <summary>These measurements with newer ones in the place of older ones of the same thing; the order stays.</summary>
    public AsBuilt With(AsBuilt newer)
    {
        ArgumentNullException.ThrowIfNull(newer);
        return new(
            Put(Wires, newer.Wires, (a, b) => a.Wire == b.Wire),
            Put(Runs, newer.Runs, (a, b) => (a.From, a.To) == (b.From, b.To) || (a.To, a.From) == (b.From, b.To)),
            Put(Volts, newer.Volts, (a, b) => (a.Pin, a.State) == (b.Pin, b.State)),
            Put(Resistances, newer.Resistances, (a, b) => a.Wire == b.Wire));
    }

    private static ImmutableArray<T> Put<T>(ImmutableArray<T> old, ImmutableArray<T> newer, Func<T, T, bool> same)
    {
        var rows = old.ToBuilder();
        foreach (var row in newer)
        {
            var at = 0;
            while (at < rows.Count && !same(rows[at], row))
            {
                at++;
            }

            if (at == rows.Count)
            {
                rows.Add(row);
            }
            else
            {
                rows[at] = row;
            }
        }

        return rows.ToImmutable();
    }
}
