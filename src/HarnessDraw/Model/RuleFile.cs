using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Model;

/// <summary>A word or value of a file with its place.</summary>
public sealed record PlacedText(string Value, SourceSpan At);

/// <summary>A limit of a rule as typed, unit and all.</summary>
public sealed record RuleLimitEntry(PlacedText Limit, PlacedText Value);

/// <summary>What a rule file says about one rule; nothing is looked up yet.</summary>
public sealed record RuleEntry(PlacedText Rule, PlacedText? Severity, ImmutableArray<RuleLimitEntry> Limits);

/// <summary>A rule file as typed: severities and limits to change.</summary>
public sealed record RuleFile(string File, ImmutableArray<RuleEntry> Rules);
