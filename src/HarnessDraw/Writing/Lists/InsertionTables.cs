using HarnessDraw.Drawing;
using HarnessDraw.Fabrication;
using HarnessDraw.Fabrication.Supplies;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Writing.Lists;

/// <summary>Lists for the bench where wires meet: connectors cavity by cavity, splices, labels.</summary>
public static class InsertionTables
{
    /// <summary>Every cavity of every connector in order, with boxes for the click and the tug.</summary>
    public static ListTable ByConnector(Plan plan) => new TableShape<InsertionRow>()
        .Number("no", 0, r => r.Number)
        .Text("connector", r => r.Connector)
        .Text("side", r => r.Side == Side.Bay ? "bay" : "cabin")
        .Text("part", r => r.ConnectorPart)
        .Text("cavity", r => r.Cavity)
        .Text("wire", r => r.Row?.Wire.Id)
        .Text("end", r => r.End?.ToString())
        .Text("only_with", r => r.Row?.Wire.Builds.ToString())
        .Text("colour", r => r.Row?.Wire.Colour)
        .Text("colour_words", r => r.Row is null ? null : WireColour.TryParse(r.Row.Wire.Colour)?.Words ?? r.Row.Wire.Colour)
        .Number("size_mm2", 3, r => r.Row?.Wire.AreaMm2)
        .Text("size_awg", r => r.Row?.Wire.Awg)
        .Number("cut_mm", 1, r => r.Row?.Wire.CutLengthMm)
        .Text("terminal", r => r.At?.Terminal)
        .Text("seal", r => r.At?.Seal)
        .Number("strip_mm", 1, r => r.At?.StripMm)
        .Text("thread_on_first", r => r.At is null ? null : string.Join("; ", r.At.ThreadOnFirst))
        .Text("plug", r => r.Plug)
        .Text("function", r => r.Row?.Wire.Circuit)
        .Ticks("tick_click", "tick_tug")
        .Table("insertion", "Insertion list: connectors cavity by cavity", InsertionRows.Of(plan));

    /// <summary>Every splice with its station, its wires and its sleeve.</summary>
    public static ListTable Splices(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new TableShape<Splice>()
            .Text("splice", s => s.Id)
            .Text("function", s => s.Circuit)
            .Text("segment", s => s.Segment)
            .Number("at_mm", 1, s => s.AtMm)
            .Number("station_mm", 1, s => s.StationMm)
            .Text("wires", s => string.Join("; ", s.Wires))
            .Number("copper_mm2", 2, s => plan.Wires.Where(w => s.Wires.Contains(w.Id)).Sum(w => w.AreaMm2))
            .Text("part", s => s.Part)
            .Number("strip_mm", 1, s => plan.Harness.Catalogue.Splices.FirstOrDefault(p => p.Id == s.Part)?.StripMm)
            .Text("sleeve", s => SpliceSleeve.For(plan, s)?.Id)
            .Number("sleeve_mm", 0, _ => SpliceSleeve.LengthMm)
            .Text("sealed", s => plan.Harness.Catalogue.Splices.FirstOrDefault(p => p.Id == s.Part) is { } part ? part.Sealed ? "yes" : "no" : null)
            .Text("only_with", s => s.Builds.ToString())
            .Ticks("tick_crimped", "tick_tug", "tick_sleeved")
            .Table("splices", "Splices by segment and station", plan.Splices.OrderBy(s => s.Segment, NaturalOrder.Instance).ThenBy(s => s.AtMm).ThenBy(s => s.Id, NaturalOrder.Instance));
    }

    /// <summary>What each build fits, leaves off, removes or caps.</summary>
    public static ListTable Builds(Plan plan) => new TableShape<BuildStep>()
        .Text("build", s => s.Build)
        .Text("usual", s => s.IsUsual ? "yes" : "no")
        .Text("do", s => s.What)
        .Text("wire", s => s.Wire.Id)
        .Text("function", s => s.Wire.Circuit)
        .Text("end_a", s => s.Wire.From.ToString())
        .Text("end_b", s => s.Wire.To.ToString())
        .Text("only_with", s => s.Wire.Builds.ToString())
        .Ticks("tick_done")
        .Table("builds", "Fit, leave off, remove and cap, build by build", BuildSteps.Of(plan));

    /// <summary>One row a label, for label printers: three lines, how many, the sleeve, in the order of putting on.</summary>
    public static ListTable Labels(FabricationOrder order) => new TableShape<WireLabel>()
        .Text("line_1", l => l.Wire)
        .Text("line_2", l => l.GoesTo)
        .Text("line_3", l => l.Function)
        .Text("wire", l => l.Wire)
        .Text("end", l => l.End.ToString())
        .Number("copies", 0, l => l.Copies)
        .Number("wire_outside_mm", 2, l => l.OutsideMm)
        .Number("sleeve_bore_mm", 1, l => l.Sleeve?.BoreMm)
        .Number("sleeve_flat_mm", 1, l => l.Sleeve?.FlatMm)
        .Number("within_mm_of_end", 0, l => l.AtMm)
        .Number("more_where_open", 0, l => l.BetweenIfOpen)
        .Table("labels", "Wire labels, two a wire, in the order they are put on", WireLabels.Of(order));

    /// <summary>Cables with their conductors, which have rows of their own in the cut list.</summary>
    public static ListTable Cables(FabricationOrder order) => new TableShape<CableRow>()
        .Text("cable", c => c.Cable.Id)
        .Text("function", c => c.Circuit)
        .Text("conductors", c => string.Join("; ", c.Conductors.Select(w => $"{w.Id} {w.Colour}")))
        .Number("twist_pitch_mm", 1, c => c.Cable.TwistPitchMm)
        .Text("screened", c => c.Cable.Screened ? "yes" : "no")
        .Text("screen_grounded_at", c => c.Cable.ScreenGroundedAt?.ToString())
        .Number("cut_mm", 1, c => c.CutMm)
        .Number("qty", 0, c => c.Conductors.Max(w => order.QuantityOf(w.Builds)))
        .Ticks("tick_twisted", "tick_screen_one_end")
        .Table("cables", "Cables; each conductor has its own row in the cut list", CableRows.Of(order.Shown));
}
