using HarnessDraw.Drawing;
using HarnessDraw.Model;

namespace HarnessDraw.Tests.Model;

public class ColourLettersTests
{
    [Fact]
    public void What_may_be_described_can_be_drawn_and_the_other_way_round()
    {
        string[] letters = ["B", "C", "D", "E", "G", "K", "L", "N", "O", "P", "Q", "R", "S", "T", "U", "V", "W", "Y", "H"];
        var pairs = letters.SelectMany(a => letters.Select(b => a + b)).ToArray();
        var texts = pairs.Concat(letters.SelectMany(a => pairs.Select(p => a + p))).Concat(["BN/WH", "BN/BN", "BN/", "/BN", "BN/WH/RD", "LBU/DGN", "bn", ""]);
        Assert.All(texts, t => Assert.True((WireColour.TryParse(t) is not null) == ColourLetters.IsColour(t), t));
        Assert.Equal(ColourCodes.All.Select(c => c.Code), ColourLetters.All);
    }
}
