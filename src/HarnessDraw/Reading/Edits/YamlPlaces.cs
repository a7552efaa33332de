using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace HarnessDraw.Reading.Edits;

/// <summary>A value of a YAML text with the characters it takes up, so that it can be replaced without touching the rest.</summary>
internal sealed record YamlPlace(int Start, int End, bool IsFlow, bool IsMap, List<(string Key, int KeyStart, YamlPlace Value)> Entries, List<YamlPlace> Items)
{
    public bool IsLeaf => !IsMap && Items.Count == 0;

    public YamlPlace? Find(string key) => Entries.Where(e => e.Key == key).Select(e => e.Value).FirstOrDefault();

    /// <summary>The root of the first document; null when the text is empty or broken, which the reader tells in full.</summary>
    public static YamlPlace? Of(string text)
    {
        try
        {
            var parser = new Parser(new Scanner(new StringReader(text), skipComments: true));
            parser.Consume<StreamStart>();
            return parser.TryConsume<DocumentStart>(out _) ? Read(parser, 0) : null;
        }
        catch (YamlException)
        {
            return null;
        }
    }

    private static YamlPlace Read(Parser parser, int depth)
    {
        if (depth > YamlNodeReader.Deepest)
        {
            throw new YamlException("too deep");
        }

        if (parser.TryConsume<MappingStart>(out var map))
        {
            var entries = new List<(string, int, YamlPlace)>();
            while (!parser.Accept<MappingEnd>(out _))
            {
                var at = parser.Current!.Start.Index;
                var key = parser.Current is Scalar scalar ? scalar.Value : "";
                Read(parser, depth + 1);
                entries.Add((key, (int)at, Read(parser, depth + 1)));
            }

            var closed = parser.Consume<MappingEnd>();
            var flow = map.Style == MappingStyle.Flow;
            return new((int)map.Start.Index, flow ? (int)closed.Start.Index + 1 : EndOf(entries.Select(e => e.Item3), map), flow, true, entries, []);
        }

        if (parser.TryConsume<SequenceStart>(out var list))
        {
            var items = new List<YamlPlace>();
            while (!parser.Accept<SequenceEnd>(out _))
            {
                items.Add(Read(parser, depth + 1));
            }

            var closed = parser.Consume<SequenceEnd>();
            var flow = list.Style == SequenceStyle.Flow;
            return new((int)list.Start.Index, flow ? (int)closed.Start.Index + 1 : EndOf(items, list), flow, false, [], items);
        }

        var leaf = parser.Consume<ParsingEvent>();
        return new((int)leaf.Start.Index, (int)leaf.End.Index, true, false, [], []);
    }

    private static int EndOf(IEnumerable<YamlPlace> inside, ParsingEvent start) => inside.Select(i => i.End).Append((int)start.End.Index).Max();
}
