using HarnessDraw.Drawing;
using HarnessDraw.Sheets;

namespace HarnessDraw.Tests.Sheets;

public class CutListSheetsTests
{
    [Fact]
    public void Every_wire_stands_in_the_list_once()
    {
        var sheets = CutListSheets.Compose(SmallPlan.Plan, [], new()).Sheets;
        SheetPictures.Put("small", sheets);
        SheetPictures.Put("small", CutListSheets.Compose(SmallPlan.Plan, [], new() { BlackInk = true }).Sheets);
        var ids = sheets.SelectMany(s => ItemWalk.Texts(s)).Where(t => t.Weight == FaceWeight.Bold && t.Tag?.For == t.Text).Select(t => t.Text);
        Assert.Equal(SmallPlan.Plan.Wires.Select(w => w.Id).Order(StringComparer.Ordinal), ids.Order(StringComparer.Ordinal));
    }
}
