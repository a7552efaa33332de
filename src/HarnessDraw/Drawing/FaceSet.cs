using System.Collections.Immutable;

namespace HarnessDraw.Drawing;

/// <summary>A character as it is lettered: the face that has it, its glyph there, its advance and that of the fallback as parts of the height of capitals.</summary>
public sealed record Letter(int Face, int Glyph, double Advance, double PlanAdvance);

/// <summary>
/// The faces a drawing is lettered with, in order of preference: Latin, then Greek, Cyrillic and symbols, then what the
/// user brought. Never a face found by chance on the machine.
/// </summary>
public sealed class FaceSet
{
    private readonly ImmutableArray<Lazy<FontFile>> medium;
    private readonly ImmutableArray<Lazy<FontFile>> bold;

    // letters of Latin text, found once
    private readonly Letter?[] mediumLetters = new Letter?[MostKept];
    private readonly Letter?[] boldLetters = new Letter?[MostKept];
    private const int MostKept = 0x180;

    private FaceSet(ImmutableArray<Lazy<FontFile>> medium, ImmutableArray<Lazy<FontFile>> bold) => (this.medium, this.bold) = (medium, bold);

    /// <summary>The two faces that travel inside the program.</summary>
    public static FaceSet Shipped { get; } = new(
        [Load("AtkinsonHyperlegibleNext-Medium", "Atkinson Hyperlegible Next"), Load("Inter-Medium", "Inter")],
        [Load("AtkinsonHyperlegibleNext-Bold", "Atkinson Hyperlegible Next"), Load("Inter-Bold", "Inter")]);

    /// <summary>
    /// This set with a user's face after the others, used in both weights. Throws <see cref="InvalidDataException"/> when the
    /// file's tables lead outside the file.
    /// </summary>
    public FaceSet With(FontFile face)
    {
        ArgumentNullException.ThrowIfNull(face);
        face.Probe();
        var lazy = new Lazy<FontFile>(face);
        return new(medium.Add(lazy), bold.Add(lazy));
    }

    /// <summary>How many faces the set has.</summary>
    public int Count => medium.Length;

    /// <summary>The face at a place in the order of preference.</summary>
    public FontFile Face(FaceWeight weight, int index) => (weight == FaceWeight.Bold ? bold : medium)[index].Value;

    /// <summary>A character in the first face that has it; glyph 0 of the first face when none has it.</summary>
    public Letter LetterOf(FaceWeight weight, int codePoint)
    {
        var kept = weight == FaceWeight.Bold ? boldLetters : mediumLetters;
        return codePoint < kept.Length ? kept[codePoint] ??= Make(weight, codePoint) : Make(weight, codePoint);
    }

    /// <summary>A glyph of one face as a letter.</summary>
    public Letter LetterOf(FaceWeight weight, int face, int codePoint, int glyph)
    {
        var file = Face(weight, face);
        return new(face, glyph, file.Advance(glyph) / file.CapRatio, PlanWidths.Advance(codePoint, weight) / file.CapRatio);
    }

    private Letter Make(FaceWeight weight, int codePoint)
    {
        var (face, glyph) = Find(weight, codePoint);
        return LetterOf(weight, face, codePoint, glyph);
    }

    /// <summary>The first face that has the character and its glyph there; the first face and glyph 0 when none has it.</summary>
    public (int Index, int Glyph) Find(FaceWeight weight, int codePoint)
    {
        for (var i = 0; i < Count; i++)
        {
            var glyph = Face(weight, i).Glyph(codePoint);
            if (glyph != 0)
            {
                return (i, glyph);
            }
        }

        return (0, 0);
    }

    private static Lazy<FontFile> Load(string file, string family) => new(() =>
    {
        using var stream = typeof(FaceSet).Assembly.GetManifestResourceStream($"fonts/{file}.ttf")
            ?? throw new InvalidOperationException($"the face '{file}' is not in the program");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return new FontFile(bytes, family);
    });
}
