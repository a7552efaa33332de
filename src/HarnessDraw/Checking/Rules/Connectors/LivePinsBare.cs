using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class LivePinsBare : IDesignRule
{
    public RuleInfo Info { get; } = new("live-pins-bare", "Always-live contacts are bare pins when unplugged", Severity.Warning, Consequence.Fire, "common practice, no source",
        "The half that stays live must be the one with sockets: a pin touches the body.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Connectors.Where(c => c.Thing.Contacts == ContactGender.Pins && c.Side == Side.Bay)
            .Select(c => (Connector: c, Live: c.Wires.Where(w => w.End == w.Wire.To && context.Circuit(w.Wire.Circuit) is { LiveWith: KeyPosition.Off, IsReturn: false }).ToList()))
            .Where(p => p.Live.Count > 0)
            .Select(p => context.Found(Info, $"With {p.Connector.Thing.Id} unplugged, {Wording.List(p.Live.Select(w => $"{w.Cavity} ({w.Wire.Named()})"))} {(p.Live.Count == 1 ? "is a bare live pin" : "are bare live pins")}.", "Give the live half sockets.",
                [p.Connector.Thing.Id, .. p.Live.Select(w => w.Wire.Id)], at: p.Connector.Thing.At));
}
