using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>The layout's path behind a segment.</summary>
internal static class SegmentPaths
{
    public static Model.Path? PathOf(this RuleContext context, Segment segment) =>
        context.Harness.Layout.Paths.FirstOrDefault(p => (p.From == segment.From && p.To == segment.To) || (p.From == segment.To && p.To == segment.From));
}
