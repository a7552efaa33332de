using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Model;

/// <summary>A picture or font file that a description or layout names beside itself, whole. <paramref name="At"/> is where it is named.</summary>
public sealed record BroughtFile(string Path, ImmutableArray<byte> Bytes, SourceSpan At);
