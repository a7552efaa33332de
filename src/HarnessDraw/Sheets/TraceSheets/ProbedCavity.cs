using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.TraceSheets;

/// <summary>A small picture of a connector's mating side with one cavity marked: where the probe goes.</summary>
internal sealed record ProbedCavity(ConnectorPart Part, CavityPart Cavity)
{
    /// <summary>The cavity of a point 'thing.pin'; null where it is no plug.</summary>
    public static ProbedCavity? Of(Plan plan, string node)
    {
        foreach (var thing in plan.Harness.Things.Where(t => t.ConnectorPart is not null && node.StartsWith(t.Id + ".", StringComparison.Ordinal)))
        {
            var name = node[(thing.Id.Length + 1)..];
            var cavity = thing.Pins.FirstOrDefault(p => p.Name == name)?.Cavity ?? name;
            if (plan.Harness.Catalogue.Connectors.FirstOrDefault(c => c.Id == thing.ConnectorPart) is { } part && part.Cavities.FirstOrDefault(c => c.Name == cavity) is { } found)
            {
                return new(part, found);
            }
        }

        return null;
    }

    /// <summary>Fits the body into the box, latch up; positions mirror as the probe sees them.</summary>
    public void Paint(Pen pen, Box box)
    {
        var scale = Math.Min(box.Width / Part.WidthMm, (box.Height - 1.2) / Part.HeightMm);
        var (width, height) = (Part.WidthMm * scale, Part.HeightMm * scale);
        var body = new Box(box.Centre.X - (width / 2), box.Centre.Y - (height / 2) + 0.5, width, height);
        pen.Frame(new Box(body.Centre.X - 1.4, body.Y - 1.1, 2.8, 1.1), 0.25);
        pen.Frame(body, 0.35, Math.Min(0.8, height / 5), fill: Ink.Paper);
        foreach (var other in Part.Cavities.Length <= 8 ? Part.Cavities : [])
        {
            pen.Add(new PathItem(Outline.Circle(Place(body, scale, other), 0.5)) { Fill = Ink.Paper, Stroke = new(Ink.Black, 0.18) });
        }

        pen.Add(new PathItem(Outline.Circle(Place(body, scale, Cavity), 0.9)) { Fill = Ink.Black });
    }

    private Point Place(Box body, double scale, CavityPart cavity) => new(body.Right - (cavity.Xmm * scale), body.Y + (cavity.Ymm * scale));
}
