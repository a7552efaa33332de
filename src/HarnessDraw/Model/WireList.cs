using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Model;

/// <summary>An end in a wire list: a thing and its pin; a null pin is the thing as a whole (a stud).</summary>
public sealed record ListedEnd(string Thing, string? Pin);

/// <summary>A wire of a from-to list; what the list does not say, or says in a way that is not understood, is null.</summary>
public sealed record ListedWire(string Id, ListedEnd From, ListedEnd To)
{
    public string? Function { get; init; }
    public string? Colour { get; init; }

    /// <summary>With its unit: '1.5 mm2' or '16 AWG'.</summary>
    public string? Size { get; init; }
    public double? LengthMm { get; init; }
}

/// <summary>Wires from a list that somebody kept, how its columns were taken ('from: column 3 "From"'), and every row or value that found no place.</summary>
public sealed record WireList(ImmutableArray<ListedWire> Wires, ImmutableArray<string> Columns, ImmutableArray<Diagnostic> NotPlaced);
