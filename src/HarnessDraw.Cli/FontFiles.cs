using HarnessDraw.Drawing;

namespace HarnessDraw.Cli;

/// <summary>Faces that the user names; never one found by chance on the machine.</summary>
internal static class FontFiles
{
    public static FaceSet With(string? file)
    {
        if (file is null)
        {
            return FaceSet.Shipped;
        }

        try
        {
            return FaceSet.Shipped.With(new FontFile(File.ReadAllBytes(file), Path.GetFileNameWithoutExtension(file)));
        }
        catch (Exception e) when (e is InvalidDataException or IndexOutOfRangeException or ArgumentException)
        {
            throw new IOException($"'{file}' is not a font that can be used: {e.Message}", e);
        }
    }
}
