using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class RingNotItsStud : IDesignRule
{
    public RuleInfo Info { get; } = new("ring-not-its-stud", "Ring of another size than its stud", Severity.Error, Consequence.Fire, "FAA AC 43.13-1B chapter 11",
        "A ring too large sits on its edge and burns; one too small does not go on.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        PlannedEnd.Of(context.Plan)
            .Select(e => (End: e, Terminal: context.Terminal(e.End.Terminal), Pin: context.Thing(e.End.At)?.Pins.FirstOrDefault(p => p.Name == e.End.Pin)))
            .Where(p => p is { Terminal: not null, Pin.Style: PinStyle.Stud } && (!p.Terminal!.Ring || p.Terminal.Size != p.Pin!.Size))
            .Select(p => context.Found(Info, $"{(p.Terminal!.Ring ? $"{p.Terminal.Size} ring" : $"Terminal {p.Terminal.Id}")} on the {p.Pin!.Size} stud {PointWords.Of(p.End.End)} (wire {p.End.Wire.Named()}).", $"Use an {p.Pin.Size} ring that takes the wire.",
                [p.End.End.ToString(), p.End.Wire.Id], p.End.Wire.Builds, context.Thing(p.End.End.At)?.At));
}
