using System.Text.Json;
using HarnessDraw.Model;

namespace HarnessDraw.Reading.Frozen;

/// <summary>Reads the part of NAME.frozen.json that says how the wall chart was laid out.</summary>
internal static class FrozenChartReader
{
    public static FrozenChart Read(JsonElement chart) => new(Text(chart, "paper"), [.. chart.GetProperty("sheets").EnumerateArray().Select(Sheet)]);

    private static FrozenChartSheet Sheet(JsonElement sheet) => new()
    {
        Circuits = [.. sheet.GetProperty("circuits").EnumerateArray().Select(c => c.GetString() ?? "")],
        NameMm = Number(sheet, "nameMm"),
        ColumnMm = Number(sheet, "columnMm"),
        OneSideMm = Number(sheet, "oneSideMm"),
        StacksAtEnds = sheet.GetProperty("stacksAtEnds").GetBoolean(),
        TableShare = Number(sheet, "tableShare"),
        CornerWidthMm = Number(sheet, "cornerWidthMm"),
        CornerHeightMm = Number(sheet, "cornerHeightMm"),
        StretchX = Number(sheet, "stretchX"),
        StretchY = Number(sheet, "stretchY"),
        X = Number(sheet, "xMm"),
        Y = Number(sheet, "yMm"),
        ShowsAll = sheet.GetProperty("showsAll").GetBoolean(),
        Branches = [.. sheet.GetProperty("branches").EnumerateArray().Select(b => new FrozenBranch(Text(b, "place"), Text(b, "from"), Turn(b, "turn"), Number(b, "stemMm"), Number(b, "holdMm")))],
        Cards = [.. sheet.GetProperty("cards").EnumerateArray().Select(Card)],
        Panels = [.. sheet.GetProperty("panels").EnumerateArray().Select(p => new FrozenPanel(Text(p, "panel"), p.GetProperty("shape").GetInt32(), Number(p, "xMm"), Number(p, "yMm")) { InLineX = Number(p, "inLineXMm"), InLineY = Number(p, "inLineYMm") })],
    };

    private static FrozenCard Card(JsonElement card)
    {
        var stand = Text(card, "stand") switch { "beside" => CardStand.Beside, "end" => CardStand.End, "lead" => CardStand.Lead, _ => throw new FormatException() };
        var isOnRib = card.TryGetProperty("rib", out var rib);
        return new(Text(card, "card"), stand, Turn(card, "side"), Number(card, "xMm"), Number(card, "yMm"))
        {
            On = card.TryGetProperty("on", out var on) ? on.GetString() : null,
            Rib = isOnRib ? rib.GetInt32() : null,
            RibTurn = isOnRib ? Turn(card, "ribTurn") : ChartTurn.Straight,
            StemMm = isOnRib ? Number(card, "stemMm") : 0,
        };
    }

    private static ChartTurn Turn(JsonElement element, string name) => Text(element, name) switch
    {
        "left" => ChartTurn.Left,
        "straight" => ChartTurn.Straight,
        "right" => ChartTurn.Right,
        _ => throw new FormatException(),
    };

    // a file that was edited may hold anything
    private static double Number(JsonElement element, string name) => element.GetProperty(name).GetDouble() is var number && Math.Abs(number) < 1e6 ? number : throw new FormatException();

    private static string Text(JsonElement element, string name) => element.GetProperty(name).GetString() ?? "";
}
