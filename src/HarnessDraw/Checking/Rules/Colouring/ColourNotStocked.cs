using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Colouring;

internal sealed class ColourNotStocked : IDesignRule
{
    public RuleInfo Info { get; } = new("colour-not-stocked", "Colour that the wire family is not stocked in", Severity.Advice, Consequence.Untidy, "the wire family's own catalogue row",
        "What is not on the shelf is replaced by what is, and the sheet is wrong.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var missing = context.Plan.Wires.Where(w => context.TypeOf(w) is { Colours.IsEmpty: false } t && !t.Colours.Contains(w.Colour) && !t.Colours.Contains(TiredColours.Split(w.Colour).Base)).ToList();
        if (missing.Count > 0)
        {
            yield return context.Found(Info, $"Not stocked: {Wording.List(missing.Select(w => $"{w.Colour} {w.SizeLabel} ({w.Id})"))}.", "Use a stocked colour, or a sleeve, and say so on the sheet.", missing.Select(w => w.Id));
        }
    }
}
