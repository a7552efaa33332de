using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.Pages;

/// <summary>What all pages of one kind of sheet have in common.</summary>
internal sealed record PageForm(string Name, string Headline, string Type)
{
    /// <summary>Words after the headline.</summary>
    public string Aside { get; init; } = "";

    /// <summary>The cautions that apply, below the headline.</summary>
    public string Caution { get; init; } = "Battery disconnected while you work.";
    public Paper Paper { get; init; } = PaperSizes.A4;
    public string Scale { get; init; } = "not to scale";

    /// <summary>What the title block says of the build; null: as the options say.</summary>
    public string? Build { get; init; }
}

/// <summary>Pages of one kind: headline and cautions at the top, frame and title block round it, the free area between them.</summary>
internal sealed class PageMaker
{
    private readonly PageForm form;
    private readonly SheetOptions options;
    private readonly TitleBlock block;
    private readonly List<(string? Title, Pen Pen, Tag? Tag)> pages = [];
    private readonly ImmutableArray<string> cautions;

    public PageMaker(Plan plan, ImmutableArray<Finding> findings, SheetOptions options, PageForm form)
    {
        (this.form, this.options) = (form, options);
        Paper = options.Paper is { } asked ? LikeForm(asked) : form.Paper;
        block = SheetTitle.Of(plan, findings, options, form.Headline[..1] + form.Headline[1..].ToLowerInvariant(), form.Type) with { Scale = form.Scale };
        block = form.Build is { } words ? block with { Build = words } : block;
        var frame = Sheets.Frame.Compose(Paper, block, FrameOf);
        Frame = frame.Border.Frame;
        TitleBox = frame.TitleBox;
        cautions = form.Caution.Length == 0 ? [] : LineBreaker.Lines(form.Caution, Frame.Width - 8, CautionStyle);
        Area = Box.FromEdges(Frame.X + 4, Frame.Y + HeadMm + (cautions.Length * LineMm), Frame.Right - 4, TitleBox.Y - 3);
    }

    private static readonly ImmutableArray<(double Headline, double Aside)> Sizes = [(7, 3.5), (7, 2.5), (5, 3.5), (5, 2.5), (3.5, 2.5)];
    private const double HeadMm = 14;
    private const double LineMm = 4.4;

    /// <summary>Room that a headline takes, mm.</summary>
    public const double HeadlineMm = 13;

    private static TextStyle CautionStyle => TextStyle.Bold with { Colour = Ink.Caution };

    private static FrameOptions FrameOf => new() { Form = TitleBlockForm.Small, CentringInsideMm = 0 };

    public Paper Paper { get; }

    /// <summary>Inside the frame's line; title block and headline lie in it.</summary>
    public Box Frame { get; }

    public Box TitleBox { get; }

    /// <summary>Free for the page: below headline and cautions, above the title block.</summary>
    public Box Area { get; }

    public bool BlackInk => options.BlackInk;

    public int Count => pages.Count;

    /// <summary>Begins a page. <paramref name="title"/>: for its title block; null: the headline. <paramref name="tag"/>: what all of the page stands for.</summary>
    public Pen Begin(string? title = null, string? headline = null, string? aside = null, Tag? tag = null)
    {
        var pen = new Pen(options.BlackInk);
        Head(pen, headline ?? form.Headline, aside ?? form.Aside);
        pages.Add((title, pen, tag));
        return pen;
    }

    public SheetResult ToResult() => new([.. pages.Select((p, i) => Page(p.Title, p.Pen, p.Tag, i))]);

    private Sheet Page(string? title, Pen pen, Tag? tag, int index)
    {
        var shown = title ?? (pages.Count > 1 ? $"{block.Title}, page {index + 1} of {pages.Count}" : block.Title);
        var frame = Sheets.Frame.Compose(Paper, block with { Title = shown, Sheet = index + 1, Sheets = pages.Count }, FrameOf);
        ImmutableArray<Item> items = [new GroupItem(pen.Items) { Name = form.Name, Tag = tag }, .. frame.Items];
        return new(form.Name, shown, Paper, options.BlackInk ? BlackInkFilter.Apply(items) : items)
        {
            Number = pages.Count > 1 ? index + 1 : null,
            BlackInk = options.BlackInk,
            Language = block.Language,
        };
    }

    private void Head(Pen pen, string headline, string aside)
    {
        Headline(pen, Frame.Y, headline, aside);
        var y = Frame.Y + HeadMm + 1.2;
        foreach (var line in cautions)
        {
            pen.Letters(line, Frame.X + 4, y, CautionStyle);
            y += LineMm;
        }
    }

    /// <summary>A headline within <see cref="HeadlineMm"/> below a height; it steps down until what follows it stands beside it too, words that fit nowhere go below it.</summary>
    public void Headline(Pen pen, double top, string headline, string aside)
    {
        var room = Frame.Width - 8;
        // 'continued' on a later page stands beside letters of the size of the first
        var longest = headline == form.Headline && form.Aside.Length > aside.Length ? form.Aside : aside;
        var (cap, quiet) = Sizes.FirstOrDefault(s => Pen.Width(headline, TextStyle.Bold.At(s.Headline)) + (longest.Length == 0 ? 0 : 4.5 + Pen.Width(longest, TextStyle.Plain.At(s.Aside))) <= room);
        var beside = cap > 0;
        var style = TextStyle.Bold.At(beside ? cap : 3.5);
        var lines = LineBreaker.Lines(headline, room, style);
        var baseY = top + (beside || (lines.Length == 1 && aside.Length == 0) ? 10 : 6.5);
        pen.Letters(lines[0], Frame.X + 4, baseY, style);
        if (beside && aside.Length > 0)
        {
            pen.Letters(aside, Frame.X + 4 + Pen.Width(headline, TextStyle.Bold.At(cap)) + 4.5, baseY, TextStyle.Plain.At(quiet));
        }
        else if (!beside)
        {
            pen.Letters(LineBreaker.Lines(string.Join(' ', lines.Skip(1).Append(aside)), room)[0], Frame.X + 4, top + 11.6, TextStyle.Plain);
        }
    }

    // the paper asked for, turned the way the form lies
    private Paper LikeForm(Paper asked) =>
        (asked.WidthMm > asked.HeightMm) == (form.Paper.WidthMm > form.Paper.HeightMm)
            ? asked
            : PaperSizes.Find($"{asked.Name.Replace(" landscape", "", StringComparison.Ordinal).Replace(" portrait", "", StringComparison.Ordinal)} {(form.Paper.WidthMm > form.Paper.HeightMm ? "landscape" : "portrait")}") ?? asked;
}
