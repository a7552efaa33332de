using System.Text.Json;
using HarnessDraw.Model;
using HarnessDraw.Writing.PlanFile;

namespace HarnessDraw.Writing.Frozen;

/// <summary>The part of NAME.frozen.json that says how the wall chart was laid out. Lengths are written in full: they are laid out again.</summary>
internal static class FrozenChartJson
{
    public static void Write(Utf8JsonWriter json, FrozenChart chart)
    {
        json.WriteStartObject("chart");
        json.WriteString("paper", chart.Paper);
        json.Array("sheets", chart.Sheets, WriteSheet);
        json.WriteEndObject();
    }

    private static void WriteSheet(Utf8JsonWriter json, FrozenChartSheet sheet)
    {
        json.Strings("circuits", sheet.Circuits);
        json.WriteNumber("nameMm", sheet.NameMm);
        json.WriteNumber("columnMm", sheet.ColumnMm);
        json.WriteNumber("oneSideMm", sheet.OneSideMm);
        json.WriteBoolean("stacksAtEnds", sheet.StacksAtEnds);
        json.WriteNumber("tableShare", sheet.TableShare);
        json.WriteNumber("cornerWidthMm", sheet.CornerWidthMm);
        json.WriteNumber("cornerHeightMm", sheet.CornerHeightMm);
        json.WriteNumber("stretchX", sheet.StretchX);
        json.WriteNumber("stretchY", sheet.StretchY);
        json.WriteNumber("xMm", sheet.X);
        json.WriteNumber("yMm", sheet.Y);
        json.WriteBoolean("showsAll", sheet.ShowsAll);
        json.Array("branches", sheet.Branches, (j, b) =>
        {
            j.WriteString("place", b.Place);
            j.WriteString("from", b.From);
            j.WriteString("turn", Word(b.Turn));
            j.WriteNumber("stemMm", b.StemMm);
            j.WriteNumber("holdMm", b.HoldMm);
        });
        json.Array("cards", sheet.Cards, (j, c) =>
        {
            j.WriteString("card", c.Card);
            j.WriteString("stand", c.Stand switch { CardStand.End => "end", CardStand.Lead => "lead", _ => "beside" });
            j.WriteString("side", Word(c.Side));
            j.WriteNumber("xMm", c.X);
            j.WriteNumber("yMm", c.Y);
            if (c.On is { } on)
            {
                j.WriteString("on", on);
            }

            if (c.Rib is { } rib)
            {
                j.WriteNumber("rib", rib);
                j.WriteString("ribTurn", Word(c.RibTurn));
                j.WriteNumber("stemMm", c.StemMm);
            }
        });
        json.Array("panels", sheet.Panels, (j, p) =>
        {
            j.WriteString("panel", p.Panel);
            j.WriteNumber("shape", p.Shape);
            j.WriteNumber("xMm", p.X);
            j.WriteNumber("yMm", p.Y);
            j.WriteNumber("inLineXMm", p.InLineX);
            j.WriteNumber("inLineYMm", p.InLineY);
        });
    }

    private static string Word(ChartTurn turn) => turn switch { ChartTurn.Left => "left", ChartTurn.Right => "right", _ => "straight" };
}
