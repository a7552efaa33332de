using HarnessDraw.Drawing;
using HarnessDraw.Writing.Png;

namespace HarnessDraw.Tests.Sheets;

/// <summary>Writes sheets as pictures into the folder that HARNESSDRAW_PICTURES names, to be looked at; does nothing without it.</summary>
internal static class SheetPictures
{
    public static void Put(string name, IEnumerable<Sheet> sheets)
    {
        if (Environment.GetEnvironmentVariable("HARNESSDRAW_PICTURES") is not { Length: > 0 } folder)
        {
            return;
        }

        Directory.CreateDirectory(folder);
        foreach (var sheet in sheets)
        {
            File.WriteAllBytes(Path.Combine(folder, $"{name}.{sheet.Name}.{sheet.Number ?? 1}{(sheet.BlackInk ? ".black" : "")}.png"), PngWriter.Write(sheet, 150));
        }
    }
}
