using System.Collections.Immutable;

namespace HarnessDraw.Diagnostics;

/// <summary>A stretch of text in an input file; line and column are 1-based, the length is in characters.</summary>
public sealed record SourceSpan(string File, int Line, int Column, int Length = 1);

/// <summary>How much a message or a finding matters.</summary>
public enum Severity
{
    /// <summary>Good to know.</summary>
    Advice,
    /// <summary>Build only with a written reason.</summary>
    Warning,
    /// <summary>Do not build.</summary>
    Error,
}

/// <summary>A message about the input: what is wrong, where, what was expected and, for a mistyped name, the nearest one.</summary>
public sealed record Diagnostic(string Code, Severity Severity, string Message, SourceSpan? At)
{
    public string? Hint { get; init; }
    public SourceSpan? Other { get; init; }
}

/// <summary>A result that may be missing, with everything that was said on the way.</summary>
public sealed record Outcome<T>(T? Value, ImmutableArray<Diagnostic> Diagnostics)
    where T : class
{
    public bool Failed => Value is null || Diagnostics.Any(d => d.Severity == Severity.Error);
}
