using HarnessDraw.Model;

namespace HarnessDraw.Checking;

/// <summary>Option sets in words.</summary>
internal static class BuildConditions
{
    /// <summary>'Only with charging=exciter: ' or nothing.</summary>
    public static string Only(this BuildCondition condition) => condition.IsAlways ? "" : $"Only with {condition}: ";
}
