using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Reads what stays on the cabin side: the kept pin-out and the values assumed.</summary>
internal sealed class KeptReader(Draft draft, PinResolver pins)
{
    public ImmutableArray<KeptPin> ReadPins() =>
        [.. draft.Blocks("pins", Kept()).Select(p => ReadPin(p.Name, p.Map)).OfType<KeptPin>()];

    public Assumptions ReadAssumptions()
    {
        var usual = new Assumptions();
        return Kept().Map("assume") is not { } assume
            ? usual
            : new Assumptions
            {
                ContactOhm = assume.Number("contact") ?? usual.ContactOhm,
                SwitchOhm = assume.Number("switch") ?? usual.SwitchOhm,
                RelayContactOhm = assume.Number("relay-contact") ?? usual.RelayContactOhm,
                GroundJointOhm = assume.Number("ground-joint") ?? usual.GroundJointOhm,
            };
    }

    private InputMap Kept() => draft.Root.Map("kept") ?? new InputMap([], draft.Root.At);

    private KeptPin? ReadPin(InputText name, InputMap map)
    {
        if (Cavity(name) is not var (mate, cavity))
        {
            return null;
        }

        return new KeptPin
        {
            Connector = mate.Id,
            Cavity = cavity,
            ComesFrom = map.TextNode("comes-from") is { } from ? Source(from) : null,
            Through = [.. map.TextNodes("through").Select(t => draft.ThingNamed(t, "thing")).OfType<Thing>().Select(t => t.Id)],
            Colour = ColourText.Read(map.TextNode("colour"), draft.Bag),
            AddsOhm = map.Number("adds"),
            At = name.At,
        };
    }

    // a protection by its bare name, anything else by its pin
    private string? Source(InputText from) =>
        pins.Resolve(from, PinUse.Source) is { } pin ? draft.Thing(pin.Thing)!.Kind == ThingKind.Fuse ? pin.Thing : pin.ToString() : null;

    // 'B9', or 'firewall.B9' where there are several mates
    private (Thing Mate, string Cavity)? Cavity(InputText name)
    {
        Thing[] mates = [.. draft.Things.Where(t => t.Kind == ThingKind.Mate)];
        var dot = name.Value.LastIndexOf('.');
        var mate = dot > 0 ? mates.FirstOrDefault(m => m.Id == name.Value[..dot]) : mates.Length == 1 ? mates[0] : null;
        var cavity = dot > 0 ? name.Value[(dot + 1)..] : name.Value;
        if (mate is null)
        {
            draft.Bag.Error(DiagnosticCodes.UnknownName, $"it is not clear which mate has the kept cavity '{name.Value}'", name.At, mates.Length == 0 ? "there is no mate at all" : $"write '{mates[0].Id}.{cavity}'");
            return null;
        }

        string[] cavities = [.. mate.Pins.Select(p => p.Name)];
        if (cavities.Contains(cavity))
        {
            return (mate, cavity);
        }

        draft.PinError(mate.Id, $"'{mate.Id}' has no cavity '{cavity}'", name.At, NearestName.Hint(cavity, cavities) ?? NameRules.Listed(cavities, "cavity"), mate.At);
        return null;
    }
}
