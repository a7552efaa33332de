using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Writing;

public partial class LivePageFileTests
{
    private static readonly Lazy<byte[]> Saloon = new(() => LivePageFixture.PageOf(ExamplePlans.Of("brackmere-six")));

    [Fact]
    public void The_saloon_is_under_one_and_a_half_megabytes() => Assert.InRange(Saloon.Value.Length, 100_000, 1_500_000);

    [Fact]
    public void Two_runs_give_the_same_bytes() => Assert.Equal(Saloon.Value, LivePageFixture.PageOf(ExamplePlans.Of("brackmere-six")));

    [Fact]
    public void The_policy_allows_what_is_in_the_file_and_nothing_else()
    {
        var page = Encoding.UTF8.GetString(Saloon.Value);
        var policy = Policy().Match(page).Groups[1].Value;
        Assert.StartsWith("default-src 'none'; script-src 'sha256-", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
        foreach (var part in Inline().Matches(page).Select(m => m.Groups[2].Value))
        {
            Assert.Contains(Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(part))), policy, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_script_never_makes_elements_of_text()
    {
        var script = Inline().Matches(Encoding.UTF8.GetString(Saloon.Value)).Last().Groups[2].Value;
        foreach (var word in new[] { "innerHTML", "outerHTML", "insertAdjacentHTML", "document.write", "DOMParser", "eval(", "new Function", "fetch(", "XMLHttpRequest", "import(" })
        {
            Assert.DoesNotContain(word, script, StringComparison.Ordinal);
        }
    }

    [GeneratedRegex("Content-Security-Policy\" content=\"([^\"]*)\"")]
    private static partial Regex Policy();

    [GeneratedRegex("<(style|script type=\"module\")>(.*?)</(?:style|script)>", RegexOptions.Singleline)]
    private static partial Regex Inline();
}
