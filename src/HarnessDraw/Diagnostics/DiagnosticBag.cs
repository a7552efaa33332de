using System.Collections.Immutable;

namespace HarnessDraw.Diagnostics;

/// <summary>Collects messages while a stage goes on; hands them out sorted by file, line and column.</summary>
public sealed class DiagnosticBag
{
    /// <summary>More messages than this help nobody; the last one then says how many were left out.</summary>
    public const int Most = 500;

    private readonly List<Diagnostic> _items = [];
    private readonly HashSet<Diagnostic> _seen = [];
    private int _leftOut;

    public bool HasErrors { get; private set; }

    public int Count => _items.Count;

    public void Add(Diagnostic diagnostic)
    {
        ArgumentNullException.ThrowIfNull(diagnostic);
        HasErrors |= diagnostic.Severity == Severity.Error;
        if (!_seen.Add(diagnostic))
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
