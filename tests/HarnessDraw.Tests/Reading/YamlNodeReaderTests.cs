using System.Text;
using HarnessDraw.Diagnostics;
using HarnessDraw.Reading;

namespace HarnessDraw.Tests.Reading;

public class YamlNodeReaderTests
{
    private static (InputNode? Root, DiagnosticBag Bag) Read(string text)
    {
        var bag = new DiagnosticBag();
        return (YamlNodeReader.Read("a.yaml", text, bag), bag);
    }

    private static Diagnostic Only(DiagnosticBag bag) => Assert.Single(bag.ToSorted());

    [Fact]
    public void Keys_and_values_keep_their_line_and_column()
    {
        var map = Assert.IsType<InputMap>(Read("first: 1\nsecond:\n  inner: [a, bc]\n").Root);
        var second = map.Entries[1];
        Assert.Equal(new SourceSpan("a.yaml", 2, 1, 6), second.Key.At);
        var list = Assert.IsType<InputList>(Assert.IsType<InputMap>(second.Value).Find("inner"));
        Assert.Equal(new SourceSpan("a.yaml", 3, 14, 2), list.Items[1].At);
    }

    [Theory]
    [InlineData("NO")]
    [InlineData("on")]
    [InlineData("012")]
    [InlineData("7E05")]
    [InlineData("1_0")]
    [InlineData("56:30")]
    [InlineData("~")]
    [InlineData("null")]
    [InlineData("0x1F")]
    [InlineData("2026-09-11")]
    [InlineData(".inf")]
    public void A_scalar_stays_the_text_that_was_typed(string typed)
    {
        var map = Assert.IsType<InputMap>(Read($"{typed}: [{typed}, \"{typed}\"]\n").Root);
        Assert.Equal(typed, map.Entries[0].Key.Value);
        Assert.Equal([typed, typed], map.Texts(typed));
    }

    [Fact]
    public void A_key_given_twice_is_an_error_at_the_second_with_the_first_beside_it()
    {
        var message = Only(Read("a: 1\nb: 2\na: 3\n").Bag);
        Assert.Equal(DiagnosticCodes.DuplicateKey, message.Code);
        Assert.Equal((3, 1), (message.At!.Line, message.At.Column));
        Assert.Equal(1, message.Other!.Line);
    }

    [Fact]
    public void An_alias_bomb_ends_in_a_message()
    {
        var text = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
        for (var i = 1; i < 30; i++)
        {
            text.Append($"a{i}: &a{i} [{string.Join(", ", Enumerable.Repeat($"*a{i - 1}", 10))}]\n");
        }

        Assert.Equal(DiagnosticCodes.TooManyAliases, Only(Read(text.ToString()).Bag).Code);
    }

    [Fact]
    public void An_alias_inside_its_own_value_ends_in_a_message()
    {
        var message = Only(Read("a: &loop\n  b: [*loop]\n").Bag);
        Assert.Equal(DiagnosticCodes.AliasCycle, message.Code);
        Assert.Equal((2, 7), (message.At!.Line, message.At.Column));
    }

    [Fact]
    public void An_alias_without_an_anchor_names_the_nearest()
    {
        var message = Only(Read("a: &copper x\nb: *coper\n").Bag);
        Assert.Equal(DiagnosticCodes.AliasUnknown, message.Code);
        Assert.Contains("'copper'", message.Hint);
    }

    [Fact]
    public void Nesting_is_read_down_to_64_levels_and_no_deeper()
    {
        Assert.Equal(0, Read(new string('[', 63) + "x" + new string(']', 63)).Bag.Count);
        Assert.Equal(DiagnosticCodes.TooDeep, Only(Read(new string('[', 64) + "x" + new string(']', 64)).Bag).Code);
        Assert.Equal(DiagnosticCodes.TooDeep, Only(Read(new string('[', 1_000_000)).Bag).Code);
    }

    [Fact]
    public void Aliases_do_not_get_around_the_depth()
    {
        var half = new string('[', 40);
        var text = $"a: &a {half}x{new string(']', 40)}\nb: {half}*a{new string(']', 40)}\n";
        Assert.Equal(DiagnosticCodes.TooDeep, Only(Read(text).Bag).Code);
    }

    [Fact]
    public void A_file_of_50_MB_ends_in_a_message()
    {
        var message = Only(Read(new string('#', 50 * 1024 * 1024)).Bag);
        Assert.Equal(DiagnosticCodes.FileTooBig, message.Code);
        Assert.Contains("50 MB", message.Message);
    }

    [Theory]
    [InlineData("a: [1, 2\nb: 3\n")]
    [InlineData("a: 'open\n")]
    [InlineData("a:\n\t- tab\n")]
    [InlineData("a: b: c\n")]
    public void Broken_YAML_is_one_message_with_its_place(string text)
    {
        var message = Only(Read(text).Bag);
        Assert.Equal(DiagnosticCodes.YamlSyntax, message.Code);
        Assert.True(message.At!.Line >= 1 && message.At.Column >= 1);
        Assert.DoesNotContain("Idx", message.Message);
    }

    [Fact]
    public void Mistakes_of_single_lines_are_told_together_each_in_its_place()
    {
        var told = Read("things:\n  blower { at: heater, plug: sealed-3 }\n  horn: { at: nose }\n\tfan: { at: nose }\n  lamp: { at: nose }\n").Bag.ToSorted();
        Assert.Equal(["2:9", "4:1"], told.Select(d => $"{d.At!.Line}:{d.At.Column}"));
        Assert.Contains("colon", told[0].Hint, StringComparison.Ordinal);
        Assert.Contains("spaces", told[1].Hint, StringComparison.Ordinal);
        // what follows a key without its colon hangs on it
        Assert.Single(Read("things {\n  horn: { at: nose }\n  lamp: { at: nose }\n").Bag.ToSorted());
    }

    /// <summary>One mistake of every kind, each in an entry of its own: each is told in its own line and none brings others with it.</summary>
    public static TheoryData<string, int, int, string> Kinds => new()
    {
        { "  a { at: nose, on: body }", 0, 4, "colon" },
        { "  a: { at: nose", 0, 16, "bracket" },
        { "  a: { at: nose }}", 0, 18, "bracket" },
        { "  a: [x, y", 0, 11, "bracket" },
        { "  a: \"x", 0, 6, "quote" },
        { "  a: 'x", 0, 6, "quote" },
        { "  a: x: y", 0, 7, "quotes" },
        { "\ta: x", 0, 1, "spaces" },
        { "   a: x", 0, 4, "column" },
        { "  - a", 0, 3, "list" },
        { "  a", 0, 3, "colon" },
        { "  a:x", 0, 3, "colon" },
        { "  a: @x", 0, 6, "quotes" },
        { "  a: `x`", 0, 6, "quotes" },
        { "  a: %x", 0, 6, "quotes" },
        { "  a: {b: c d: e}", 0, 13, "comma" },
        { "  a: [x y], z", 0, 11, "quotes" },
        { "  a:\n    b: {\n    c: d", 1, 9, "bracket" },
        { "  a: { at: nose,\n       plug: x\n  b: y", 1, 15, "bracket" },
        { "  a:\n    b: x\n   c: y", 2, 4, "column" },
    };

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_mistake_of_each_kind_is_told_in_its_line_and_the_rest_is_read(string lines, int line, int column, string hint)
    {
        var (root, bag) = Read($"things:\n  before: {{ at: nose }}\n{lines}\n  after: {{ at: nose }}\nlast: [x]\n");
        var told = Only(bag);
        Assert.Equal((3 + line, column), (told.At!.Line, told.At.Column));
        Assert.Contains(hint, told.Hint, StringComparison.Ordinal);
        var things = Assert.IsType<InputMap>(root).Map("things")!;
        Assert.True(things.Has("before") && things.Has("after"));
        Assert.Equal(["x"], ((InputMap)root).Texts("last"));
    }

    [Fact]
    public void Mistakes_of_all_kinds_together_are_all_told()
    {
        var all = Kinds.Select((row, i) => (Lines: row.Data.Item1, row.Data.Item2, row.Data.Item3, Of: i)).ToArray();
        var text = new StringBuilder("things:\n");
        var expected = new List<string>();
        var line = 2;
        foreach (var kind in all)
        {
            text.Append($"  before {kind.Of}: {{ at: nose }}\n{kind.Lines}\n");
            expected.Add($"{line + 1 + kind.Item2}:{kind.Item3}");
            line += 2 + kind.Lines.Count(c => c == '\n');
        }

        var (root, bag) = Read(text.ToString());
        Assert.Equal(expected, bag.ToSorted().Where(d => d.Code == DiagnosticCodes.YamlSyntax).Select(d => $"{d.At!.Line}:{d.At.Column}"));
        Assert.Equal(all.Length, Assert.IsType<InputMap>(root).Map("things")!.Entries.Count(e => e.Key.Value.StartsWith("before", StringComparison.Ordinal)));
    }

    [Fact]
    public void Lines_below_each_other_that_begin_with_tabs_are_one_mistake_and_a_file_of_nothing_else_ends()
    {
        Assert.Contains("and 2 below it", Only(Read("things:\n\ta: x\n\tb: x\n\n\tc: x\n").Bag).Message, StringComparison.Ordinal);
        var told = Read(string.Concat(Enumerable.Repeat("a: [\n", 400))).Bag.ToSorted();
        Assert.Equal(BrokenYaml.Most + 1, told.Length);
        Assert.Equal(DiagnosticCodes.TooManyMessages, told.Single(d => d.At is null).Code);
    }

    [Theory]
    [InlineData("")]
    [InlineData("# nothing\n")]
    public void An_empty_file_is_a_message(string text) => Assert.Equal(DiagnosticCodes.YamlSyntax, Only(Read(text).Bag).Code);

    [Fact]
    public void Bytes_that_are_not_UTF8_are_pointed_at()
    {
        var message = Only(Read("a: 1\nb: x\uFFFD\n").Bag);
        Assert.Equal(DiagnosticCodes.FileUnreadable, message.Code);
        Assert.Equal((2, 5), (message.At!.Line, message.At.Column));
    }

    [Fact]
    public void Tags_second_documents_and_keys_that_are_no_words_are_refused()
    {
        Assert.Equal(DiagnosticCodes.YamlSyntax, Only(Read("a: !!int 3\n").Bag).Code);
        Assert.Equal(DiagnosticCodes.YamlSyntax, Only(Read("a: 1\n---\nb: 2\n").Bag).Code);
        Assert.Equal(DiagnosticCodes.KeyNotText, Only(Read("[a]: 1\n").Bag).Code);
    }

    /// <summary>The parser throws what is no YAML mistake for some texts, also where it is asked for a second mistake.</summary>
    [Fact]
    public void A_mistake_behind_which_the_parser_stumbles_is_told_with_the_others()
    {
        const string Stumbles = "things:\n  horn: !<:> x\n";
        var parser = new YamlDotNet.Core.Parser(new StringReader(Stumbles));
        Assert.Throws<ArgumentException>(() =>
        {
            while (parser.MoveNext())
            {
            }
        });
        Assert.Equal(DiagnosticCodes.YamlSyntax, Only(Read(Stumbles).Bag).Code);
        Assert.Equal([2, 3], Read("things:\n\tfan: x\n  horn: !<:> x\n").Bag.ToSorted().Select(d => d.At!.Line));
    }
}
