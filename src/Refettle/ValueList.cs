using System.Collections;
using System.Runtime.CompilerServices;

namespace Refettle;

/// <summary>An immutable list that is equal to another when their items are, in order.</summary>
/// <remarks>Records made of value lists compare by value all the way down, so two folds of one log can be compared.</remarks>
[CollectionBuilder(typeof(ValueList), nameof(ValueList.Create))]
public sealed class ValueList<T> : IReadOnlyList<T>, IEquatable<ValueList<T>>
{
    public static ValueList<T> Empty { get; } = new([]);

    private readonly T[] _items;

    internal ValueList(T[] items) => _items = items;

    public int Count => _items.Length;

    public T this[int index] => _items[index];

    public ReadOnlySpan<T> AsSpan() => _items;

    public bool Equals(ValueList<T>? other) => other is not null && _items.AsSpan().SequenceEqual(other._items);

    public override bool Equals(object? obj) => Equals(obj as ValueList<T>);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in _items)
            hash.Add(item);
        return hash.ToHashCode();
    }

    public override string ToString() => "[" + string.Join(", ", _items) + "]";

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)_items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => _items.GetEnumerator();
}

/// <summary>Makes value lists.</summary>
public static class ValueList
{
    public static ValueList<T> Create<T>(ReadOnlySpan<T> items) => items.IsEmpty ? ValueList<T>.Empty : new(items.ToArray());

    public static ValueList<T> ToValueList<T>(this IEnumerable<T> items) => Create<T>(items.ToArray());
}
