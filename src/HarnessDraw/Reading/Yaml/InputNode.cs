using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Reading;

/// <summary>A value of an input file with its place in it. Nothing is interpreted: every scalar is the text that was typed.</summary>
public abstract class InputNode(SourceSpan at)
{
    public SourceSpan At { get; } = at;

    /// <summary>What stands there, for a message: 'a list'.</summary>
    public abstract string InWords { get; }
}

/// <summary>A single value. <see cref="Number"/> and <see cref="Unit"/> are filled in when its shape is a number or a quantity and it was right.</summary>
public sealed class InputText(string value, SourceSpan at, bool quoted) : InputNode(at)
{
    public string Value { get; } = value;

    public bool Quoted { get; } = quoted;

    /// <summary>The value in the unit its kind is held in (mm, A, ohm ...); null for other texts, wrong ones and 'unknown'.</summary>
    public double? Number { get; internal set; }

    /// <summary>The second number of a range ('2 to 60 mm') or a size ('62 x 98 mm'), in the held unit.</summary>
    public double? Second { get; internal set; }

    /// <summary>The unit as typed ('in', 'AWG'), for quantities.</summary>
    public string? Unit { get; internal set; }

    /// <summary>The number as typed, without its unit ('2/0').</summary>
    public string? NumberText { get; internal set; }

    public bool IsEmpty => Value.Length == 0 && !Quoted;

    public override string InWords => IsEmpty ? "nothing" : $"'{Value}'";
}

/// <summary>A list.</summary>
public sealed class InputList(ImmutableArray<InputNode> items, SourceSpan at) : InputNode(at)
{
    public ImmutableArray<InputNode> Items { get; } = items;

    public override string InWords => "a list";
}

/// <summary>A key with its value.</summary>
public sealed record InputEntry(InputText Key, InputNode Value);

/// <summary>
/// A block of keys in the order typed. The getters say nothing about mistakes: check the block against its <see cref="Shape"/> first
/// (<see cref="ShapeChecker"/>); what was wrong is then simply absent.
/// </summary>
public sealed class InputMap(ImmutableArray<InputEntry> entries, SourceSpan at) : InputNode(at)
{
    public ImmutableArray<InputEntry> Entries { get; } = entries;

    /// <summary>Keys that mistyped ones most likely mean, filled as the shape is checked: they are not lacking.</summary>
    public HashSet<string> Meant { get; } = [];

    public override string InWords => "a block of keys";

    public InputEntry? EntryOf(string key)
    {
        foreach (var entry in Entries)
        {
            if (entry.Key.Value == key)
            {
                return entry;
            }
        }

        return null;
    }

    public bool Has(string key) => EntryOf(key) is not null;

    public InputNode? Find(string key) => EntryOf(key)?.Value;

    public InputText? TextNode(string key) => Find(key) is InputText { IsEmpty: false } text ? text : null;

    public string? Text(string key) => TextNode(key)?.Value;

    /// <summary>A number or quantity in its held unit; null when absent, 'unknown' or wrong.</summary>
    public double? Number(string key) => (Find(key) as InputText)?.Number;

    /// <summary>The second number of a range or a size.</summary>
    public double? Second(string key) => (Find(key) as InputText)?.Second;

    /// <summary>True for 'yes' and its like, false for 'no', null when absent.</summary>
    public bool? YesNo(string key) => Text(key) is { } text ? YesNoWords.Read(text) : null;

    public InputMap? Map(string key) => Find(key) as InputMap;

    /// <summary>The entries of a list; a single value counts as a list of one, nothing as an empty list.</summary>
    public ImmutableArray<InputNode> List(string key) => Find(key) switch
    {
        InputList list => list.Items,
        null or InputText { IsEmpty: true } => [],
        var single => [single],
    };

    public ImmutableArray<InputText> TextNodes(string key) => [.. List(key).OfType<InputText>()];

    public ImmutableArray<string> Texts(string key) => [.. TextNodes(key).Select(t => t.Value)];
}
