using HarnessDraw.Diagnostics;
using YamlDotNet.Core;

namespace HarnessDraw.Reading;

/// <summary>
/// All mistakes of a file that is no YAML, and what is left of it. The parser stops at its first mistake, often far below it (an open bracket), so
/// the file is taken apart by indentation: a line with what is indented below it is a block that must be YAML by itself. Blocks that are not are
/// taken apart further; the smallest of them tell their mistake in its own line and are left out.
/// </summary>
public sealed class BrokenYaml
{
    /// <summary>More than these help nobody: the file is something else.</summary>
    public const int Most = 25;

    private readonly string _file;
    private readonly string[] _lines;
    private readonly bool[] _lost;
    private readonly HashSet<int> _heads = [];
    private readonly List<(SourceSpan At, string Says, string Hint, string? Repeats)> _told = [];

    private BrokenYaml(string file, string text)
    {
        _file = file;
        _lines = text.Split('\n');
        _lost = new bool[_lines.Length];
    }

    /// <summary>Tells every mistake and what is lost with it (<see cref="DiagnosticBag.Lose"/>); returns the file without the lines that are lost, or null when nothing can be told of the rest.</summary>
    public static string? TellAll(string file, string text, DiagnosticBag bag)
    {
        var broken = new BrokenYaml(file, text);
        var root = broken.Tree();
        broken.Tell(root, 0);
        if (broken.Places >= Most)
        {
            broken.Lose(root);
        }

        bag.Lose(file, string.Join('\n', Enumerable.Range(0, broken._lines.Length).Where(i => broken._lost[i] || broken._heads.Contains(i)).Select(i => broken._lines[i])));
        broken.Report(bag);
        return broken._lost.All(l => l) ? null : broken.Text(0, broken._lines.Length);
    }

    // what goes on from line to line counts once
    private int Places => _told.Count - Enumerable.Range(1, Math.Max(0, _told.Count - 1)).Count(i => GoesOn(_told[i - 1], _told[i]));

    private void Tell(Block block, int depth)
    {
        if (Places >= Most || Mistake(block.First, block.End) is not { } mistake)
        {
            return;
        }

        if (depth > YamlNodeReader.Deepest || block.Inner.Count == 0 || (block.Indent >= 0 && Mistake(block.First, block.First + 1) is not null))
        {
            _told.Add(mistake);
            Lose(block);
            return;
        }

        foreach (var inner in block.Inner)
        {
            Tell(inner, depth + 1);
        }

        // each by itself is YAML: now it is how they stand together
        while (Places < Most && Mistake(block.First, block.End) is { } between)
        {
            var culprit = IsKeyWithoutColon(block) ? null : block.Inner.Find(b => b.First < between.At.Line && between.At.Line <= b.End && !_lost[b.First]);
            _told.Add(between);
            Lose(culprit ?? block);
            if (culprit is null)
            {
                return;
            }
        }
    }

    private bool IsKeyWithoutColon(Block block) =>
        block.Indent >= 0 && _lines[block.First].Trim() is var head && !head.Contains(':', StringComparison.Ordinal) && !head.StartsWith('-');

    private void Lose(Block block)
    {
        Array.Fill(_lost, true, block.First, block.End - block.First);
        for (var around = block.Outer; around is { Indent: >= 0 }; around = around.Outer)
        {
            _heads.Add(around.First);
        }
    }

    private (SourceSpan At, string Says, string Hint, string? Repeats)? Mistake(int first, int end)
    {
        var text = Text(first, end);
        if (Broken(text) is not { } broken)
        {
            return null;
        }

        var place = YamlHints.Place(_file, text, broken);
        var line = Math.Min(place.Line, end - first);
        return (new(_file, line + first, line < place.Line ? _lines[line + first - 1].Length + 1 : place.Column), YamlHints.Sentence(text, broken), YamlHints.Hint(text, broken), YamlHints.Repeats(text, broken));
    }

    /// <summary>The exception at which the parser stops; null for whole YAML.</summary>
    private static YamlException? Broken(string text)
    {
        var parser = new Parser(new Scanner(new StringReader(text), skipComments: true));
        try
        {
            while (Next(parser))
            {
            }

            return null;
        }
        catch (YamlException broken)
        {
            return broken;
        }
    }

    /// <summary>The parser's next event. Its scanner throws plain exceptions for some broken files; those are the file's fault as well.</summary>
    internal static bool Next(Parser parser)
    {
        var lastGood = parser.Current?.End ?? new Mark(0, 1, 1);
        try
        {
            return parser.MoveNext();
        }
        catch (Exception broken) when (broken is InvalidOperationException or ArgumentException or IndexOutOfRangeException or OverflowException)
        {
            throw new YamlException(lastGood, lastGood, "", broken);
        }
    }

    private string Text(int first, int end) => string.Join('\n', Enumerable.Range(first, end - first).Select(i => _lost[i] ? "" : _lines[i]));

    // what is indented below a line belongs to it; a line that closes a bracket belongs to the one that opens it
    private Block Tree()
    {
        var root = new Block(0, -1, null) { End = _lines.Length };
        var open = new Stack<Block>([root]);
        for (var i = 0; i < _lines.Length; i++)
        {
            var bare = _lines[i].Trim();
            if (bare.Length == 0 || bare[0] == '#')
            {
                continue;
            }

            var indent = IndentOf(_lines[i]);
            var closes = bare[0] is ']' or '}' ? 1 : 0;
            while (open.Peek().Indent >= indent + closes)
            {
                open.Pop();
            }

            var block = new Block(i, indent, open.Peek());
            if (closes == 0 || open.Count == 1)
            {
                open.Peek().Inner.Add(block);
                open.Push(block);
            }

            foreach (var around in open)
            {
                around.End = Math.Max(around.End, i + 1);
            }
        }

        return root;
    }

    private static int IndentOf(string line)
    {
        const int tab = 8;
        return line.TakeWhile(c => c is ' ' or '\t').Sum(c => c == '\t' ? tab : 1);
    }

    // lines that tell one kind of mistake one below the other are one: tabs, and what stands in another column than the lines before it
    private void Report(DiagnosticBag bag)
    {
        var told = _told.OrderBy(t => t.At.Line).ThenBy(t => t.At.Column).ToImmutableArray();
        for (var i = 0; i < told.Length;)
        {
            var run = 1;
            while (i + run < told.Length && GoesOn(told[i + run - 1], told[i + run]))
            {
                run++;
            }

            bag.Error(DiagnosticCodes.YamlSyntax, told[i].Says + (run == 1 ? "" : told[i].Repeats == "tab" ? $" and {run - 1} below it" : $"; so of the {run - 1} lines below it"), told[i].At, told[i].Hint);
            i += run;
        }

        if (Places >= Most)
        {
            bag.Error(DiagnosticCodes.TooManyMessages, $"after {Most} places that are no YAML the rest of '{_file}' is not looked at", null, "mend the ones above first");
        }
    }

    private bool GoesOn((SourceSpan At, string Says, string Hint, string? Repeats) one, (SourceSpan At, string Says, string Hint, string? Repeats) next) =>
        one.Repeats is not null && next.Repeats == one.Repeats && NextLine(one.At.Line) == next.At.Line;

    private int NextLine(int line) => line + 1 + _lines.Skip(line).TakeWhile(l => l.Trim() is "" or ['#', ..]).Count();

    private sealed class Block(int first, int indent, Block? outer)
    {
        public Block? Outer { get; } = outer;

        public int First { get; } = first;

        public int Indent { get; } = indent;

        public int End { get; set; } = first + 1;

        public List<Block> Inner { get; } = [];
    }
}
