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
    /// <param name="part">Of so many equal parts of them, which (from 0): a long run can be made in pieces.</param>
    /// <param name="parts">How many parts.</param>
    public static IReadOnlyList<Search> Searches(Technician technician, int every = 1, int part = 0, int parts = 1)
    {
        var cases = technician.Observable().Where((_, i) => i % every == 0).Select((c, i) => (c.Fault, c.Variant, Seed: (ulong)i + 1)).ToArray();
        cases = cases[(cases.Length * part / parts)..(cases.Length * (part + 1) / parts)];
        var searches = new Search[cases.Length];
        SideBySide.For(cases.Length, i => searches[i] = technician.Find(cases[i].Fault, cases[i].Variant, cases[i].Seed));
        return searches;
    }

    /// <summary>A search as a line of tab-separated words; <see cref="Read"/> reads it.</summary>
    public static string Line(string name, Search s) => string.Create(CultureInfo.InvariantCulture,
        $"{name}\t{s.FirstAtOnce}\t{s.FirstInThree}\t{s.FirstAtLast}\t{s.Tests}\t{s.Minutes}\t{s.GroupSize}\t{s.HalfSplitTests}\t{s.HalfSplitMinutes}\t{s.Fault}");

    public static (string Name, Search Search) Read(string line)
    {
        var w = line.Split('\t');
        int Whole(int i) => int.Parse(w[i], CultureInfo.InvariantCulture);
        return (w[0], new(w[9], bool.Parse(w[1]), bool.Parse(w[2]), bool.Parse(w[3]), Whole(4), double.Parse(w[5], CultureInfo.InvariantCulture), Whole(6), Whole(7), double.Parse(w[8], CultureInfo.InvariantCulture)));
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
