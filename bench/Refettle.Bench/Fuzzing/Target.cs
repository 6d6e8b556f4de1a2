using System.Text;

namespace Refettle.Bench.Fuzzing;

/// <summary>One changed input, and the reading of it.</summary>
/// <param name="Read">It may refuse the input; it must not throw, and it throws where an answer is not sound.</param>
internal sealed record Trial(byte[] Input, Action Read);

/// <summary>Something that reads what people or networks give it.</summary>
/// <param name="Share">How many of ten thousand inputs go to it.</param>
/// <param name="Next">The next changed input. Asked by several threads, each with a mutator of its own.</param>
internal sealed record Target(string Name, int Share, Func<Mutator, Trial> Next)
{
    /// <summary>Sound texts, changed.</summary>
    public static Target Texts(string name, int share, IReadOnlyList<string> seeds, Action<string> read) => new(name, share, mutator =>
    {
        // Half of a pair of surrogates cannot come in: what is read was UTF-8.
        var bytes = Encoding.UTF8.GetBytes(mutator.Change(mutator.Pick(seeds), mutator.Pick(seeds)));
        var text = Encoding.UTF8.GetString(bytes);
        return new(bytes, () => read(text));
    });

    /// <summary>Sound files, changed byte by byte.</summary>
    public static Target Files(string name, int share, IReadOnlyList<byte[]> seeds, Action<byte[]> read) => new(name, share, mutator =>
    {
        var bytes = mutator.Change(mutator.Pick(seeds));
        return new(bytes, () => read(bytes));
    });

    /// <summary>For an answer that must not be: the run shows it with the input.</summary>
    /// <exception cref="UnsoundAnswerException">When there is a fault.</exception>
    public static void Demand(IEnumerable<Fault> faults)
    {
        if (faults.FirstOrDefault() is { } fault)
            throw new UnsoundAnswerException($"{fault.Place}: {fault.Found}");
    }
}

/// <summary>What was read contradicts itself.</summary>
internal sealed class UnsoundAnswerException(string found) : Exception(found);
