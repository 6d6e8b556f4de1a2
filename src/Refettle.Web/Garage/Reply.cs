namespace Refettle.Web.Garage;

/// <summary>What came back from the server, or that it could not be reached.</summary>
public sealed record Reply<T>(bool Reached, Result<T> Result)
{
    public bool IsGood => Reached && Result.IsGood;

    public T Value => Result.Value;

    public ValueList<Fault> Faults => Result.Faults;

    public static Reply<T> Unreached { get; } =
        new(false, Result<T>.Bad(
            new Fault("the network", "the garage's server cannot be reached", "What you mark is kept here and sent when it can be.")));
}
