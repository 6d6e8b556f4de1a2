using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Refettle.Timeline.Scheduling.Proving;

/// <summary>That a side has come to a value. Activity i has two sides: 2i, its earliest start, and 2i + 1, its latest start with the sign
/// turned; the deeper a search is, the greater both.</summary>
/// <param name="Packed">The side above, the least value in the lower sixteen bits: what is learned is read far more often than
/// written.</param>
internal readonly record struct Statement(int Packed)
{
    public Statement(int side, int least)
        : this(side << 16 | (ushort)least)
    {
    }

    public int Side => Packed >>> 16;

    public int Least => (short)Packed;

    /// <summary>That the activity starts on the other side of the value.</summary>
    public Statement Not => new(Side ^ 1, 1 - Least);

    /// <param name="values">What each side has come to.</param>
    public bool HoldsFor(ReadOnlySpan<int> values) => At(Side, values) >= Least;

    /// <param name="values">What each side has come to.</param>
    public bool IsFalseFor(ReadOnlySpan<int> values) => At(Side ^ 1, values) > -Least;

    public static Statement From(int activity, int start) => new(2 * activity, start);

    public static Statement Until(int activity, int start) => new((2 * activity) + 1, -start);

    /// <summary>Looked up thousands of times for each conflict; that each side has a value is asserted where it is tested, and taken for
    /// granted where it has to be fast.</summary>
    private static int At(int side, ReadOnlySpan<int> values)
    {
        Debug.Assert(side < values.Length, "A side of no activity.");
        return Unsafe.Add(ref MemoryMarshal.GetReference(values), side);
    }
}
