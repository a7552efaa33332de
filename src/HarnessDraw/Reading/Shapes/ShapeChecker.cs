using HarnessDraw.Diagnostics;
using HarnessDraw.Units;

namespace HarnessDraw.Reading;

/// <summary>
/// Compares a value with its <see cref="Shape"/>: reports unknown, missing and mistyped keys, words and quantities, all in one run, and
/// fills in the numbers of the texts that are right. Values given as 'unknown' are collected.
/// </summary>
public sealed class ShapeChecker(DiagnosticBag bag)
{
    /// <summary>Every 'unknown' met, with the way to it in words ('main battery: nominal').</summary>
    public List<(string What, InputText Node)> Unknowns { get; } = [];

    /// <summary>Checks <paramref name="node"/>; <paramref name="what"/> names it in messages ('circuit dipped beam').</summary>
    public void Check(InputNode node, Shape shape, string what)
    {
        ArgumentNullException.ThrowIfNull(node);
        switch (shape)
        {
            case BlockShape block:
                CheckBlock(node, block, what);
                break;
            case NamedShape named:
                CheckNamed(node, named, what);
                break;
            case ListShape list:
                CheckList(node, list, what);
                break;
            case EitherShape either:
                Check(node, Fitting(node, either), what);
                break;
            default:
                CheckText(node, shape, what);
                break;
        }
    }

    // what the key that is being checked says
    private string? says;

    private void CheckBlock(InputNode node, BlockShape block, string what)
    {
        if (node is InputText { IsEmpty: true } && block.Keys.All(k => !k.Required))
        {
            return;
        }

        if (node is not InputMap map)
        {
            bag.Error(DiagnosticCodes.ShapeMismatch, $"{what} is {node.InWords}, but a block of keys is expected", node.At, KeysHint(block));
            return;
        }

        var skipped = ReportCommas(map, what);
        foreach (var entry in map.Entries.Where(e => !skipped.Contains(e)))
        {
            if (block.KeyOf(entry.Key.Value) is { } key)
            {
                says = key.Says;
                Check(entry.Value, key.Shape, Inside(what, key.Name));
            }
            else
            {
                ReportUnknown(map, entry, block, what);
            }
        }

        foreach (var key in block.Keys.Where(k => k.Required && !map.Has(k.Name) && !map.Meant.Contains(k.Name)))
        {
            bag.Error(DiagnosticCodes.MissingKey, $"{what} lacks '{key.Name}'", map.At, key.Says);
        }
    }

    // the key that was meant is not lacking as well; 'at:bay' is one word to YAML
    private void ReportUnknown(InputMap map, InputEntry entry, BlockShape block, string what)
    {
        string[] names = [.. block.Keys.Select(k => k.Name)];
        var typed = entry.Key.Value;
        var colon = typed.IndexOf(':', StringComparison.Ordinal);
        var glued = colon > 0 && entry.Value is InputText { IsEmpty: true } && names.Contains(typed[..colon]);
        var isBare = entry.Value is InputText { IsEmpty: true };
        // 'at grille' lacks its colon, and what follows a comma belongs to the text before it
        var spaced = isBare && !glued ? names.Where(n => typed.StartsWith(n + " ", StringComparison.Ordinal)).MaxBy(n => n.Length) : null;
        var meant = glued ? typed[..colon] : spaced ?? NearestName.Of(typed, names);
        var before = isBare && meant is null ? map.Entries.Take(Math.Max(0, map.Entries.IndexOf(entry))).LastOrDefault() : null;
        if (meant is not null)
        {
            map.Meant.Add(meant);
        }

        bag.Error(DiagnosticCodes.UnknownKey, $"{what} has no key '{typed}'", entry.Key.At,
            glued ? $"put a blank after the colon: '{meant}: {typed[(colon + 1)..]}'"
            : spaced is not null ? $"put a colon behind the key: '{spaced}: {typed[(spaced.Length + 1)..]}'"
            : NearestName.Hint(typed, names) ?? (before?.Value is InputText { IsEmpty: false } text && text.At.Line == entry.Key.At.Line ? CommaHint(before.Key.Value, text.Value, typed) : KeysHint(block)));
    }

    private static string CommaHint(string key, string text, string rest) =>
        text[0] is '“' or '”' or '„' or '‘' or '’' or '«' ? $"YAML does not know the quotation mark {text[0]}: write {key}: \"{(text + ", " + rest).Trim('“', '”', '„', '‘', '’', '«', '»')}\""
            : $"a comma begins a new key here; text with a comma in it needs quotes: {key}: \"{text}, {rest}\"";

    // in braces '{ draws: 2,5 A }' is the value '2' and a key '5 A' without a value: one mistake, not two
    private HashSet<InputEntry> ReportCommas(InputMap map, string what)
    {
        var skipped = new HashSet<InputEntry>();
        for (var i = 1; i < map.Entries.Length; i++)
        {
            var (whole, rest) = (map.Entries[i - 1], map.Entries[i]);
            if (whole.Value is InputText { Value: [.., >= '0' and <= '9'] digits } value && rest is { Key.Value: [>= '0' and <= '9', ..] decimals, Value: InputText { IsEmpty: true } } && value.At.Line == rest.Key.At.Line)
            {
                var end = rest.Key.At.Column + rest.Key.At.Length - value.At.Column;
                bag.Error(DiagnosticCodes.Quantity, $"{Inside(what, whole.Key.Value)} is '{digits},{decimals}' with a decimal comma", value.At with { Length = end }, $"decimals have a point: '{digits}.{decimals}'");
                skipped.Add(whole);
                skipped.Add(rest);
                bag.Doubt(decimals);
            }
        }

        return skipped;
    }

    private void CheckNamed(InputNode node, NamedShape named, string what)
    {
        if (node is InputText { IsEmpty: true })
        {
            return;
        }

        if (node is not InputMap map)
        {
            bag.Error(DiagnosticCodes.ShapeMismatch, $"{what} is {node.InWords}, but a block of names is expected", node.At, $"write one line for {named.KeyIs}: 'name: ...'");
            return;
        }

        var skipped = ReportCommas(map, what);
        foreach (var entry in map.Entries.Where(e => !skipped.Contains(e)))
        {
            if (entry.Key.Value.Length == 0)
            {
                bag.Error(DiagnosticCodes.KeyNotText, $"{named.KeyIs} has an empty name", entry.Key.At);
            }

            var shape = named.ReservedKey(entry.Key.Value)?.Shape ?? named.Value;
            if (shape is BlockShape && entry.Value is (InputList or InputText { IsEmpty: false }))
            {
                // what is not read has no pins and lacks everything
                bag.Doubt(entry.Key.Value);
            }

            Check(entry.Value, shape, named.Value is QuantityShape or EitherShape { Shapes: [QuantityShape, ..] } ? Inside(what, entry.Key.Value) : entry.Key.Value);
        }
    }

    private void CheckList(InputNode node, ListShape shape, string what)
    {
        if (node is InputText { IsEmpty: true } && shape.Least == 0)
        {
            return;
        }

        if (node is not InputList list)
        {
            bag.Error(DiagnosticCodes.ShapeMismatch, $"{what} is {node.InWords}, but a list is expected", node.At, "write it in brackets: [a, b]");
            return;
        }

        if (list.Items.Length < shape.Least || list.Items.Length > shape.Most)
        {
            var wanted = shape.Least == shape.Most ? $"{shape.Least}" : shape.Most == int.MaxValue ? $"at least {shape.Least}" : $"{shape.Least} to {shape.Most}";
            bag.Error(DiagnosticCodes.ListLength, $"{what} has {list.Items.Length} entries, but {wanted} are expected", list.At, says);
        }

        foreach (var item in list.Items)
        {
            Check(item, shape.Item, what);
        }
    }

    private void CheckText(InputNode node, Shape shape, string what)
    {
        if (node is not InputText text)
        {
            bag.Error(DiagnosticCodes.NotText, $"{what} is {node.InWords}, but {ShapeWords.Expected(shape)} is expected", node.At,
                node is InputList { Items: [InputText { IsEmpty: false } only] } ? $"write it without brackets: '{only.Value}'" : says);
            return;
        }

        if (text.IsEmpty)
        {
            bag.Error(DiagnosticCodes.NotText, $"{what} has no value; {ShapeWords.Expected(shape)} is expected", text.At);
            return;
        }

        switch (shape)
        {
            case QuantityShape quantity:
                CheckQuantity(text, quantity, what);
                break;
            case PairShape pair:
                CheckPair(text, pair, what);
                break;
            case NumberShape:
                if (Quantity.TryNumber(text.Value, out var number))
                {
                    text.Number = number;
                }
                else
                {
                    bag.Error(DiagnosticCodes.Quantity, $"{what} is '{text.Value}', but a plain number is expected", text.At, says);
                }

                break;
            case ChoiceShape choice when !choice.Words.Contains(text.Value):
                bag.Error(DiagnosticCodes.Choice, $"{what} is '{text.Value}', but {ShapeWords.Expected(shape)} is expected", text.At, NearestName.Hint(text.Value, choice.Words));
                break;
            case YesNoShape when YesNoWords.Read(text.Value) is null:
                bag.Error(DiagnosticCodes.Choice, $"{what} is '{text.Value}', but yes or no is expected", text.At);
                break;
        }
    }

    private void CheckQuantity(InputText text, QuantityShape shape, string what)
    {
        if (shape.OrUnknown && text.Value == "unknown")
        {
            Unknowns.Add((what, text));
            return;
        }

        if (Quantity.TryParse(text.Value, shape.Kind, out var quantity, out var problem))
        {
            text.Number = quantity.Value;
            text.Unit = quantity.Unit;
            text.NumberText = quantity.NumberText;
            return;
        }

        var comma = text.Value.Contains(',', StringComparison.Ordinal) ? "; decimals have a point, not a comma" : "";
        bag.Error(DiagnosticCodes.Quantity, $"{what} is '{text.Value}', but {shape.Kind.Title} in {shape.Kind.UnitsInWords()} is expected ({problem})", text.At, $"{Gauge(text.Value, shape) ?? ShapeWords.WriteLike(text.Value, shape.Kind)}{comma}");
    }

    // 'AWG 16' as it is printed on reels
    private static string? Gauge(string typed, QuantityShape shape) =>
        typed.StartsWith("AWG", StringComparison.OrdinalIgnoreCase) && $"{typed[3..].Trim()} AWG" is var turned && Quantity.TryParse(turned, shape.Kind, out _, out _) ? $"write it like '{turned}'" : null;

    private void CheckPair(InputText text, PairShape shape, string what)
    {
        if (QuantityPair.TryParse(text.Value, shape.Kind, shape.Joint, shape.OrRound, out var pair))
        {
            text.Number = pair.First;
            text.Second = pair.Second;
            text.Unit = pair.Unit;
            text.NumberText = pair.IsRound ? "round" : null;
            return;
        }

        bag.Error(DiagnosticCodes.Quantity, $"{what} is '{text.Value}', but {ShapeWords.Expected(shape)} is expected", text.At, $"units: {shape.Kind.UnitsInWords()}");
    }

    private static Shape Fitting(InputNode node, EitherShape either) =>
        either.Shapes.FirstOrDefault(s => Fits(node, s)) ?? either.Shapes[0];

    private static bool Fits(InputNode node, Shape shape) => shape switch
    {
        BlockShape or NamedShape => node is InputMap,
        ListShape => node is InputList,
        EitherShape nested => nested.Shapes.Any(s => Fits(node, s)),
        _ => node is InputText,
    };

    private static string Inside(string what, string key) => $"{what}: {key}";

    private static string KeysHint(BlockShape block) => "it may have: " + string.Join(", ", block.Keys.Select(k => k.Name));
}
