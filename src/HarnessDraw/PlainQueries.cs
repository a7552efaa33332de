using System.Collections.Immutable;

namespace HarnessDraw;

/// <summary>
/// Select as the runtime has it, but for a query over a query, and queries in order (<see cref="Ordered{T}"/>): there LINQ asks the inner one by a generic virtual call, which the native program looks up while it runs (80,000 instructions for
/// every two types; 170 of them are a twelfth of the run of a harness of a dozen circuits). Found before LINQ's own, as it stands in a namespace around the code.
/// </summary>
internal static class PlainQueries
{
    public static IEnumerable<TResult> Select<T, TResult>(this IEnumerable<T> source, Func<T, TResult> of) => source is IList<T> ? Enumerable.Select(source, of) : OneByOne(source, of);

    public static IEnumerable<TResult> Select<T, TResult>(this ImmutableArray<T> source, Func<T, TResult> of) => ImmutableArrayExtensions.Select(source, of);

    public static Ordered<T> OrderBy<T, TKey>(this IEnumerable<T> source, Func<T, TKey> key, IComparer<TKey>? comparer = null) => new OrderedBy<T, TKey>(source, null, key, comparer, falling: false);

    public static Ordered<T> OrderByDescending<T, TKey>(this IEnumerable<T> source, Func<T, TKey> key, IComparer<TKey>? comparer = null) => new OrderedBy<T, TKey>(source, null, key, comparer, falling: true);

    private static IEnumerable<TResult> OneByOne<T, TResult>(IEnumerable<T> source, Func<T, TResult> of)
    {
        foreach (var item in source)
        {
            yield return of(item);
        }
    }
}
