using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Model;

/// <summary>A wire's length as it was cut, mm.</summary>
public sealed record MeasuredWire(string Wire, double CutMm, SourceSpan At);

/// <summary>A way between two places of the layout as it was measured on the vehicle or the built harness, mm.</summary>
public sealed record MeasuredRun(string From, string To, double LengthMm, SourceSpan At);

/// <summary>Lengths as built, from the file beside a description; they go before what was planned or estimated.</summary>
public sealed record AsBuilt(ImmutableArray<MeasuredWire> Wires, ImmutableArray<MeasuredRun> Runs);
