using System.Collections.Immutable;
using HarnessDraw.Units;

namespace HarnessDraw.Reading;

/// <summary>
/// What may stand at a place of an input file: the one source of the reader's checks and of the JSON Schema. <see cref="ShapeChecker"/>
/// reports what does not fit.
/// </summary>
public abstract record Shape
{
    /// <summary>Any text, taken as typed.</summary>
    public static readonly TextShape Text = new("a text");

    /// <summary>'thing.pin', or a thing alone.</summary>
    public static readonly TextShape Pin = new("a pin such as 'headlamp left.56b'");

    public static readonly TextShape Name = new("a name");
    public static readonly TextShape Colour = new("a colour such as 'BN/WH'");

    /// <summary>A build condition: options, each with the choice or choices that it holds for.</summary>
    public static readonly NamedShape OnlyWith = new("an option", new EitherShape([new TextShape("a choice of the option"), new ListShape(new TextShape("a choice of the option"), 1, int.MaxValue)]), []);

    public static readonly YesNoShape YesNo = new();
    public static readonly NumberShape Number = new();

    public static QuantityShape Of(QuantityKind kind, bool orUnknown = true) => new(kind, orUnknown);

    /// <summary>'2 to 60 mm'.</summary>
    public static PairShape RangeOf(QuantityKind kind) => new(kind, PairShape.Range);

    /// <summary>'62 x 98 mm'; with <paramref name="orRound"/> also 'round 40 mm'.</summary>
    public static PairShape SizeOf(QuantityKind kind, bool orRound = false) => new(kind, PairShape.Size) { OrRound = orRound };

    public static ChoiceShape OneOf(params ImmutableArray<string> words) => new(words);

    public static ListShape ListOf(Shape item, int least = 0, int most = int.MaxValue) => new(item, least, most);

    /// <summary>A list, or one single entry written without brackets.</summary>
    public static EitherShape OneOrMore(Shape item) => new([item, ListOf(item)]);

    public static EitherShape Either(params ImmutableArray<Shape> shapes) => new(shapes);

    /// <summary>A block whose keys are names that the user gives.</summary>
    public static NamedShape Named(string keyIs, Shape value, params ImmutableArray<Key> reserved) => new(keyIs, value, reserved);
}

/// <summary>A text; <paramref name="Expected"/> says with its article what it is.</summary>
public sealed record TextShape(string Expected) : Shape;

/// <summary>Yes or no.</summary>
public sealed record YesNoShape : Shape;

/// <summary>A bare number without a unit: coordinates (their axes are in mm), counts.</summary>
public sealed record NumberShape : Shape;

/// <summary>A quantity with its unit; 'unknown' may stand for a measurement that is yet to be taken.</summary>
public sealed record QuantityShape(QuantityKind Kind, bool OrUnknown) : Shape;

/// <summary>Two quantities in one text that share a unit: a range or a size. A round size has both alike.</summary>
public sealed record PairShape(QuantityKind Kind, string Joint) : Shape
{
    public const string Range = " to ";
    public const string Size = " x ";

    public bool OrRound { get; init; }
}

/// <summary>One of a few words.</summary>
public sealed record ChoiceShape(ImmutableArray<string> Words) : Shape;

/// <summary>A list of alike entries.</summary>
public sealed record ListShape(Shape Item, int Least, int Most) : Shape;

/// <summary>The first shape that fits how the value is written: a text, a list or a block (at most one of each).</summary>
public sealed record EitherShape(ImmutableArray<Shape> Shapes) : Shape;

/// <summary>
/// A block whose keys are the user's names; <paramref name="KeyIs"/> says what they name. A few reserved keys may have shapes of their own.
/// </summary>
public sealed record NamedShape(string KeyIs, Shape Value, ImmutableArray<Key> Reserved) : Shape
{
    public Key? ReservedKey(string name) => Reserved.FirstOrDefault(k => k.Name == name);
}

/// <summary>A key that may stand in a block: its shape and one or two sentences for the editor's hover.</summary>
public sealed record Key(string Name, Shape Shape, string Says, bool Required = false);

/// <summary>A block with known keys. <paramref name="Id"/> is its name in the JSON Schema.</summary>
public sealed record BlockShape(string Id, string Says, ImmutableArray<Key> Keys) : Shape
{
    private readonly Dictionary<string, Key> _byName = Keys.ToDictionary(k => k.Name, StringComparer.Ordinal);

    public Key? KeyOf(string name) => _byName.GetValueOrDefault(name);

    public bool Equals(BlockShape? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(Id);
}
