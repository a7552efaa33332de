using System.Collections.Immutable;
using System.Text;

namespace HarnessDraw.Reading;

/// <summary>Writes the key reference of a shape as Markdown tables, one a block, so that the documentation cannot fall behind the reader.</summary>
public static class KeyReference
{
    /// <summary>The tables, outside in; each block once.</summary>
    public static string Markdown(BlockShape root)
    {
        var text = new StringBuilder();
        foreach (var block in Blocks(root))
        {
            text.Append($"### {block.Id}\n\n{block.Says}\n\n| key | value | what it says |\n| --- | --- | --- |\n");
            foreach (var key in block.Keys)
            {
                text.Append($"| `{key.Name}`{(key.Required ? " (needed)" : "")} | {Value(key.Shape)} | {key.Says.Replace("|", "\\|", StringComparison.Ordinal)} |\n");
                foreach (var reserved in (key.Shape as NamedShape)?.Reserved ?? [])
                {
                    text.Append($"| `{key.Name}`: `{reserved.Name}` | {Value(reserved.Shape)} | {reserved.Says} |\n");
                }
            }

            text.Append('\n');
        }

        return text.ToString().TrimEnd('\n') + "\n";
    }

    /// <summary>All blocks in a shape, the outer before the inner, each once.</summary>
    public static ImmutableArray<BlockShape> Blocks(BlockShape root)
    {
        var found = new List<BlockShape>();
        Collect(root, found);
        return [.. found];
    }

    private static void Collect(Shape shape, List<BlockShape> found)
    {
        switch (shape)
        {
            case BlockShape block when !found.Contains(block):
                found.Add(block);
                foreach (var key in block.Keys)
                {
                    Collect(key.Shape, found);
                }

                break;
            case NamedShape named:
                Collect(named.Value, found);
                foreach (var key in named.Reserved)
                {
                    Collect(key.Shape, found);
                }

                break;
            case ListShape list:
                Collect(list.Item, found);
                break;
            case EitherShape either:
                foreach (var one in either.Shapes)
                {
                    Collect(one, found);
                }

                break;
        }
    }

    private static string Value(Shape shape) => shape switch
    {
        TextShape text => text.Expected,
        ChoiceShape choice => string.Join(", ", choice.Words.Select(w => $"`{w}`")),
        YesNoShape => "`yes`, `no`",
        NumberShape => "a number",
        QuantityShape quantity => $"{quantity.Kind.Title} ({quantity.Kind.UnitsInWords()}){(quantity.OrUnknown ? " or `unknown`" : "")}",
        PairShape pair => $"{ShapeWords.Expected(pair)}",
        ListShape list => $"a list: {Value(list.Item)}",
        EitherShape { Shapes: [var one, ListShape { Item: var item }] } when one == item => $"{Value(one)}, or a list of them",
        EitherShape either => string.Join("; or ", either.Shapes.Select(Value)),
        NamedShape named => $"a block, {named.KeyIs} a line: {Value(named.Value)}",
        BlockShape block => $"[{block.Id}](#{block.Id})",
        _ => "",
    };
}
