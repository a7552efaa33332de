using System.Collections.Immutable;
using HarnessDraw.Checking;
using HarnessDraw.Planning;

namespace HarnessDraw.Writing.Findings;

/// <summary>Findings as text for people, as JSON and as SARIF 2.1.0 for programs.</summary>
public static class FindingsWriter
{
    /// <summary>One block a finding, the passes closest to their limits, and a last line that counts. Lines end with a line feed.</summary>
    public static string Text(ImmutableArray<Finding> findings, ImmutableArray<Margin> closest, RuleSettings settings) => FindingsText.Write(findings, closest, settings);

    /// <summary>The findings as UTF-8 JSON, two spaces deep.</summary>
    public static byte[] Json(ImmutableArray<Finding> findings, ImmutableArray<Margin> closest, RuleSettings settings) => FindingsJson.Write(findings, closest, settings);

    /// <summary>The findings as a SARIF 2.1.0 log (OASIS standard) with one run and the metadata of every rule.</summary>
    public static byte[] Sarif(ImmutableArray<Finding> findings, string version) => FindingsSarif.Write(findings, version);
}
