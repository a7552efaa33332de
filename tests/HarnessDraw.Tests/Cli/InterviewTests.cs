using HarnessDraw.Tests.Conventions;

namespace HarnessDraw.Tests.Cli;

/// <summary>'diagnose --ask': every answer is kept at once, so that the interview can be left and taken up again.</summary>
public sealed class InterviewTests
{
    private static readonly string Saloon = Repository.PathOf("examples/brackmere-six.yaml");

    private static CliRun Ask(string notes, string answers) => CliRun.With(answers, "diagnose", Saloon, "--notes", notes, "--ask");

    // the line that proposes a test
    private static string Proposed(CliRun run) => run.Messages.Split('\n').Last(l => l.Contains("NEXT TEST", StringComparison.Ordinal));

    [Fact]
    public void It_goes_on_where_it_was_stopped()
    {
        using var folder = new TemporaryFolder();
        var notes = folder.File("notes.txt");
        var first = Ask(notes, "dead: horns @ signalling\nworks: main left\n\n12.3\nstop\n");
        Assert.Equal(0, first.Code);
        Assert.Equal(["dead: horns @ signalling", "works: main left"], File.ReadAllLines(notes).Take(2));

        // the answer is kept for the state that was asked for
        var kept = File.ReadAllLines(notes)[2];
        Assert.EndsWith(" = 12.3 V", kept, StringComparison.Ordinal);
        Assert.Contains($"'{kept[(kept.IndexOf('@', StringComparison.Ordinal) + 2)..kept.IndexOf(" = ", StringComparison.Ordinal)]}'", first.Messages.Split('\n').First(l => l.Contains("NEXT TEST", StringComparison.Ordinal)), StringComparison.Ordinal);

        // nothing is asked again of the complaint, the test that was open is proposed again, and nothing more is kept
        var second = Ask(notes, "stop\n");
        Assert.Equal(0, second.Code);
        Assert.DoesNotContain("What is wrong", second.Messages, StringComparison.Ordinal);
        Assert.Equal(Proposed(first), Proposed(second));
        Assert.Equal(3, File.ReadAllLines(notes).Length);
    }

    [Fact]
    public void A_point_that_cannot_be_reached_is_kept_as_such_and_not_asked_for_again()
    {
        using var folder = new TemporaryFolder();
        var notes = folder.File("notes.txt");
        var first = Ask(notes, "dead: horns\n\nstop\n");
        var second = Ask(notes, "\nstop\n");
        Assert.Matches("^skip: .* @ signalling$", File.ReadAllLines(notes)[1]);
        Assert.Contains(Proposed(first), second.Messages, StringComparison.Ordinal);
        Assert.NotEqual(Proposed(first), Proposed(second));
    }

    [Fact]
    public void A_mistyped_answer_is_asked_for_again_and_not_kept()
    {
        using var folder = new TemporaryFolder();
        var notes = folder.File("notes.txt");
        var run = Ask(notes, "dead: hornz\ndead: horns\n\nmuch\nstop\n");
        Assert.Equal(0, run.Code);
        Assert.Contains("did you mean 'horns'?", run.Messages, StringComparison.Ordinal);
        Assert.Contains("'much' is no answer", run.Messages, StringComparison.Ordinal);
        Assert.Equal(["dead: horns"], File.ReadAllLines(notes));
    }

    [Fact]
    public void It_needs_a_file_to_keep_the_answers_in() => Assert.Equal(2, CliRun.With("stop\n", "diagnose", Saloon, "--ask").Code);
}
