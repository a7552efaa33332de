using System.Collections.Immutable;

namespace HarnessDraw.Units;

/// <summary>A unit as written, with the factor to the kind's own unit and an offset added after it.</summary>
public sealed record Unit(string Symbol, double Factor, double Offset = 0);

/// <summary>What is measured, and the units it may be written in. The first unit is the one values are held in.</summary>
public sealed class QuantityKind
{
    public static readonly QuantityKind Length = new("a length", [new("mm", 1), new("cm", 10), new("m", 1000), new("in", 25.4), new("ft", 304.8)]);
    public static readonly QuantityKind WireSize = new("a wire size", [new("mm2", 1), new("mm²", 1), new("AWG", 1)]) { MayBeZero = false };
    public static readonly QuantityKind Area = new("an area", [new("mm2", 1), new("mm²", 1)]);
    public static readonly QuantityKind Current = new("a current", [new("A", 1), new("mA", 0.001)]) { MayBeZero = false };
    public static readonly QuantityKind Voltage = new("a voltage", [new("V", 1), new("mV", 0.001)]) { MayBeZero = false };
    public static readonly QuantityKind Power = new("a power", [new("W", 1), new("kW", 1000)]) { MayBeZero = false };
    public static readonly QuantityKind Load = new("a current or a power", [new("A", 1), new("mA", 0.001), new("W", 1), new("kW", 1000)]) { MayBeZero = false };
    public static readonly QuantityKind Resistance = new("a resistance", [new("ohm", 1), new("mohm", 0.001), new("kohm", 1000), new("Ω", 1), new("mΩ", 0.001), new("kΩ", 1000)]);
    public static readonly QuantityKind ResistancePerLength = new("a resistance by length", [new("mohm/m", 1), new("ohm/km", 1), new("mΩ/m", 1), new("Ω/km", 1)]);
    public static readonly QuantityKind MassPerLength = new("a mass by length", [new("g/m", 1), new("kg/km", 1)]);
    public static readonly QuantityKind Temperature = new("a temperature", [new("degC", 1), new("°C", 1), new("degF", 5.0 / 9, -160.0 / 9), new("°F", 5.0 / 9, -160.0 / 9)]) { MayBeNegative = true };
    public static readonly QuantityKind Torque = new("a torque", [new("Nm", 1), new("lbf ft", 1.3558179483314004), new("lbf in", 0.1129848290276167)]);
    public static readonly QuantityKind Duration = new("a time", [new("min", 1), new("s", 1.0 / 60), new("h", 60)]);

    private QuantityKind(string title, ImmutableArray<Unit> units)
    {
        Title = title;
        Units = units;
    }

    /// <summary>With its article: 'a length'.</summary>
    public string Title { get; }

    public ImmutableArray<Unit> Units { get; }

    public bool MayBeNegative { get; private init; }

    /// <summary>False where nothing is a mistake: a source of 0 V, a load of 0 W.</summary>
    public bool MayBeZero { get; private init; } = true;

    /// <summary>The units for a message: 'mm, cm, m, in or ft' (second spellings of a unit are left out).</summary>
    public string UnitsInWords()
    {
        var plain = Units.Where(u => u.Symbol.All(char.IsAscii)).Select(u => u.Symbol).ToArray();
        return plain.Length == 1 ? plain[0] : string.Join(", ", plain[..^1]) + " or " + plain[^1];
    }
}
