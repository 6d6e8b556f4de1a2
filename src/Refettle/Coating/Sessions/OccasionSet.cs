using System.Numerics;

namespace Refettle.Coating.Sessions;

/// <summary>Some of the occasions 0 to n − 1. Immutable.</summary>
internal readonly struct OccasionSet
{
    private readonly ulong[] _words;

    private OccasionSet(ulong[] words) => _words = words;

    public static OccasionSet Of(IEnumerable<int> occasions, int count)
    {
        var words = new ulong[(count + 63) / 64];
        foreach (var occasion in occasions)
            words[occasion / 64] |= 1UL << (occasion % 64);
        return new(words);
    }

    public static OccasionSet None(int count) => new(new ulong[(count + 63) / 64]);

    public bool IsEmpty => Array.TrueForAll(_words, word => word == 0);

    public bool Has(int occasion) => (_words[occasion / 64] >> (occasion % 64) & 1) != 0;

    /// <summary>−1 when empty.</summary>
    public int First
    {
        get
        {
            var word = Array.FindIndex(_words, one => one != 0);
            return word < 0 ? -1 : word * 64 + BitOperations.TrailingZeroCount(_words[word]);
        }
    }

    /// <summary>−1 when empty.</summary>
    public int Last
    {
        get
        {
            var word = Array.FindLastIndex(_words, one => one != 0);
            return word < 0 ? -1 : word * 64 + 63 - BitOperations.LeadingZeroCount(_words[word]);
        }
    }

    public bool Meets(OccasionSet other)
    {
        for (var i = 0; i < _words.Length; i++)
        {
            if ((_words[i] & other._words[i]) != 0)
                return true;
        }

        return false;
    }

    public OccasionSet And(OccasionSet other) => new([.. _words.Zip(other._words, (one, two) => one & two)]);

    public OccasionSet Or(OccasionSet other) => new([.. _words.Zip(other._words, (one, two) => one | two)]);

    public OccasionSet With(int occasion)
    {
        var words = (ulong[])_words.Clone();
        words[occasion / 64] |= 1UL << (occasion % 64);
        return new(words);
    }

    public OccasionSet Without(int occasion)
    {
        var words = (ulong[])_words.Clone();
        words[occasion / 64] &= ~(1UL << (occasion % 64));
        return new(words);
    }

    public int Count
    {
        get
        {
            var count = 0;
            foreach (var word in _words)
                count += BitOperations.PopCount(word);
            return count;
        }
    }

    /// <summary>Rising.</summary>
    public IEnumerable<int> All()
    {
        for (var i = 0; i < _words.Length; i++)
        {
            for (var word = _words[i]; word != 0; word &= word - 1)
                yield return i * 64 + BitOperations.TrailingZeroCount(word);
        }
    }
}
