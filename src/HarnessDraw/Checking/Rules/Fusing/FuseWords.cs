using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Checking.Rules.Fusing;

/// <summary>What the rules of protection say and look up in common.</summary>
internal static class FuseWords
{
    public static SourceSpan? At(RuleContext context, string fuse) => context.Harness.Protections.FirstOrDefault(p => p.Id == fuse)?.At;

    /// <summary>Standard ratings of the fuse's kind, rising.</summary>
    public static double[] Ratings(RuleContext context, ProtectionKind kind) =>
        [.. context.Harness.Catalogue.Fuses.Where(s => s.Kind == kind).SelectMany(s => s.Ratings).Select(r => r.RatingA).Distinct().Order()];
}
