using System.Collections.Immutable;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Troubleshooting;

namespace HarnessDraw.Tests.Troubleshooting;

/// <summary>Each kind of fault, told by what the driver sees of it, is found again; what is left out for speed is held against all faults solved.</summary>
public class FaultKindTests(ITestOutputHelper output)
{
    private const int MostOfAKind = 12;
    private static readonly Lazy<Technician> Saloon = new(() => new(ExamplePlans.Of("brackmere-six")));

    [Theory]
    [InlineData(FaultKind.Open)]
    [InlineData(FaultKind.HighResistance)]
    [InlineData(FaultKind.ShortToGround)]
    [InlineData(FaultKind.ShortToSupply)]
    [InlineData(FaultKind.Swapped)]
    [InlineData(FaultKind.WrongOption)]
    public void What_a_fault_does_leads_back_to_it(FaultKind kind)
    {
        var bench = Saloon.Value.Bench;
        var shown = Saloon.Value.Ranking.Faults.Where(f => f.Fault.Kind == kind).Select(f => (f.Fault, Sees: Saloon.Value.Symptoms(f.Predictions[^1]).ToList())).Where(f => f.Sees.Count > 0).ToList();
        Assert.NotEmpty(shown);
        var tried = shown.Where((_, i) => i % Math.Max(1, shown.Count / MostOfAKind) == 0).ToList();
        var shooter = new Troubleshooter(ExamplePlans.Of("brackmere-six"));
        var missed = 0;
        foreach (var (fault, sees) in tried)
        {
            var wrong = sees.Select(s => s.Load).ToHashSet();
            ImmutableArray<VehicleNote> notes =
            [
                .. sees.Select(s => new VehicleNote(s.Seen == LoadClass.Dead ? NoteKind.Dead : s.Seen == LoadClass.Dim ? NoteKind.Dim : NoteKind.AlwaysOn, bench.Loads[s.Load].Name, bench.States[s.State].Id, 0)),
                .. bench.Loads.Where((_, l) => !wrong.Contains(l) && bench.ShouldWork.Any(s => s[l])).Select(l => new VehicleNote(NoteKind.Works, l.Name, null, 0)),
            ];
            var found = shooter.Diagnose(notes);
            var place = found.Groups.ToList().FindIndex(g => g.Group.Suspects.Any(s => s.Fault.Words == fault.Words));
            missed += place < 0 ? 1 : 0;
            output.WriteLine($"{(place < 0 ? "missed" : $"group {place + 1}, {found.Groups[place].Unexplained.Length} unexplained")}: {fault.Words}; {string.Join(", ", sees.Take(4).Select(s => $"{bench.Loads[s.Load].Name} {s.Seen}"))}");
        }

        // all eight groups that are told are looked at: what is common stands before what is rare and looks the same
        Assert.True(missed <= Math.Max(1, tried.Count / 4), $"{missed} of {tried.Count} missed");
    }

    [Fact]
    public void Wires_are_in_each_other_s_cavity_only_where_their_contacts_lock()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var size = plan.Harness.Catalogue.Connectors.Single(c => c.Id == plan.Harness.ThingOf("firewall").ConnectorPart).Cavities.ToDictionary(c => c.Name, c => c.Size);
        var swaps = Saloon.Value.Ranking.Faults.Where(f => f.Fault.Kind == FaultKind.Swapped && f.Fault.At.Contains("firewall")).Select(f => f.Fault.Part["firewall ".Length..].Split(" and ")).ToList();
        Assert.NotEmpty(swaps);
        Assert.All(swaps, s => Assert.Equal(size[s[0]], size[s[1]]));
    }

    [Theory]
    [InlineData("brackmere-six", 7)]
    public void What_is_not_solved_would_not_have_been_suspected(string name, int every)
    {
        var shooter = new Troubleshooter(ExamplePlans.Of(name));
        var all = shooter.Bench.Faults(FaultWeights.InService);
        var tried = 0;
        foreach (var load in shooter.Bench.Loads.Where((_, l) => l % every == 0 && shooter.Bench.ShouldWork.Any(s => s[l])))
        {
            var quick = shooter.Diagnose([new(NoteKind.Dead, load.Name, null, 0)]);
            var whole = new FaultRanking(quick.Bench, all).Moving(quick.Evidence);
            var groups = SuspectGroup.Of(quick.Bench, whole.Rank(quick.Evidence)).Take(quick.Groups.Length).ToList();
            foreach (var (one, other) in quick.Groups.Zip(groups).Where(g => g.Second.Probability > 0.02))
            {
                Assert.Equal(other.Suspects.Select(s => s.Fault.Words), one.Group.Suspects.Select(s => s.Fault.Words));
                Assert.InRange(one.Group.Probability, other.Probability - 0.01, other.Probability + 0.01);
            }

            output.WriteLine($"{load.Name}: {quick.Tried} of {all.Length} solved, {whole.Faults.Length} move it");
            tried++;
        }

        Assert.True(tried > 5);
    }
}
