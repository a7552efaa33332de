using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using HarnessDraw.Checking;
using HarnessDraw.Planning;
using HarnessDraw.Reading;
using HarnessDraw.Tests.Cli;
using HarnessDraw.Writing.Starter;

namespace HarnessDraw.Tests.Planning;

/// <summary>
/// A harness as 'new' writes it with answers, loads (0.3 to 1.8 times), runs (0.5 to 3 times) and ambient drawn from a seed; the generator is our own: the same on every machine.
/// </summary>
internal static partial class RandomStarter
{
    /// <param name="alike">Pairs of things or circuits that are sized alike, where the harness has them.</param>
    public static Plan Plan(int seed, string voltage, params ImmutableArray<(string Left, string Right)> alike)
    {
        using var folder = new TemporaryFolder();
        var file = WriteTo(folder, seed, voltage);
        var text = File.ReadAllText(file);
        var pairs = alike.Where(a => text.Contains($"  {a.Left}:", StringComparison.Ordinal)).Select(a => $"[{a.Left}, {a.Right}]").ToList();
        if (pairs.Count > 0)
        {
            File.WriteAllText(file, $"{text}\nsized-alike: [{string.Join(", ", pairs)}]\n");
        }

        return HarnessCompiler.Plan(file, new DiskFiles(), RuleSettings.BuiltIn).Value!.Plan;
    }

    /// <summary>The same with ground cable and strap left open, as a description may leave them.</summary>
    public static Plan WithOpenStraps(int seed, string voltage)
    {
        using var folder = new TemporaryFolder();
        var file = WriteTo(folder, seed, voltage);
        File.WriteAllText(file, GivenStraps().Replace(File.ReadAllText(file), ""));
        return HarnessCompiler.Plan(file, new DiskFiles(), RuleSettings.BuiltIn).Value!.Plan;
    }

    public static string WriteTo(TemporaryFolder folder, int seed, string voltage)
    {
        var state = ((ulong)seed * 2654435761UL) + 88172645463325252UL;
        double Share()
        {
            state ^= state << 13;
            state ^= state >> 7;
            state ^= state << 17;
            return state % 1_000_000 / 1e6;
        }

        string One(ImmutableArray<string> words) => words[(int)(Share() * words.Length)];
        string Times(Match found, double least, double most) => $"{found.Groups[1].Value}{(Math.Round(double.Parse(found.Groups[2].Value, CultureInfo.InvariantCulture) * (least + (Share() * (most - least))) * 2) / 2).ToString(CultureInfo.InvariantCulture)} {found.Groups[3].Value}";
        for (var i = 0; i < 20; i++)
        {
            Share();
        }

        var answers = new StarterAnswers("Random van") { Voltage = voltage, Ground = One(StarterAnswers.Grounds), Charging = One(StarterAnswers.Chargings), Heating = One(StarterAnswers.Heatings), CoolingFan = One(StarterAnswers.CoolingFans), Lamps = One(StarterAnswers.LampSets) };
        folder.File("random-layout.yaml", Runs().Replace(StarterLayout.Write(answers), m => Times(m, 0.5, 3)).Replace("85 degC", $"{60 + (int)(Share() * 40)} degC", StringComparison.Ordinal));
        return folder.File("random.yaml", Loads().Replace(StarterDescription.Write(answers, "random-layout.yaml"), m => Times(m, 0.3, 1.8)));
    }

    [GeneratedRegex(@"(?<=, colour: BK), size: \d+ mm2(?= \})")]
    private static partial Regex GivenStraps();

    [GeneratedRegex(@"(estimated: )(\d+) (mm)")]
    private static partial Regex Runs();

    [GeneratedRegex(@"((?:lamp|motor|coil|beams): \{[^}]*?)(\d+) (W)")]
    private static partial Regex Loads();
}
