using System.Collections;
using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace HarnessDraw;

/// <summary>
/// A query put in order, as LINQ's own: nothing is done before it is asked, each key is taken once, what is alike stays as it was. LINQ asks a query in order for its next key by a generic
/// virtual call through an interface, which the native program looks up while it runs (117,000 instructions for every two types; 52 of them were a seventeenth of the run of a harness of a dozen
/// circuits). No arrays and delegates of types of its own: each brings several statics with it, which are made at every start.
/// </summary>
internal abstract class Ordered<T>(IEnumerable<T> source) : IEnumerable<T>
{
    public Ordered<T> ThenBy<TKey>(Func<T, TKey> key, IComparer<TKey>? comparer = null) => new OrderedBy<T, TKey>(source, this, key, comparer, falling: false);

    public Ordered<T> ThenByDescending<TKey>(Func<T, TKey> key, IComparer<TKey>? comparer = null) => new OrderedBy<T, TKey>(source, this, key, comparer, falling: true);

    public T[] ToArray()
    {
        var items = source.ToArray();
        var places = KeysOf(items).Order(items.Length);
        var ordered = new T[items.Length];
        for (var i = 0; i < places.Length; i++)
        {
            ordered[i] = items[places[i]];
        }

        return ordered;
    }

    public List<T> ToList()
    {
        var list = new List<T>();
        list.AddRange((ReadOnlySpan<T>)ToArray());
        return list;
    }

    public ImmutableArray<T> ToImmutableArray() => ImmutableCollectionsMarshal.AsImmutableArray(ToArray());

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)ToArray()).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    public T First() => source.ToArray() is { Length: > 0 } items ? items[KeysOf(items).First(items.Length)] : throw new InvalidOperationException("nothing is in order: the query is empty");

    public T? FirstOrDefault() => source.ToArray() is { Length: > 0 } items ? items[KeysOf(items).First(items.Length)] : default;

    /// <summary>The keys of all items, by which they are compared.</summary>
    public abstract SortKeys KeysOf(T[] items);
}

/// <summary>A query in order of what came before and then of one key more.</summary>
internal sealed class OrderedBy<T, TKey>(IEnumerable<T> source, Ordered<T>? before, Func<T, TKey> key, IComparer<TKey>? comparer, bool falling) : Ordered<T>(source)
{
    public override SortKeys KeysOf(T[] items)
    {
        var keys = new TKey[items.Length];
        for (var i = 0; i < keys.Length; i++)
        {
            keys[i] = key(items[i]);
        }

        return new SortKeys<TKey>(before?.KeysOf(items), keys, comparer, falling);
    }
}

/// <summary>The keys of a list, compared by the places of their items.</summary>
internal abstract class SortKeys(SortKeys? before)
{
    /// <summary>The places of so many items in order.</summary>
    public int[] Order(int count)
    {
        var places = new int[count];
        for (var i = 0; i < count; i++)
        {
            places[i] = i;
        }

        Array.Sort(places, (a, b) => Compare(a, b) is not 0 and var order ? order : a.CompareTo(b));
        return places;
    }

    /// <summary>The place of the first of so many items.</summary>
    public int First(int count)
    {
        var first = 0;
        for (var i = 1; i < count; i++)
        {
            first = Compare(i, first) < 0 ? i : first;
        }

        return first;
    }

    protected abstract int CompareOwn(int a, int b);

    private int Compare(int a, int b) => before?.Compare(a, b) is { } order and not 0 ? order : CompareOwn(a, b);
}

/// <summary>Keys of one kind behind those that count more.</summary>
internal sealed class SortKeys<TKey>(SortKeys? before, TKey[] keys, IComparer<TKey>? comparer, bool falling) : SortKeys(before)
{
    protected override int CompareOwn(int a, int b)
    {
        var (first, second) = falling ? (keys[b], keys[a]) : (keys[a], keys[b]);
        return comparer is null ? Comparer<TKey>.Default.Compare(first, second) : comparer.Compare(first, second);
    }
}
