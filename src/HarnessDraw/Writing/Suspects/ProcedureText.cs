using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using HarnessDraw.Troubleshooting;

namespace HarnessDraw.Writing.Suspects;

/// <summary>Procedures as text: hunting a short, wiggling for a fault that comes and goes, limits of what may be lost.</summary>
public static class ProcedureText
{
    public static string Of(ShortHunt hunt)
    {
        ArgumentNullException.ThrowIfNull(hunt);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"SHORT BEHIND FUSE {hunt.Fuse}\n");
        text.Append(CultureInfo.InvariantCulture, $"1. Fuse out. A {hunt.LampW:0} W lamp ({hunt.LampA:0.0} A at most) in its place: bright means a dead short, dim the usual load. Never a larger fuse.\n");
        text.Append(CultureInfo.InvariantCulture, $"2. Everything off. Bright: the short lies before the switches. Dark: bring about {(hunt.States.IsEmpty ? "each state" : string.Join(", ", hunt.States.Select(s => $"'{s}'")))} until it is bright; the short lies behind what that switches on.\n");
        var number = 3;
        foreach (var step in hunt.Steps)
        {
            var behind = string.Join(", ", step.WiresBehind.Select(w => $"wire {w}").Concat(step.LoadsBehind));
            text.Append(CultureInfo.InvariantCulture, $"{number++}. Unplug {step.Thing} ({step.Where}, {step.Minutes:0.#} min). Lamp out or dim: the short is in {behind}. Still bright: leave it unplugged and go on.\n");
        }

        var left = string.Join(", ", hunt.Left.Select(w => $"wire {w}"));
        text.Append(CultureInfo.InvariantCulture, $"{number}. Still bright: the short is in {(left.Length > 0 ? $"{left}: look where the bundle passes edges, moves or is clipped" : "none of the wires: look at the fuse's holder")}. What was unplugged is sound.\n");
        return text.Append("CAUTION: battery off before you part a connector; plug everything in again and measure before the fuse goes back.\n").ToString();
    }

    public static string Of(WiggleOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"COMES AND GOES: {order.Load}\n");
        text.Append(CultureInfo.InvariantCulture, $"Watch volts at {order.Watch.Called} ({order.Watch.Where}) in state '{order.State}', load on: {order.ExpectedV:0.0} V. Where they jump is the fault. Use the meter's shortest time or a 21 W lamp beside the load.\n");
        var number = 1;
        foreach (var step in order.Steps)
        {
            text.Append(CultureInfo.InvariantCulture, $"{number++}. {step.Part}, {step.Where} ({100 * step.Probability:0} %, {step.Minutes:0.#} min): {step.Why}\n");
        }

        text.Append("Volts that do not move while the load fails: the fault is on the other side of the point (the load, its contact, its ground).\n");
        return text.Append("CAUTION: hands and leads away from belts and fans; hot air at a hand's width, never a flame; no water on electronics or ignition.\n").ToString();
    }

    public static string Limits()
    {
        var text = new StringBuilder("MOST THAT MAY BE LOST, load on, 12 V\n");
        foreach (var limit in TestLimits.Drops)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {limit.Volts:0.0} V  {limit.What} ({limit.Source})\n");
        }

        text.Append("BATTERY AT REST, flooded, hours after the last charge (RV magazine)\n");
        foreach (var (percent, volts) in TestLimits.RestV)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {volts:0.00} V  {percent} %\n");
        }

        return text.ToString();
    }

    public static string Of(FaultExercise exercise, ulong seed, bool key)
    {
        ArgumentNullException.ThrowIfNull(exercise);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"EXERCISE {seed}, {exercise.Bench.Plan.Harness.Vehicle}\nThe driver says:\n");
        Lines(text, exercise.Complaints);
        text.Append(CultureInfo.InvariantCulture, $"In the same states these work: {(exercise.Working.IsEmpty ? "nothing" : string.Join(", ", exercise.Working))}.\n");
        if (!key)
        {
            return text.Append("Ask for readings ('POINT @ STATE'), name the part that is at fault, say how you know.\n").ToString();
        }

        text.Append(CultureInfo.InvariantCulture, $"\nANSWER: {exercise.Fault.Words}, {exercise.Fault.Where}\nThe shortest way:\n");
        var minutes = 0.0;
        foreach (var step in exercise.Key())
        {
            minutes += step.Test.Minutes;
            text.Append(CultureInfo.InvariantCulture, $"  {DiagnosisText.Words(exercise.Bench, step.Test)}\n    shows {step.Shows}; {step.Left} {(step.Left == 1 ? "group" : "groups")} of suspects left, {minutes:0.#} min so far\n");
        }

        return text.ToString();
    }

    private static void Lines(StringBuilder text, ImmutableArray<string> lines)
    {
        foreach (var line in lines)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {line}\n");
        }
    }
}
