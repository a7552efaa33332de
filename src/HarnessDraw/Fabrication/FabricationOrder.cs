using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>How many harnesses of one build are made.</summary>
public sealed record BuildQuantity(ImmutableSortedDictionary<string, string> Build, int Quantity);

/// <summary>What is to be made: a plan and how many of which builds. No builds: one harness with everything in it.</summary>
public sealed record FabricationOrder(Plan Plan, ImmutableArray<BuildQuantity> Builds)
{
    public static FabricationOrder Everything(Plan plan) => new(plan, []);

    public int Harnesses => Builds.IsEmpty ? 1 : Builds.Sum(b => b.Quantity);

    /// <summary>The wires that are cut at least once, in plan order.</summary>
    public IEnumerable<Wire> Wires => Plan.Wires.Where(w => QuantityOf(w.Builds) > 0);

    /// <summary>How often something under a condition is made over all builds of the order.</summary>
    public int QuantityOf(BuildCondition condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        return Builds.IsEmpty ? 1 : Builds.Where(b => condition.Holds(b.Build)).Sum(b => b.Quantity);
    }

    /// <summary>The order in words: 'everything', or '3 x charging=exciter, cooling=electric fan'.</summary>
    public string Words => Builds.IsEmpty
        ? "everything"
        : string.Join("; ", Builds.Select(b => $"{b.Quantity} x {(b.Build.Count == 0 ? "usual" : string.Join(", ", b.Build.Select(c => $"{c.Key}={c.Value}")))}"));

    /// <summary>Each build with its plan and how often it is made; for everything one plan once.</summary>
    public IEnumerable<(Plan Plan, int Times)> Each => Builds.IsEmpty ? [(Plan, 1)] : Builds.Select(b => (Plan.For(b.Build), b.Quantity));

    /// <summary>The plan with only what the order makes at least once.</summary>
    public Plan Shown => Builds.IsEmpty ? Plan : Plan.Only(w => QuantityOf(w.Builds) > 0);
}
