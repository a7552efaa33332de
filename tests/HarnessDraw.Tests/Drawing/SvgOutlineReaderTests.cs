using System.Text;
using HarnessDraw.Diagnostics;
using HarnessDraw.Drawing;
using HarnessDraw.Drawing.Outlines;

namespace HarnessDraw.Tests.Drawing;

public class SvgOutlineReaderTests
{
    [Fact]
    public void Shapes_of_every_kind_are_read()
    {
        var read = Read("""
            <path d="M10 10 h20 v10 l-5 5 H10 Z m30 0 c0 5 5 5 5 0 s5 -5 5 0 q2 4 4 0 t4 0 a3 2 30 1 0 4 4"/>
            <polyline points="0,0 5,5 10,0"/><polygon points="0,0 5,5 10,0"/><line x1="1" y1="2" x2="3" y2="4"/>
            <rect x="1" y="1" width="8" height="4" rx="1"/><circle cx="5" cy="5" r="2"/><ellipse cx="5" cy="5" rx="3" ry="1"/>
            """);
        Assert.Equal(7, read.Shapes.Length);
        Assert.Equal(new Box(0, 0, 100, 50), read.ViewBox);
        Assert.IsType<PathStep.Close>(read.Shapes[2].Outline.Steps[^1]);
        Assert.IsType<PathStep.LineTo>(read.Shapes[1].Outline.Steps[^1]);
    }

    [Fact]
    public void Level_and_upright_lines_keep_the_other_coordinate()
    {
        var steps = Read("""<path d="M10 20 H30 V40 h-5 v-5 z"/>""").Shapes[0].Outline.Steps;
        Assert.Equal([new PathStep.MoveTo(new(10, 20)), new PathStep.LineTo(new(30, 20)), new PathStep.LineTo(new(30, 40)), new PathStep.LineTo(new(25, 40)), new PathStep.LineTo(new(25, 35)), new PathStep.Close()], steps);
    }

    [Fact]
    public void A_circle_keeps_its_radius()
    {
        var line = CentreLine.Of(Read("""<circle cx="50" cy="25" r="20"/>""").Shapes[0].Outline)[0];
        for (var s = 0.0; s < line.LengthMm; s += 3)
        {
            var p = line.At(s).At;
            Assert.Equal(20, Math.Sqrt(((p.X - 50) * (p.X - 50)) + ((p.Y - 25) * (p.Y - 25))), 0.05);
        }
    }

    [Fact]
    public void Transforms_and_uses_are_applied()
    {
        var read = Read("""<defs><g id="w"><path d="M0 0 L1 0"/></g></defs><g transform="translate(10 20) scale(2)"><use href="#w" xlink:href="#w" x="5" y="0"/></g><path transform="rotate(90)" d="M1 0 L2 0"/>""");
        Assert.Equal(2, read.Shapes.Length);
        Assert.Equal(new PathStep.LineTo(new(22, 20)), read.Shapes[0].Outline.Steps[1]);
        var to = ((PathStep.LineTo)read.Shapes[1].Outline.Steps[1]).To;
        Assert.Equal(2, to.Y, 6);
        Assert.Equal(0, to.X, 6);
    }

    [Fact]
    public void A_picture_is_fitted_into_a_box()
    {
        var group = Read("""<path d="M0 0 L100 50"/>""").Fit(new(10, 10, 200, 300), line: new(Ink.Hairline, 0.7));
        var box = ItemBounds.Of(group)!.Value;
        Assert.Equal(110, box.Centre.X, 6);
        Assert.Equal(160, box.Centre.Y, 6);
        Assert.Equal(200.7, box.Width, 6);
    }

    [Theory]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'><path d='M0 0 L1 1'></svg>", 1)]
    [InlineData("not xml", 1)]
    [InlineData("", 1)]
    [InlineData("<html>\n</html>", 1)]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'>\n<text>only</text>\n</svg>", 1)]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'>\n\n<g></svg>", 3)]
    public void A_file_that_is_no_drawing_is_an_error_with_a_place(string text, int line)
    {
        var read = SvgOutlineReader.Read(Encoding.UTF8.GetBytes(text), "body.svg");
        Assert.True(read.Failed);
        var said = Assert.Single(read.Diagnostics);
        Assert.Equal(Severity.Error, said.Severity);
        Assert.Equal("body.svg", said.At!.File);
        Assert.Equal(line, said.At.Line);
        Assert.NotNull(DiagnosticCodes.Explain(said.Code));
    }

    [Fact]
    public void Nothing_runs_and_nothing_is_loaded_from_outside()
    {
        var secret = Path.Combine(Path.GetTempPath(), $"outline-{Environment.ProcessId}.svg");
        File.WriteAllText(secret, """<svg xmlns="http://www.w3.org/2000/svg"><path id="p" d="M0 0 L9 9"/></svg>""");
        try
        {
            var text = $"""
                <!DOCTYPE svg [<!ENTITY leak SYSTEM "{secret}">]>
                <svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 10 10" onload="alert(1)">
                <script>alert(1)</script><use xlink:href="file://{secret}#p"/><use xlink:href="{secret}#p"/><image xlink:href="file://{secret}"/><path d="M0 0 L1 1"/></svg>
                """;
            var read = SvgOutlineReader.Read(Encoding.UTF8.GetBytes(text), "body.svg");
            Assert.Single(read.Value!.Shapes);
        }
        finally
        {
            File.Delete(secret);
        }
    }

    [Fact]
    public void Parts_that_show_each_other_end()
    {
        var bomb = new StringBuilder("<defs>");
        bomb.Append("<g id='g0'><path d='M0 0 L1 1'/></g>");
        for (var i = 1; i < 15; i++)
        {
            bomb.Append($"<g id='g{i}'>").Insert(bomb.Length, $"<use xlink:href='#g{i - 1}'/>", 10).Append("</g>");
        }

        bomb.Append("</defs><g id='loop'><use xlink:href='#loop'/></g><use xlink:href='#g14'/>");
        Assert.InRange(Read(bomb.ToString()).Shapes.Length, 1, 20_000);
    }

    private static DrawnOutlines Read(string body)
    {
        var text = $"""<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 100 50">{body}</svg>""";
        var read = SvgOutlineReader.Read(Encoding.UTF8.GetBytes(text), "body.svg");
        Assert.False(read.Failed, string.Join("; ", read.Diagnostics.Select(d => d.Message)));
        return read.Value!;
    }
}
