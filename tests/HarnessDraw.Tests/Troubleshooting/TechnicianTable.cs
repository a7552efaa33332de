using System.Globalization;
using System.Text;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Troubleshooting;

/// <summary>Searches of simulated technicians over the faults of a plan, added up.</summary>
internal static class TechnicianTable
{
    public const string Head = """
        | example | faults that show | first group at once | within three tests | at the end | tests | minutes | tests by half-splitting | minutes by half-splitting |
        |---|--:|--:|--:|--:|--:|--:|--:|--:|

        """;

    /// <param name="technician">At one vehicle.</param>
    /// <param name="every">1: every fault; n: every n-th.</param>
    public static IReadOnlyList<Search> Searches(Technician technician, int every = 1)
    {
        var cases = technician.Observable().Where((_, i) => i % every == 0).ToArray();
        var searches = new Search[cases.Length];
        Parallel.For(0, cases.Length, i => searches[i] = technician.Find(cases[i].Fault, cases[i].Variant, (ulong)i + 1));
        return searches;
    }

    public static string Row(string name, IReadOnlyList<Search> searches)
    {
        string Share(Func<Search, bool> holds) => (100.0 * searches.Count(holds) / searches.Count).ToString("0.0", CultureInfo.InvariantCulture) + " %";
        string Mean(Func<Search, double> of) => searches.Average(of).ToString("0.0", CultureInfo.InvariantCulture);
        return new StringBuilder().Append(CultureInfo.InvariantCulture,
            $"| {name} | {searches.Count} | {Share(s => s.FirstAtOnce)} | {Share(s => s.FirstInThree)} | {Share(s => s.FirstAtLast)} | {Mean(s => s.Tests)} | {Mean(s => s.Minutes)} | {Mean(s => s.HalfSplitTests)} | {Mean(s => s.HalfSplitMinutes)} |\n").ToString();
    }

    public static string Of(string name, Plan plan) => Row(name, Searches(new(plan)));
}
