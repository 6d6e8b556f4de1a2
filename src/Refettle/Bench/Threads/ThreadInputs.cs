namespace Refettle.Bench.Threads;

/// <summary>Inputs that name a thread and a class.</summary>
public static class ThreadInputs
{
    public static Input<ScrewThread> Thread { get; } = new()
    {
        Name = "thread",
        Says = "thread of the bolt",
        Accepts = "M3 to M39, M10x1.25 for a fine thread, 3/8-16 for an inch thread",
        Reader = text => ScrewThread.Read("thread", text),
    };

    public static Input<string> Class { get; } = new()
    {
        Name = "class",
        Says = "property class or grade, as marked on the head",
        Accepts = string.Join(" | ", FastenerClass.Names),
        Words = FastenerClass.Names,
        Reader = ReadName,
    };

    private static Result<string> ReadName(string text)
    {
        var word = text.Trim().ToUpperInvariant();
        var name = word is "5" or "8" ? "SAE " + word : word;
        return FastenerClass.Names.Contains(name)
            ? Result<string>.Good(name)
            : Result<string>.Bad(new Fault("class", $"'{text}' is not known", "Give one of: " + string.Join(", ", FastenerClass.Names)));
    }
}
