using HarnessDraw.Drawing;

namespace HarnessDraw.Tests.Sheets;

/// <summary>Finds texts that would meet in a viewer without the shipped faces: boxes of the planned width, shrunk by 8 % as an outside measurer does.</summary>
internal static class PlannedWidths
{
    private const double Kept = 0.92;

    public static List<string> Clashes(Sheet sheet)
    {
        var boxes = ItemWalk.Texts(sheet).Where(t => t.TurnDegrees == 0).Select(t => (t.Text, Box: BoxOf(t))).ToList();
        var clashes = new List<string>();
        for (var i = 0; i < boxes.Count; i++)
        {
            for (var j = i + 1; j < boxes.Count; j++)
            {
                if (boxes[i].Box.Overlaps(boxes[j].Box))
                {
                    clashes.Add($"{sheet.Title}: '{boxes[i].Text}' and '{boxes[j].Text}'");
                }
            }
        }

        return clashes;
    }

    private static Box BoxOf(TextItem text)
    {
        var width = TextMeasure.PlanWidth(text.Text, text.CapHeightMm, text.Weight);
        var left = TextMeasure.StartX(text, width);
        var size = text.CapHeightMm / 0.668;
        var (middle, half) = (text.At.Y - (0.27 * size), 0.49 * size * Kept);
        return Box.FromEdges(left + (width * (1 - Kept) / 2), middle - half, left + (width * (1 + Kept) / 2), middle + half);
    }
}
