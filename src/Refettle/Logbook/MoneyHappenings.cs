namespace Refettle.Logbook;

/// <summary>Money was paid, or came back. <c>money-spent</c></summary>
public sealed record MoneySpent(Receipt Receipt) : Happening;
