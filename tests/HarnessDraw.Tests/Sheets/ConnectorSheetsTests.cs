using HarnessDraw.Sheets;
using HarnessDraw.Tests.Drawing;

namespace HarnessDraw.Tests.Sheets;

public class ConnectorSheetsTests
{
    [Fact]
    public void Sheets_are_free_of_faults_in_colour_and_in_black()
    {
        foreach (var black in new[] { false, true })
        {
            var sheets = ConnectorSheets.Compose(SmallPlan.Plan, [], new() { BlackInk = black }).Sheets;
            SheetPictures.Put("small", sheets);
            Assert.All(sheets, s => Assert.Equal([], SheetChecker.Check(s).Select(f => f.ToString())));
        }
    }
}
