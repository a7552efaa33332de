using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Troubleshooting;

/// <summary>What kind of note.</summary>
public enum NoteKind
{
    Works,
    Dim,
    Dead,
    AlwaysOn,

    /// <summary>Volts at a point against the battery's grounded post.</summary>
    Volts,

    /// <summary>Volts between the battery's live post and a point.</summary>
    Lost,

    /// <summary>A renewed fuse holds or opens.</summary>
    Fuse,

    /// <summary>A point that cannot be reached in a state.</summary>
    Skip,
}

/// <summary>
/// One thing noted at the vehicle: a load, point or fuse by <paramref name="Name"/>; the state, or null for every state where it matters; volts for readings, 1 or 0 for
/// a fuse that holds or opens.
/// </summary>
public sealed record VehicleNote(NoteKind Kind, string Name, string? State, double Value)
{
    public SourceSpan? At { get; init; }

    /// <summary>As it stands in a file of notes.</summary>
    public override string ToString()
    {
        var at = State is null ? "" : $" @ {State}";
        return Kind switch
        {
            NoteKind.Works => $"works: {Name}{at}",
            NoteKind.Dim => $"dim: {Name}{at}",
            NoteKind.Dead => $"dead: {Name}{at}",
            NoteKind.AlwaysOn => $"always on: {Name}{at}",
            NoteKind.Volts => FormattableString.Invariant($"volts: {Name}{at} = {Value:0.###} V"),
            NoteKind.Lost => FormattableString.Invariant($"lost: {Name}{at} = {Value:0.###} V"),
            NoteKind.Fuse => $"fuse: {Name}{at} = {(Value > 0 ? "holds" : "opens")}",
            _ => $"skip: {Name}{at}",
        };
    }
}

/// <summary>Reads notes: a line each, 'dead: headlamp left @ night', 'volts: fan.1 @ running = 11.9 V', 'fuse: K11 = opens'; '#' begins a remark.</summary>
public static class NotesReader
{
    private static readonly ImmutableArray<(string Word, NoteKind Kind)> Words =
    [
        ("works", NoteKind.Works), ("dim", NoteKind.Dim), ("dead", NoteKind.Dead), ("always on", NoteKind.AlwaysOn), ("volts", NoteKind.Volts), ("lost", NoteKind.Lost),
        ("fuse", NoteKind.Fuse), ("skip", NoteKind.Skip),
    ];

    /// <param name="text">The file's text.</param>
    /// <param name="file">Its name, for messages.</param>
    public static (ImmutableArray<VehicleNote> Notes, ImmutableArray<Diagnostic> Diagnostics) Read(string text, string file)
    {
        ArgumentNullException.ThrowIfNull(text);
        var notes = ImmutableArray.CreateBuilder<VehicleNote>();
        var diagnostics = ImmutableArray.CreateBuilder<Diagnostic>();
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i].Trim();
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            var (note, problem, hint) = Line(line);
            var at = new SourceSpan(file, i + 1, lines[i].Length - lines[i].TrimStart().Length + 1, line.Length);
            if (note is null)
            {
                diagnostics.Add(new(DiagnosticCodes.NoteForm, Severity.Error, problem!, at) { Hint = hint });
            }
            else
            {
                notes.Add(note with { At = at });
            }
        }

        return (notes.ToImmutable(), diagnostics.ToImmutable());
    }

    /// <summary>One note of a kind from what stands behind the colon, or what is wrong with it.</summary>
    public static (VehicleNote? Note, string? Problem) One(NoteKind kind, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var (rest, value) = (text.Trim(), 0.0);
        if (kind is NoteKind.Volts or NoteKind.Lost or NoteKind.Fuse)
        {
            var at = rest.LastIndexOf('=');
            if (at < 0)
            {
                return (null, $"'{text}' has no '=': expected {(kind == NoteKind.Fuse ? "'K11 = holds' or 'K11 = opens'" : "'POINT @ STATE = 11.9 V'")}");
            }

            var figure = rest[(at + 1)..].Trim();
            rest = rest[..at].Trim();
            if (kind == NoteKind.Fuse)
            {
                if (figure is not ("holds" or "opens"))
                {
                    return (null, $"a fuse 'holds' or 'opens', not '{figure}'");
                }

                value = figure == "holds" ? 1 : 0;
            }
            else if (!TryVolts(figure, out value))
            {
                return (null, $"'{figure}' is no voltage: expected a number with V or mV, as '11.9 V'");
            }
        }

        var state = rest.IndexOf('@', StringComparison.Ordinal);
        var (name, where) = state < 0 ? (rest, null) : (rest[..state].Trim(), rest[(state + 1)..].Trim());
        return name.Length == 0 ? (null, "there is no name before '@' or '='") : (new(kind, name, string.IsNullOrEmpty(where) ? null : where, value), null);
    }

    public static bool TryVolts(string text, out double volts)
    {
        ArgumentNullException.ThrowIfNull(text);
        var figure = text.Trim();
        var factor = 1.0;
        if (figure.EndsWith("mV", StringComparison.Ordinal))
        {
            (figure, factor) = (figure[..^2], 0.001);
        }
        else if (figure.EndsWith('V'))
        {
            figure = figure[..^1];
        }

        var known = double.TryParse(figure.Trim(), System.Globalization.CultureInfo.InvariantCulture, out volts) && double.IsFinite(volts);
        volts *= factor;
        return known;
    }

    private static (VehicleNote? Note, string? Problem, string? Hint) Line(string line)
    {
        var colon = line.IndexOf(':', StringComparison.Ordinal);
        var word = colon < 0 ? line : line[..colon].Trim();
        if (colon < 0 || Words.FirstOrDefault(w => w.Word == word) is not { Word: not null } known)
        {
            return (null, $"'{word}' is no kind of note: expected {string.Join(", ", Words.Select(w => w.Word + ":"))}", NearestName.Hint(word, Words.Select(w => w.Word)));
        }

        var (note, problem) = One(known.Kind, line[(colon + 1)..]);
        return (note, problem, null);
    }
}
