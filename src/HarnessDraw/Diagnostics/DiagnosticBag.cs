using System.Collections.Immutable;

namespace HarnessDraw.Diagnostics;

/// <summary>Collects messages while a stage goes on; hands them out sorted by file, line and column.</summary>
public sealed class DiagnosticBag
{
    /// <summary>More messages than this help nobody; the last one then says how many were left out.</summary>
    public const int Most = 500;

    private readonly List<Diagnostic> _items = [];
    private readonly HashSet<Diagnostic> _seen = [];
    private readonly HashSet<string> _lostFiles = new(StringComparer.Ordinal);
    private readonly List<string> _doubtful = [];
    private int _leftOut;

    public bool HasErrors { get; private set; }

    public int Count => _items.Count;

    public void Add(Diagnostic diagnostic)
    {
        ArgumentNullException.ThrowIfNull(diagnostic);
        HasErrors |= diagnostic.Severity == Severity.Error;
        if (MayComeOfLoss(diagnostic) || !_seen.Add(diagnostic))
        {
            return;
        }

        if (_items.Count < Most)
        {
            _items.Add(diagnostic);
        }
        else
        {
            _leftOut++;
        }
    }

    /// <summary>
    /// This text of a file could not be read. From now on nothing is said that may only come of it: what a block of that file lacks, and names that stand in
    /// what is lost.
    /// </summary>
    public void Lose(string file, string text)
    {
        _lostFiles.Add(file);
        _doubtful.Add(text);
    }

    /// <summary>It is not known what is meant by the names in this text, for instance because two things have one, or what has it could not be read: nothing is said of references to them, nor of what they lack.</summary>
    public void Doubt(string text) => _doubtful.Add(text);

    /// <summary>True when this word stands in what could not be read or is not clear.</summary>
    public bool IsDoubtful(string word) => _doubtful.Exists(text => Stands(word, text));

    private bool MayComeOfLoss(Diagnostic diagnostic) => _doubtful.Count > 0 && diagnostic.Code switch
    {
        DiagnosticCodes.MissingKey or DiagnosticCodes.NoReturn or DiagnosticCodes.NothingToFeed or DiagnosticCodes.NotBuildable or DiagnosticCodes.NotACable
            or DiagnosticCodes.UnknownNotAllowed => diagnostic.At is null || _lostFiles.Contains(diagnostic.At.File) || QuotedWords(diagnostic.Message).Any(IsDoubtful),
        DiagnosticCodes.UnknownName or DiagnosticCodes.UnknownPin or DiagnosticCodes.UnknownChoice or DiagnosticCodes.WrongKind =>
            QuotedWords(diagnostic.Message).Any(IsDoubtful),
        _ => false,
    };

    private static IEnumerable<string> QuotedWords(string message) => message.Split('\'').Where((_, i) => i % 2 == 1);

    // as a name of its own, not within another word
    private static bool Stands(string word, string text)
    {
        for (var at = text.IndexOf(word, StringComparison.Ordinal); at >= 0 && word.Length > 0; at = text.IndexOf(word, at + 1, StringComparison.Ordinal))
        {
            if ((at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (at + word.Length == text.Length || !char.IsLetterOrDigit(text[at + word.Length])))
            {
                return true;
            }
        }

        return false;
    }

    public void Error(string code, string message, SourceSpan? at, string? hint = null, SourceSpan? other = null) =>
        Add(new Diagnostic(code, Severity.Error, message, at) { Hint = hint, Other = other });

    public void Warning(string code, string message, SourceSpan? at, string? hint = null, SourceSpan? other = null) =>
        Add(new Diagnostic(code, Severity.Warning, message, at) { Hint = hint, Other = other });

    public void AddRange(IEnumerable<Diagnostic> diagnostics)
    {
        ArgumentNullException.ThrowIfNull(diagnostics);
        foreach (var diagnostic in diagnostics)
        {
            Add(diagnostic);
        }
    }

    public ImmutableArray<Diagnostic> ToSorted()
    {
        var sorted = _items
            .Select((d, order) => (d, order))
            .OrderBy(x => x.d.At?.File ?? "", StringComparer.Ordinal)
            .ThenBy(x => x.d.At?.Line ?? 0)
            .ThenBy(x => x.d.At?.Column ?? 0)
            .ThenBy(x => x.order)
            .Select(x => x.d)
            .ToImmutableArray();
        return _leftOut == 0
            ? sorted
            : sorted.Add(new Diagnostic(DiagnosticCodes.TooManyMessages, Severity.Error, $"{_leftOut} more messages are left out", null) { Hint = "mend the ones above first" });
    }
}
