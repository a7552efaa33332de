using System.Text.RegularExpressions;

namespace HarnessDraw.Tests.Conventions;

public partial class TextConventionTests
{
    private const int LongestFile = 400;

    [Fact]
    public void No_source_file_is_longer_than_a_reader_bears()
    {
        var tooLong = Repository.Sources("src").Concat(Repository.Sources("tests")).Select(f => (File: f, Lines: File.ReadLines(f).Count())).Where(f => f.Lines > LongestFile);
        Assert.Empty(tooLong.Select(f => $"{Repository.Relative(f.File)}: {f.Lines}"));
    }

    [Fact]
    public void Namespace_is_the_folder_or_its_stage()
    {
        var wrong = new List<string>();
        foreach (var file in Repository.Sources("src").Concat(Repository.Sources("tests")))
        {
            var relative = Repository.Relative(file).Split('/');
            var expected = string.Join('.', relative[1..^1]);
            var match = NamespaceLine().Match(File.ReadAllText(file));
            if (match.Success && match.Groups[1].Value != expected && match.Groups[1].Value != string.Join('.', relative[1..3]))
            {
                wrong.Add($"{Repository.Relative(file)}: {match.Groups[1].Value}, not {expected}");
            }
        }

        Assert.Empty(wrong);
    }

    [Fact]
    public void Nothing_is_left_half_done()
    {
        string[] marks = ["TO" + "DO", "FIX" + "ME", "XX" + "X:", "NotImplemented" + "Exception", "#reg" + "ion"];
        var found = Repository.Sources("src").Concat(Repository.Sources("tests"))
            .SelectMany(f => marks.Where(m => File.ReadAllText(f).Contains(m, StringComparison.Ordinal)).Select(m => $"{Repository.Relative(f)}: {m}"));
        Assert.Empty(found);
    }

    [Fact]
    public void The_word_is_ground_on_every_drawing_and_in_every_description()
    {
        // 'protective earth' is the standard's own term (IEC 60445) and the only place for the word
        var found = UserTexts().Where(f => ForbiddenWord().IsMatch(ProtectiveEarth().Replace(File.ReadAllText(f), "")));
        Assert.Empty(found.Select(Repository.Relative));
    }

    private static IEnumerable<string> UserTexts() =>
        new[] { "examples", "layouts", "shared", "output-samples" }
            .Select(f => Repository.PathOf(f))
            .Where(Directory.Exists)
            .SelectMany(f => Directory.EnumerateFiles(f, "*", SearchOption.AllDirectories))
            .Where(f => Path.GetExtension(f) is ".yaml" or ".md" or ".svg" or ".csv" or ".json");

    [GeneratedRegex(@"^namespace ([\w.]+)", RegexOptions.Multiline)]
    private static partial Regex NamespaceLine();

    [GeneratedRegex(@"\bearth(ed|s|ing)?\b", RegexOptions.IgnoreCase)]
    private static partial Regex ForbiddenWord();

    [GeneratedRegex(@"protective earth", RegexOptions.IgnoreCase)]
    private static partial Regex ProtectiveEarth();
}
