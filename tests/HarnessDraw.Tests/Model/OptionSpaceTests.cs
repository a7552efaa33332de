using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Tests.Model;

/// <summary>What is proven about builds without listing them, against lists of all of them.</summary>
public class OptionSpaceTests
{
    [Theory]
    [InlineData("fog lamps", "with fog lamps", "fog lamps")]
    [InlineData("washer", "no washer|electric washer", "no washer or electric washer")]
    [InlineData("cooling", "electric fan", "cooling: electric fan")]
    [InlineData("fan", "fanless", "fan: fanless")]
    [InlineData("heating", "heating off|heater", "heating: heating off or heater")]
    public void A_condition_says_the_name_of_its_option_once(string option, string choices, string words)
    {
        var condition = new BuildCondition([new(option, [.. choices.Split('|')])]);
        Assert.Equal(words, condition.Words);
    }

    [Fact]
    public void Counts_and_conditions_agree_with_every_build_listed()
    {
        var random = new Random(7);
        for (var run = 0; run < 200; run++)
        {
            var (options, rules) = Some(random);
            var space = new OptionSpace(options, rules);
            var all = All(options).Where(b => rules.All(r => b[r.IfOption] != r.IfChoice || (b[r.ThenOption] == r.ThenChoice) == r.Needs)).ToList();
            Assert.Equal(all.Count, space.Count);
            Assert.Equal(all.Select(Words), space.First(1000).Select(Words));
            for (var i = 0; i < 8; i++)
            {
                var condition = Condition(random, options);
                var holding = all.Where(condition.Holds).ToList();
                Assert.Equal(holding.Count > 0, space.CanHold(condition));
                if (holding.Count > 0)
                {
                    var smallest = space.Smallest(condition);
                    Assert.Equal(holding.Select(Words), all.Where(smallest.Holds).Select(Words));
                    Assert.DoesNotContain(Subsets(condition), s => s.AllOf.Length < smallest.AllOf.Length && all.Count(s.Holds) == holding.Count);
                }
            }
        }
    }

    [Fact]
    public void The_heaviest_build_and_the_fewest_options_that_are_too_much_agree_with_every_build_listed()
    {
        var random = new Random(11);
        for (var run = 0; run < 200; run++)
        {
            var (options, rules) = Some(random);
            var space = new OptionSpace(options, rules);
            var all = space.First(1000);
            var parts = Enumerable.Range(0, 6).Select(i => (When: i < 1 ? BuildCondition.Always : Condition(random, options), Weight: (double)random.Next(1, 9))).ToList();
            double In(ImmutableSortedDictionary<string, string> build) => parts.Where(p => p.When.Holds(build)).Sum(p => p.Weight);
            if (all.IsEmpty)
            {
                continue;
            }

            var most = all.Max(In);
            Assert.Equal(most, space.Heaviest(parts, p => p.When, p => p.Weight).Sum(p => p.Weight));
            var over = most - 0.5;
            var cause = space.CauseOf(parts, p => p.When, p => p.Weight, over);
            Assert.All(all.Where(cause.Holds), b => Assert.True(In(b) > over));
            Assert.Contains(all, cause.Holds);
        }
    }

    [Fact]
    public void Sixty_free_options_and_twenty_joined_ones_are_settled_without_listing_them()
    {
        ImmutableArray<Option> options = [.. Enumerable.Range(0, 80).Select(i => new Option($"o{i}", ["yes", "no"], "yes", null))];
        ImmutableArray<OptionRule> chain = [.. Enumerable.Range(0, 19).Select(i => new OptionRule($"o{i}", "yes", true, $"o{i + 1}", "yes", null))];
        var space = new OptionSpace(options, chain);
        // a chain of twenty has 21 builds: the yes begin at one of its options, or nowhere
        Assert.Equal(long.MaxValue, space.Count);
        Assert.Equal(21 * (1L << 40), new OptionSpace(options[..60], chain).Count);
        Assert.False(space.CanHold(new([new("o3", ["yes"]), new("o19", ["no"])])));
        Assert.Equal("o3=yes", space.Smallest(new([new("o19", ["yes"]), new("o3", ["yes"])])).ToString());
        Assert.False(new OptionSpace(options, [.. chain, new("o0", "no", true, "o19", "no", null), new("o0", "yes", false, "o19", "yes", null), new("o19", "no", false, "o0", "no", null)]).CanHold(BuildCondition.Always));
    }

    private static (ImmutableArray<Option>, ImmutableArray<OptionRule>) Some(Random random)
    {
        ImmutableArray<Option> options = [.. Enumerable.Range(0, random.Next(2, 6)).Select(i => new Option($"o{i}", [.. Enumerable.Range(0, random.Next(2, 4)).Select(c => $"c{c}")], "c0", null))];
        string Choice(Option o) => o.Choices[random.Next(o.Choices.Length)];
        var rules = Enumerable.Range(0, random.Next(0, 5)).Select(_ =>
        {
            var (a, b) = (options[random.Next(options.Length)], options[random.Next(options.Length)]);
            return new OptionRule(a.Id, Choice(a), random.Next(2) == 0, b.Id, Choice(b), null);
        });
        return (options, [.. rules]);
    }

    private static BuildCondition Condition(Random random, ImmutableArray<Option> options) =>
        new([.. options.Where(_ => random.Next(2) == 0).Select(o => new OptionChoice(o.Id, [.. o.Choices.Where(_ => random.Next(3) > 0).DefaultIfEmpty(o.Choices[0])]))]);

    private static IEnumerable<BuildCondition> Subsets(BuildCondition condition) =>
        Enumerable.Range(0, 1 << condition.AllOf.Length).Select(bits => new BuildCondition([.. condition.AllOf.Where((_, i) => (bits >> i & 1) == 1)]));

    private static IEnumerable<ImmutableSortedDictionary<string, string>> All(ImmutableArray<Option> options)
    {
        IEnumerable<ImmutableSortedDictionary<string, string>> builds = [ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal)];
        return options.Aggregate(builds, (sofar, o) => [.. sofar.SelectMany(b => o.Choices.Select(c => b.SetItem(o.Id, c)))]);
    }

    private static string Words(ImmutableSortedDictionary<string, string> build) => string.Join(',', build.Values);
}
