using System.Collections.Immutable;
using HarnessDraw.Comparing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Reading;
using HarnessDraw.Reading.Frozen;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Writing.Frozen;

namespace HarnessDraw.Tests.Comparing;

public class HarnessComparerTests
{
    private static readonly FrozenHarness Built = HarnessFreezer.Freeze(ExamplePlans.Of("brackmere-six"));

    [Fact]
    public void A_harness_compared_with_itself_has_no_changes()
    {
        var changes = HarnessComparer.Compare(Built, Built).Value!;
        Assert.Empty(changes.Changes);
        Assert.Equal(Built.Wires.Length, changes.Unchanged);
    }

    [Fact]
    public void Each_kind_of_change_is_told_by_wire()
    {
        var (cut, move, gone) = (Built.Wires[0], Built.Wires[1], Built.Wires[2]);
        var now = Built with
        {
            Revision = "C",
            Wires =
            [
                cut with { CutMm = cut.CutMm + 40, To = "elsewhere.1" }, move with { To = "elsewhere.2" }, .. Built.Wires.Skip(3),
                new("Z9", "new circuit", "new circuit", "a.1", "b.2", "BK", "thin", "1.5", 900),
            ],
        };
        var changes = HarnessComparer.Compare(Built, now).Value!;
        Assert.Equal(
            new HashSet<(ChangeKind, string)> { (ChangeKind.Cut, cut.Id), (ChangeKind.Move, move.Id), (ChangeKind.Remove, gone.Id), (ChangeKind.Add, "Z9") },
            changes.Changes.Select(c => (c.Kind, c.Wire)).ToHashSet());
        Assert.Equal(Built.Wires.Length - 3, changes.Unchanged);
        var text = FrozenJsonWriter.Text(changes);
        Assert.Contains("1 to add, 1 to cut, 1 to move, 1 to remove", text, StringComparison.Ordinal);
        Assert.Contains("revision B to C", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Halves_of_different_revisions_are_refused()
    {
        var mixed = Built with { HalfRevisions = ImmutableSortedDictionary<string, string>.Empty.Add("A", "B").Add("B", "C") };
        var compared = HarnessComparer.Compare(Built, mixed);
        Assert.True(compared.Failed);
        Assert.Contains("half A at revision B, half B at revision C", compared.Diagnostics.Single(d => d.Code == "mixed-revisions").Message, StringComparison.Ordinal);
        Assert.True(HarnessComparer.Compare(Built, Built with { Harness = "another", Title = "another" }).Failed);
        Assert.True(HarnessComparer.Compare(Built, Built with { Harness = "another", Vehicle = "another" }).Failed);
    }

    [Fact]
    public void A_copy_under_another_name_is_the_same_harness()
    {
        Assert.Empty(HarnessComparer.Compare(Built with { Harness = "as it was in May" }, Built).Value!.Changes);
        Assert.Empty(HarnessComparer.Compare(Built with { Harness = "written before", Vehicle = null }, Built).Value!.Changes);
    }

    [Fact]
    public void One_revision_with_two_contents_is_warned_of() =>
        Assert.Contains(HarnessComparer.Compare(Built, Built with { SourceHash = "other" }).Diagnostics, d => d.Message.Contains("yet differ", StringComparison.Ordinal));

    [Fact]
    public void What_was_written_is_read_back_the_same()
    {
        var bytes = FrozenJsonWriter.Write(Built);
        var read = FrozenReader.Read("x.frozen.json", new MemoryFiles(new Dictionary<string, string> { ["x.frozen.json"] = System.Text.Encoding.UTF8.GetString(bytes) }));
        Assert.False(read.Failed);
        Assert.Equal(bytes, FrozenJsonWriter.Write(read.Value!));
    }

    [Theory]
    [InlineData("{ \"schemaVersion\": 1, ")]
    [InlineData("{ \"schemaVersion\": 7 }")]
    [InlineData("{ \"schemaVersion\": 1, \"harness\": 3 }")]
    [InlineData("[]")]
    public void A_damaged_file_is_told_and_never_thrown(string text)
    {
        var read = FrozenReader.Read("x", new MemoryFiles(new Dictionary<string, string> { ["x"] = text }));
        Assert.True(read.Failed);
        Assert.NotNull(read.Diagnostics.Single().At);
    }

    [Fact]
    public void A_changed_description_keeps_the_cavities_ids_and_lengths_that_were_built()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var cavities = plan.Harness.Catalogue.Connectors.First(c => c.Id == plan.Harness.ThingOf("firewall").ConnectorPart).Cavities;
        string? FreeLike(string cavity) => cavities.First(c => c.Name == cavity) is var like
            ? cavities.FirstOrDefault(c => c.Size == like.Size && c.Half == like.Half && plan.Cavities.Any(u => u.Connector == "firewall" && u.Cavity == c.Name && u.Wire is null))?.Name
            : null;
        var wire = plan.Wires.First(w => w.From.At == "firewall" && FreeLike(w.From.Pin!) is not null
            && plan.Harness.Nets.Any(n => n.Id == w.Net && n.FixedCavity is null && n.Ends.Length == 1 && n.Root is { Thing: "firewall", Pin: null }));
        var free = FreeLike(wire.From.Pin!)!;
        var built = HarnessFreezer.Freeze(plan);
        built = built with
        {
            Wires = [.. built.Wires.Select(w => w.Id == wire.Id ? w with { Id = "OLD7", From = $"firewall.{free}", CutMm = w.CutMm + 120 } : w)],
            Cavities = [.. built.Cavities.Select(c => c.Wire == wire.Id && c.Connector == "firewall" ? c with { Cavity = free, Wire = "OLD7" } : c)],
        };
        var kept = FrozenKeeper.KeepLengths(HarnessPlanner.Plan(FrozenKeeper.Keep(plan.Harness, built), new PlanningOptions()), built);
        var now = kept.Wires.Single(w => w.Id == "OLD7");
        Assert.Equal(wire.Net, now.Net);
        Assert.Equal(free, now.From.Pin);
        Assert.Equal(wire.CutLengthMm + 120, now.CutLengthMm);
    }
}
