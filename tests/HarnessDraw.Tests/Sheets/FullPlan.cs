using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Reading;
using HarnessDraw.Tests.Model;

namespace HarnessDraw.Tests.Sheets;

/// <summary>One connector of every body in the shipped catalogue, each with a wire in every cavity, in colours that go round all codes and tracers.</summary>
internal static class FullPlan
{
    public static Plan Plan { get; } = Make();

    private static Plan Make()
    {
        var catalogue = CatalogueReader.BuiltIn;
        var things = catalogue.Connectors.Select(part => new Thing
        {
            Id = part.Id,
            Label = part.Id,
            Kind = part.IsBulkhead ? ThingKind.Mate : ThingKind.Inline,
            Place = "pass-through",
            ConnectorPart = part.Id,
            Pins = [.. part.Cavities.Select(c => new Pin(c.Name, PinStyle.Cavity, c.Size))],
        });
        var pins = catalogue.Connectors.SelectMany(part => part.Cavities.Select(c => (part.Id, c.Name))).ToList();
        var codes = ColourCodes.All.Select(c => c.Code).ToList();
        var wires = pins.Select((pin, i) => SmallPlan.Plan.Wires[0] with
        {
            Id = $"E{i + 1:00}",
            Circuit = "dipped beam",
            From = new(pin.Id, pin.Name) { Terminal = "tang-2.8-b" },
            To = new("headlamp left", "56b"),
            Colour = i % 3 == 0 ? codes[i % codes.Count] : $"{codes[i % codes.Count]}/{codes[(i + 5) % codes.Count]}",
        }).ToList();
        return SmallPlan.Plan with
        {
            Harness = SmallHarness.Harness with { Things = [.. things], Catalogue = catalogue },
            Wires = [.. wires],
            Splices = [],
            Cavities = [.. pins.Select((pin, i) => new CavityUse { Connector = pin.Id, Cavity = pin.Name, Wire = wires[i].Id })],
        };
    }
}
