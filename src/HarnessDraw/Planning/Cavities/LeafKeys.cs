using HarnessDraw.Planning.Sizing;

namespace HarnessDraw.Planning.Cavities;

/// <summary>The place in leaf order that a wire at a mate leads to: of its far end, or the middle one of the ends behind its splice.</summary>
internal sealed class LeafKeys
{
    private readonly HarnessIndex index;
    private readonly LeafOrder order;

    public LeafKeys(RoutedHarness routed)
    {
        index = routed.Index;
        order = LeafOrder.Of(TreeMaker.Skeleton(routed.Tree), index.Harness);
    }

    public LeafOrder Order => order;

    public LeafSpan SpanOf(WireRow wire)
    {
        int[] ends = [.. wire.Net.Ends.Append(wire.Net.Root).Where(p => !index.IsMate(p)).Select(p => order.IndexOf(p.Thing)).Order()];
        return ends.Length == 0 ? new(double.MaxValue, double.MaxValue, double.MaxValue) : new(ends[0], ends[ends.Length / 2], ends[^1]);
    }
}

/// <summary>The first, the middle and the last place in leaf order of what a wire leads to.</summary>
internal readonly record struct LeafSpan(double Low, double Middle, double High);
