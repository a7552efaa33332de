using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.BenchTests;

namespace HarnessDraw.Sheets.CommissioningSheets;

/// <summary>What one circuit draws, and the volts at the point that it feeds, through a lamp in the lead of a battery at rest; without a fuse, of the battery alone.</summary>
internal sealed record LimitedPower(double CurrentA, double Volts)
{
    /// <summary>The usual limiting lamp. Common practice, no source.</summary>
    public const double LampW = 21;
    private const int Halvings = 50;

    // share of the nominal volts below which a point lies behind what it serves
    private const double BehindLoad = 0.5;

    public static double RestV(Plan plan) => StateCircuit.RestOverNominal * NominalV(plan);

    public static double LampA(Plan plan) => LampW / NominalV(plan);

    /// <summary>Null where current or volts of the circuit are not known.</summary>
    public static LimitedPower? Of(Plan plan, PoweredRow row)
    {
        if (row is not { CurrentA: { } amperes, Volts: { } volts } || amperes <= 0 || volts == 0)
        {
            return null;
        }

        var rest = RestV(plan);
        if (row.Circuit.From is { } from && plan.Harness.Power.Sources.Any(s => s.Id == from.Thing && s.Kind == SourceKind.Alternator))
        {
            // an alternator that stands still gives and takes nothing
            return new(0, Math.CopySign(rest, volts));
        }

        var cranks = plan.Harness.States.FirstOrDefault(s => s.Id == row.State)?.Engine == EngineState.Cranking;
        if (row.Fuse.Length == 0)
        {
            return new(amperes, cranks ? volts : Math.CopySign(rest, volts));
        }

        if (row.Circuit.Feeds.Any(f => plan.Harness.Protections.Any(p => p.On == f.Thing)))
        {
            // the fuses that it feeds are still out
            return new(0, Math.CopySign(rest, volts));
        }

        // lamp and load in series share the battery's volts
        var (lamp, load) = (PartLaw.Load(PartBehaviour.Filament, NominalV(plan), LampA(plan)), PartLaw.Load(Behaviour(plan, row), row.Circuit.NominalV, amperes));
        var (low, high) = (0.0, rest);
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = load.At(middle).Amperes < lamp.At(rest - middle).Amperes ? (middle, high) : (low, middle);
        }

        // a point behind the load goes with the current
        var limitedA = load.At(low).Amperes;
        return new(limitedA, Math.Abs(volts) < BehindLoad * row.Circuit.NominalV ? volts * limitedA / amperes : Math.CopySign(low, volts));
    }

    private static double NominalV(Plan plan) => plan.Harness.Power.NominalV;

    /// <summary>Filaments where the circuit feeds nothing but lamps; all else follows Ohm, as a motor does that does not get up to speed.</summary>
    private static PartBehaviour Behaviour(Plan plan, PoweredRow row)
    {
        Element[] fed = [.. row.Circuit.Feeds.SelectMany(f => plan.Harness.Things.FirstOrDefault(t => t.Id == f.Thing)?.Elements.Where(e => e.PinA == f.Pin || f.Pin is null) ?? [])];
        return fed.Length > 0 && fed.All(e => e.Kind == ElementKind.Lamp) ? PartBehaviour.Filament : PartBehaviour.Ohmic;
    }
}
