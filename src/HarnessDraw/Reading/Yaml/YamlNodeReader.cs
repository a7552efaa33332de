using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace HarnessDraw.Reading;

/// <summary>
/// Builds the tree of <see cref="InputNode"/>s from YAML parser events. Guards against hostile files: size, depth, aliases that
/// multiply or bite their tail all end in a message.
/// </summary>
public sealed class YamlNodeReader
{
    public const int LargestFileChars = 5 * 1024 * 1024;
    public const int Deepest = 64;

    /// <summary>Values that a file may grow to when its aliases are written out.</summary>
    public const int MostValues = 500_000;

    private readonly string _file;
    private readonly DiagnosticBag _bag;
    private readonly Parser _parser;
    private readonly Dictionary<string, Part?> _anchors = new(StringComparer.Ordinal);

    private YamlNodeReader(string file, string text, DiagnosticBag bag)
    {
        _file = file;
        _bag = bag;
        _parser = new Parser(new Scanner(new StringReader(text), skipComments: true));
    }

    /// <summary>The root value of the file's only document; null (with a message) when there is none or it is broken.</summary>
    public static InputNode? Read(string file, string text, DiagnosticBag bag)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(bag);
        if (text.Length > LargestFileChars)
        {
            bag.Error(DiagnosticCodes.FileTooBig, $"the file has {text.Length / 1048576.0:F0} MB; at most 5 MB are read", new SourceSpan(file, 1, 1));
            return null;
        }

        if (text.AsSpan().IndexOfAny('\0', '\uFFFD') is var bad and >= 0)
        {
            bag.Error(DiagnosticCodes.FileUnreadable, "the file is not UTF-8 text", SpanAt(file, text, bad), "save it as UTF-8");
            return null;
        }

        try
        {
            return new YamlNodeReader(file, text, bag).ReadDocument();
        }
        catch (YamlException)
        {
            return BrokenYaml.TellAll(file, text, bag) is { } rest ? ReadRest(file, rest, bag) : null;
        }
        catch (Stop)
        {
            return null;
        }
    }

    // an alias may hang on what is lost, and nothing may be left: that is told with the mistakes
    private static InputNode? ReadRest(string file, string rest, DiagnosticBag bag)
    {
        var told = new DiagnosticBag();
        try
        {
            var root = new YamlNodeReader(file, rest, told).ReadDocument();
            if (root is not null)
            {
                bag.AddRange(told.ToSorted());
            }

            return root;
        }
        catch (Exception broken) when (broken is YamlException or Stop)
        {
            return null;
        }
    }

    private InputNode? ReadDocument()
    {
        Next();
        Next();
        if (_parser.Current is StreamEnd)
        {
            _bag.Error(DiagnosticCodes.YamlSyntax, "the file is empty", new SourceSpan(_file, 1, 1));
            return null;
        }

        Next();
        var root = ReadNode(1).Node;
        Next();
        Next();
        if (_parser.Current is DocumentStart second)
        {
            _bag.Error(DiagnosticCodes.YamlSyntax, "a second document starts here ('---')", Span(second), "keep one document a file");
        }

        return root;
    }

    // the parser stands on the node's first event, and afterwards on its last
    private Part ReadNode(int depth)
    {
        var current = _parser.Current!;
        if (depth > Deepest)
        {
            throw Fatal(DiagnosticCodes.TooDeep, $"blocks are nested deeper than {Deepest} levels", Span(current));
        }

        switch (current)
        {
            case AnchorAlias alias:
                return ReadAlias(alias, depth);
            case Scalar scalar:
                RefuseTag(scalar);
                return Anchored(scalar, new Part(new InputText(scalar.Value, Span(scalar), scalar.Style != ScalarStyle.Plain), 1, 1));
            case SequenceStart sequence:
                RefuseTag(sequence);
                Announce(sequence);
                return Anchored(sequence, ReadList(sequence, depth));
            case MappingStart mapping:
                RefuseTag(mapping);
                Announce(mapping);
                return Anchored(mapping, ReadMap(mapping, depth));
            default:
                throw Fatal(DiagnosticCodes.YamlSyntax, "a value is expected", Span(current));
        }
    }

    private Part ReadList(SequenceStart start, int depth)
    {
        var items = ImmutableArray.CreateBuilder<InputNode>();
        var size = 1;
        var height = 0;
        while (Next() && _parser.Current is not SequenceEnd)
        {
            var item = ReadNode(depth + 1);
            items.Add(item.Node);
            size = Grown(size, item.Size, item.Node.At);
            height = Math.Max(height, item.Height);
        }

        return new Part(new InputList(items.ToImmutable(), Span(start)), size, height + 1);
    }

    private Part ReadMap(MappingStart start, int depth)
    {
        var entries = ImmutableArray.CreateBuilder<InputEntry>();
        var seen = new Dictionary<string, InputText>(StringComparer.Ordinal);
        var size = 1;
        var height = 0;
        while (Next() && _parser.Current is not MappingEnd)
        {
            var keyNode = ReadNode(depth + 1).Node;
            Next();
            var value = ReadNode(depth + 1);
            size = Grown(size, value.Size, value.Node.At);
            height = Math.Max(height, value.Height);
            if (keyNode is not InputText key)
            {
                _bag.Error(DiagnosticCodes.KeyNotText, $"a key is {keyNode.InWords}", keyNode.At, "keys are words");
            }
            else if (seen.TryGetValue(key.Value, out var first))
            {
                _bag.Error(DiagnosticCodes.DuplicateKey, $"'{key.Value}' stands twice in this block", key.At, "remove or rename one of them", first.At);
                _bag.Doubt(key.Value);
            }
            else
            {
                seen.Add(key.Value, key);
                entries.Add(new InputEntry(key, value.Node));
            }
        }

        return new Part(new InputMap(entries.ToImmutable(), Span(start)), size, height + 1);
    }

    private Part ReadAlias(AnchorAlias alias, int depth)
    {
        var name = alias.Value.Value;
        if (!_anchors.TryGetValue(name, out var anchored))
        {
            throw Fatal(DiagnosticCodes.AliasUnknown, $"nothing is marked '&{name}' above", Span(alias), NearestName.Hint(name, _anchors.Keys));
        }

        if (anchored is not { } repeated)
        {
            throw Fatal(DiagnosticCodes.AliasCycle, $"'*{name}' stands inside the value it repeats", Span(alias));
        }

        return depth + repeated.Height <= Deepest + 1
            ? repeated
            : throw Fatal(DiagnosticCodes.TooDeep, $"'*{name}' makes blocks nest deeper than {Deepest} levels", Span(alias));
    }

    // known, but not finished: an alias that meets it bites its tail
    private void Announce(NodeEvent node)
    {
        if (!node.Anchor.IsEmpty)
        {
            _anchors[node.Anchor.Value] = null;
        }
    }

    private Part Anchored(NodeEvent start, Part read)
    {
        if (!start.Anchor.IsEmpty)
        {
            _anchors[start.Anchor.Value] = read;
        }

        return read;
    }

    private void RefuseTag(NodeEvent node)
    {
        if (!node.Tag.IsEmpty && !node.Tag.IsNonSpecific)
        {
            _bag.Error(DiagnosticCodes.YamlSyntax, $"the tag '{node.Tag.Value}' means nothing here", Span(node), "remove it: everything is read as text");
        }
    }

    private bool Next() => BrokenYaml.Next(_parser);

    private int Grown(int size, int by, SourceSpan at) =>
        (long)size + by <= MostValues
            ? size + by
            : throw Fatal(DiagnosticCodes.TooManyAliases, $"aliases make this grow beyond {MostValues} values", at);

    private Stop Fatal(string code, string message, SourceSpan at, string? hint = null)
    {
        _bag.Error(code, message, at, hint);
        return new Stop();
    }

    private SourceSpan Span(ParsingEvent e)
    {
        var length = e.Start.Line == e.End.Line && e is Scalar or AnchorAlias ? (int)(e.End.Column - e.Start.Column) : 1;
        return new SourceSpan(_file, (int)e.Start.Line, (int)e.Start.Column, Math.Max(1, length));
    }

    private static SourceSpan SpanAt(string file, string text, int index)
    {
        var before = text.AsSpan(0, index);
        return new SourceSpan(file, before.Count('\n') + 1, index - before.LastIndexOf('\n'));
    }

    // a node, how many values it holds with its aliases written out, and how many levels
    private readonly record struct Part(InputNode Node, int Size, int Height);

#pragma warning disable CA1032, CA1064 // a way out of the recursion, never seen outside this class
    private sealed class Stop : Exception;
#pragma warning restore CA1032, CA1064
}
