using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

/// <summary>Sizes given by hand that their wire type does not have, metric or AWG.</summary>
internal sealed class SizeNotStocked : IDesignRule
{
    public RuleInfo Info { get; } = new("size-not-in-catalogue", "A size given by hand that its wire type does not have", Severity.Error, Consequence.DoesNotWork, "the catalogue's wire types",
        "Resistance, diameter and current of a size that is in no catalogue are guesses, and it cannot be bought; a gauge is never a metric size.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        from wire in context.Plan.Wires
        where wire.DecidedBy == "given by hand" && context.TypeOf(wire) is { Sizes.IsEmpty: false } && context.SizeOf(wire) is null
        group wire by (wire.ByHand ? wire.Id : wire.Circuit, wire.SizeLabel) into same
        select Found(context, [.. same]);

    private Finding Found(RuleContext context, List<Wire> wires)
    {
        var wire = wires[0];
        var type = context.TypeOf(wire)!;
        var given = wire.Awg is null ? Figure.Area(wire.AreaMm2) : $"{wire.SizeLabel}, which is {Figure.Area(wire.AreaMm2)}";
        var others = context.Harness.Catalogue.WireTypes.Where(t => t.Sizes.Any(s => wire.Awg is not null ? s.Awg == wire.Awg : s.Awg is null && s.Label == wire.SizeLabel)).Select(t => $"'wire-type: {t.Id}'").ToList();
        return context.Found(Info, $"{Wording.List(wires.Select(w => w.Named()))}: {given}{(wire.Awg is null ? "" : ",")} is given, but {type.Title} has no such size; the nearest it has: {Wording.List(Nearest(type, wire.AreaMm2).Select(Words))}.",
            $"Give a size of {type.Id}{(others.Count > 0 ? $", or name {Wording.List(others)} in the circuit" : "")}, or add the size with its maker's figures to a catalogue of your own.",
            [.. wires.Select(w => w.Id), wire.Circuit], wire.Builds, context.AtOf(wire));
    }

    private static IEnumerable<WireSize> Nearest(WireType type, double areaMm2) =>
        ((WireSize?[])[type.Sizes.Where(s => s.AreaMm2 <= areaMm2).MaxBy(s => s.AreaMm2), type.Sizes.Where(s => s.AreaMm2 > areaMm2).MinBy(s => s.AreaMm2)]).OfType<WireSize>();

    private static string Words(WireSize size) => size.Awg is null ? $"{size.Label} mm²" : $"{size.Label} ({Figure.Area(size.AreaMm2)})";
}
