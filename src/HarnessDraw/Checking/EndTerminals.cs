using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>The catalogue's terminals for the contact or stud that a wire ends at.</summary>
internal static class EndTerminals
{
    /// <summary>Size of the contact or thread of the stud; null for a lead, a splice or a pin without one.</summary>
    public static string? SizeOf(RuleContext context, WireEnd end) =>
        context.Thing(end.At) is not { } thing ? null : context.PartOf(thing)?.Cavities.FirstOrDefault(c => c.Name == end.Pin)?.Size ?? thing.Pins.FirstOrDefault(p => p.Name == end.Pin && p.Style != PinStyle.Lead)?.Size;

    /// <summary>Every terminal of that size, whatever wire it takes.</summary>
    public static ImmutableArray<TerminalPart> Of(RuleContext context, WireEnd end) =>
        SizeOf(context, end) is { } size ? [.. context.Harness.Catalogue.Terminals.Where(t => t.Size == size)] : [];

    /// <summary>Largest area that the terminals of all ends of these wires take, mm2; infinite where nothing bounds it.</summary>
    public static double LargestMm2(RuleContext context, IEnumerable<Wire> wires) =>
        wires.SelectMany(w => new[] { w.From, w.To }).Select(e => Fitting(context, e)).Where(t => !t.IsEmpty).Select(t => t.Max(one => one.MaxAreaMm2)).DefaultIfEmpty(double.PositiveInfinity).Min();

    // of that size and, in a body, of a family that locks there
    private static ImmutableArray<TerminalPart> Fitting(RuleContext context, WireEnd end) =>
        Of(context, end) is var all && BodyOf(context, end) is { } body && all.Where(t => body.TerminalFamilies.Contains(t.Family)).ToImmutableArray() is { IsEmpty: false } locking ? locking : all;

    /// <summary>The connector body that holds the end in a cavity; null for a stud, a blade or a lead.</summary>
    public static ConnectorPart? BodyOf(RuleContext context, WireEnd end) =>
        context.Thing(end.At) is { } thing && context.PartOf(thing) is { } part && part.Cavities.Any(c => c.Name == end.Pin) ? part : null;

    /// <summary>True when the area lies in the terminal's crimp range.</summary>
    public static bool Takes(this TerminalPart terminal, Wire wire)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        return wire.AreaMm2 >= terminal.MinAreaMm2 - 1e-9 && wire.AreaMm2 <= terminal.MaxAreaMm2 + 1e-9;
    }
}
