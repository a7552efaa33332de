using HarnessDraw.Model;

namespace HarnessDraw.Planning.Cavities;

/// <summary>
/// What it costs that two circuits sit beside each other in a connector: those that the description keeps apart most, then live copper beside a signal or a ground in an unsealed
/// body, then lamps of which one has to stay, then colours that are taken for each other. The same that the checks tell of a plan.
/// </summary>
internal sealed class NeighbourCosts(HarnessIndex index, WireColours colours)
{
    public int Of(ConnectorPart part, CavitySeeker a, CavitySeeker b)
    {
        var (x, y) = (a.Wire, b.Wire);
        if (!x.Draft.Builds.MayMeet(y.Draft.Builds))
        {
            return 0;
        }

        return (x.Circuit.Id != y.Circuit.Id && index.Harness.KeepApart.Any(k => k.Circuits.Contains(x.Circuit.Id) && k.Circuits.Contains(y.Circuit.Id)) ? 1000 : 0)
            + (!part.Sealed && (MayBridge(x.Circuit, y.Circuit) || MayBridge(y.Circuit, x.Circuit)) ? 100 : 0)
            + (FailSafePairs.Are(x.Circuit, y.Circuit, index.Thing) ? 10 : 0)
            + (x.Net != y.Net && x.SizeNow.Label == y.SizeNow.Label && TiredColours.AreConfusable(colours.Of(x), colours.Of(y)) ? 1 : 0);
    }

    private bool MayBridge(Circuit live, Circuit other) =>
        live is { LiveWith: KeyPosition.Off, IsReturn: false, Duty: not Duty.Signal } && index.Harness.States.Select(s => s.On.Contains(live.Id)).Distinct().Count() < 2
        && (other.Duty == Duty.Signal || other.IsReturn);
}
