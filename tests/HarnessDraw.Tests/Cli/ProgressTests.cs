using HarnessDraw.Cli;

namespace HarnessDraw.Tests.Cli;

public class ProgressTests
{
    [Theory]
    [InlineData(0, "[--------------------]   0 %")]
    [InlineData(0.25, "[#####---------------]  25 %")]
    [InlineData(1, "[####################] 100 %")]
    [InlineData(1.2, "[####################] 100 %")]
    public void A_share_is_a_bar_and_a_figure(double share, string bar) => Assert.Equal(bar, Progress.Bar(share));

    [Fact]
    public void Nobody_looks_nothing_is_shown()
    {
        using var messages = new StringWriter();
        using (var progress = new Progress(new(Stream.Null, messages, TextReader.Null), 1))
        {
            progress.Step("chart.png");
            progress.Share("chart.png", 0.5);
        }

        Assert.Equal("", messages.ToString());
    }
}
