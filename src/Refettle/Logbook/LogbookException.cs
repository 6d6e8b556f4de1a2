namespace Refettle.Logbook;

/// <summary>A logbook could not be read: the file is locked, damaged or gone. Its message is meant for the user.</summary>
public sealed class LogbookException(Fault fault, Exception? cause = null) : IOException(fault.ToString(), cause)
{
    public Fault Fault { get; } = fault;
}
