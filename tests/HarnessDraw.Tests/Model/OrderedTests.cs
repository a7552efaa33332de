using CsCheck;

namespace HarnessDraw.Tests.Model;

/// <summary>Queries in order (Ordered.cs, compiled into the tests: the core keeps it to itself) beside the runtime's own over random lists with many equal keys, nulls among them.</summary>
public class OrderedTests
{
    private static readonly string?[] Words = [null, "", "a", "A", "b", "ab", "ä"];
    private static readonly int?[] Numbers = [null, -1, 0, 1, int.MaxValue];
    private static readonly double[] Shares = [0.0, -0.0, 1.5, double.NaN];

    // few values, so that most keys meet their like; the place tells items apart that are alike
    private static readonly Gen<Item[]> Lists = Gen.Select(Gen.Int[0, Words.Length - 1], Gen.Int[0, Numbers.Length - 1], Gen.Int[0, Shares.Length - 1]).Array[0, 40]
        .Select(rows => rows.Select((row, place) => new Item(Words[row.Item1], Numbers[row.Item2], Shares[row.Item3], place)).ToArray());

    private static readonly StringComparer[] Comparers = [StringComparer.Ordinal, StringComparer.OrdinalIgnoreCase];

    [Fact]
    public void One_key_rising_or_falling_orders_as_the_runtime_does() => Lists.Sample(items =>
    {
        Same(Rising(items, i => i.Number), Enumerable.OrderBy(items, i => i.Number));
        Same(Falling(items, i => i.Number), Enumerable.OrderByDescending(items, i => i.Number));
        Same(Rising(items, i => i.Share), Enumerable.OrderBy(items, i => i.Share));
        Same(Falling(items, i => i.Share), Enumerable.OrderByDescending(items, i => i.Share));
        foreach (var comparer in Comparers)
        {
            Same(Rising(items, i => i.Word, comparer), Enumerable.OrderBy(items, i => i.Word, comparer));
            Same(Falling(items, i => i.Word, comparer), Enumerable.OrderByDescending(items, i => i.Word, comparer));
        }
    });

    [Fact]
    public void Further_keys_order_what_the_ones_before_leave_alike() => Lists.Sample(items =>
    {
        Same(Rising(items, i => i.Word, StringComparer.Ordinal).ThenByDescending(i => i.Number).ThenBy(i => i.Share), Enumerable.OrderBy(items, i => i.Word, StringComparer.Ordinal).ThenByDescending(i => i.Number).ThenBy(i => i.Share));
        Same(Falling(items, i => i.Number).ThenBy(i => i.Word, StringComparer.OrdinalIgnoreCase), Enumerable.OrderByDescending(items, i => i.Number).ThenBy(i => i.Word, StringComparer.OrdinalIgnoreCase));
    });

    [Fact]
    public void A_query_in_order_is_asked_when_it_is_read_and_each_key_once()
    {
        var (items, asked) = (new List<int> { 3, 1, 2 }, 0);
        var ordered = Rising(items.Where(i => i > 0), i =>
        {
            asked++;
            return i;
        });
        items.Add(0);
        items.Add(5);
        Assert.Equal(0, asked);
        Assert.Equal([1, 2, 3, 5], ordered);
        Assert.Equal(4, asked);
        Assert.Throws<InvalidOperationException>(() => Rising(new List<int>(), i => i).First());
        Assert.Equal(0, Rising(new List<int>(), i => i).FirstOrDefault());
    }

    private static OrderedBy<T, TKey> Rising<T, TKey>(IEnumerable<T> source, Func<T, TKey> key, IComparer<TKey>? comparer = null) => new(source, null, key, comparer, falling: false);

    private static OrderedBy<T, TKey> Falling<T, TKey>(IEnumerable<T> source, Func<T, TKey> key, IComparer<TKey>? comparer = null) => new(source, null, key, comparer, falling: true);

    private static void Same(Ordered<Item> ours, IOrderedEnumerable<Item> theirs)
    {
        Item[] expected = [.. theirs];
        Assert.Equal(expected, ours.ToArray());
        Assert.Equal(expected, ours.ToImmutableArray());
        Assert.Equal(expected, ours.AsEnumerable());
        Assert.Equal(expected.FirstOrDefault(), ours.FirstOrDefault());
    }

    private sealed record Item(string? Word, int? Number, double Share, int Place);
}
