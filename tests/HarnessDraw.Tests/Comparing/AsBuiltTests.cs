using HarnessDraw.Checking;
using HarnessDraw.Reading;
using HarnessDraw.Tests.Conventions;

namespace HarnessDraw.Tests.Comparing;

public class AsBuiltTests
{
    [Fact]
    public void Lengths_as_built_go_before_planned_ones()
    {
        var plain = HarnessCompiler.Plan("examples/dunmarrow-18.yaml", new Beside(null), RuleSettings.BuiltIn).Value!.Plan;
        var wire = plain.Wires.First(w => w.CutLengthMm is not null);
        var path = plain.Harness.Layout.Paths.First(p => p.LengthMm is not null && plain.Tree.Segments.Any(s => !s.Wires.IsEmpty && ((s.From == p.From && s.To == p.To) || (s.From == p.To && s.To == p.From))));
        var file = $"wire,from,to,length_mm\n{wire.Id},,,4321\n,{path.To},{path.From},{path.LengthMm + 77}\nZ99,,,50\n{plain.Wires[^1].Id},,,\n";
        var built = HarnessCompiler.Plan("examples/dunmarrow-18.yaml", new Beside(file), RuleSettings.BuiltIn);
        Assert.False(built.Failed, string.Join('\n', built.Diagnostics));
        var plan = built.Value!.Plan;
        Assert.Equal(4321, plan.WireOf(wire.Id).CutLengthMm);
        var segment = plan.Tree.Segments.First(s => (s.From == path.From && s.To == path.To) || (s.From == path.To && s.To == path.From));
        Assert.Equal(path.LengthMm + 77, segment.LengthMm);
        Assert.Contains(built.Value.Findings, f => f.Rule == "as-built-unknown" && f.Where.Contains("Z99"));
    }

    [Theory]
    [InlineData("wire,length_mm\nP01,long\n", "2:5", "no length in mm")]
    [InlineData("from,to,length_mm\nnowhere,battery,100\n", "2:1", "no place 'nowhere'")]
    [InlineData("wire,length_mm\nP01,5\nP01,6\n", "3:1", "measured twice")]
    [InlineData("a,b\n1,2\n", "1:1", "are needed")]
    public void A_damaged_file_is_told_with_line_and_column_and_nothing_is_planned(string file, string place, string message)
    {
        var run = HarnessCompiler.Plan("examples/dunmarrow-18.yaml", new Beside(file), RuleSettings.BuiltIn);
        Assert.True(run.Failed);
        Assert.Contains(run.Diagnostics, d => d.At is { } at && $"{at.Line}:{at.Column}" == place && d.Message.Contains(message, StringComparison.Ordinal));
    }

    /// <summary>The repository's files, with one more beside the example.</summary>
    private sealed class Beside(string? asBuilt) : IFileSource
    {
        private readonly DiskFiles disk = new();

        public bool Exists(string path) => path.EndsWith(HarnessCompiler.AsBuiltEnding, StringComparison.Ordinal) ? asBuilt is not null : disk.Exists(Repository.PathOf(path));

        public string ReadText(string path) => path.EndsWith(HarnessCompiler.AsBuiltEnding, StringComparison.Ordinal) ? asBuilt! : disk.ReadText(Repository.PathOf(path));

        public byte[] ReadBytes(string path) => disk.ReadBytes(Repository.PathOf(path));

        public long SizeBytes(string path) => ReadText(path).Length;
    }
}
