using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using Refettle.Web.Tests.Garage;
using Refettle.Web.Times;

namespace Refettle.Web.Tests.Times;

public sealed class TimelineBookTests : IDisposable
{
    private static readonly Car Car = new()
    {
        Id = "heron",
        Name = "Heron",
        Structure = new()
        {
            Parts = [new() { Id = "body", Name = "Body", Fixed = true }, new() { Id = "tank", Name = "Tank" }],
            Joints = [new()
                { Id = "strap", Holds = ["tank", "body"], Ways = [new() { Id = "w", Tool = "spanner", Open = new(20), Close = new(30) }] }],
        },
        Calendar = new()
        {
            Spells = [new()
                { Id = "evenings", First = new(2027, 3, 2), From = new(18, 0), Until = new(21, 0), Repeats = new(Rhythm.Daily, 1, []) }]
        },
    };

    private static readonly ValueList<Fact> Goals = [Fact.Off("tank")];

    private readonly FakeTimeProvider _clock = new(new(2027, 3, 1, 12, 0, 0, TimeSpan.Zero));
    private ServiceProvider? _services;

    public void Dispose() => _services?.Dispose();

    [Fact]
    public async Task Without_the_server_the_timeline_is_worked_out_here()
    {
        var book = await OfflineAsync();
        Assert.True(book.OnDevice);
        Assert.Equal(["strip.tank", "refit.tank"], book.Shown!.Answer.Tasks.Select(task => task.Task.Id).Take(2));
        Assert.Equal(new LocalDateTime(2027, 3, 2, 18, 0), book.Shown.Answer.Tasks[0].Start);
        Assert.True(book.IsFor(Car, Goals));
        Assert.False(book.IsFor(Car with { Calendar = CarCalendar.Empty }, Goals));
    }

    [Fact]
    public async Task Whatever_is_found_asks_for_a_new_one_and_so_does_a_new_day()
    {
        var book = await OfflineAsync();
        Assert.True(book.IsFor(Car with { Bags = [new() { Code = "14", For = ["joint strap"] }] }, Goals));
        Assert.False(book.IsFor(Car with { Unsound = ["tank"] }, Goals));
        Assert.False(book.IsFor(Car with { Verdicts = [new("tank", VerdictKind.Replace, DoneBy.Self, null)] }, Goals));
        Assert.False(book.IsFor(Car with { Findings = [new() { Of = "part tank", Scale = "rust", Word = "light" }] }, Goals));
        Assert.True(book.IsFor(Car, Goals));
        _clock.Advance(TimeSpan.FromDays(1));
        Assert.False(book.IsFor(Car, Goals));
    }

    [Fact]
    public async Task What_is_wanted_while_an_answer_is_on_its_way_is_asked_for_next()
    {
        var (silence, requests) = (new TaskCompletionSource(), 0);
        var book = Book(new()
        {
            Held = silence.Task,
            Next = () =>
            {
                requests++;
                return FaultyServer.Fate.Refused;
            },
        });
        var first = book.AskAsync(Car, Goals, 0);
        await book.AskAsync(Car with { Unsound = ["tank"] }, Goals, 0);
        await book.AskAsync(Car with { Unsound = ["body"] }, Goals, 0);
        silence.SetResult();
        await first;
        Assert.Equal(2, requests);
        Assert.True(book.IsFor(Car with { Unsound = ["body"] }, Goals));
    }

    [Fact]
    public async Task Another_cars_timeline_is_not_shown_while_this_ones_is_on_its_way()
    {
        var server = new FaultyServer { Next = () => FaultyServer.Fate.RequestLost };
        var book = Book(server);
        await book.AskAsync(Car, Goals, 0);
        Assert.Equal("heron", book.Car);
        var silence = new TaskCompletionSource();
        server.Held = silence.Task;
        var asked = book.AskAsync(Car with { Id = "finch" }, Goals, 0);
        Assert.Null(book.Shown);
        silence.SetResult();
        await asked;
        Assert.Equal("finch", book.Car);
    }

    [Fact]
    public async Task With_nothing_chosen_nothing_is_asked_and_a_choice_is_asked_anew()
    {
        var book = Book(new());
        await book.AskAsync(Car, [], 0);
        Assert.Equal((true, 0, null), (book.IsIdle, book.Faults.Count, book.Shown));
        var chosen = Car with { Jobs = [new() { Id = "tank", Name = "Tank", Goals = Goals }], Scope = ["tank"] };
        Assert.True(book.IsFor(Car, []));
        Assert.False(book.IsFor(chosen, []));
        await book.AskAsync(chosen, [], 0);
        Assert.False(book.IsIdle);
    }

    [Fact]
    public async Task A_move_is_tried_at_once_and_refused_where_it_does_not_work()
    {
        var book = await OfflineAsync();
        var later = book.Try(Car, "strip.tank", new(2027, 3, 4, 19, 0));
        Assert.Equal(new LocalDateTime(2027, 3, 4, 19, 0), later.Value.Answer.Tasks[0].Start);
        var asleep = book.Try(Car, "strip.tank", new(2027, 3, 4, 3, 0));
        Assert.Equal("it cannot begin Thu 2027-03-04 03:00: you are not in the garage then", Assert.Single(asleep.Faults).Found);
        Assert.Equal(new LocalDateTime(2027, 3, 2, 18, 0), book.Shown!.Answer.Tasks[0].Start);
    }

    /// <summary>20 minutes of taking off from 18:00 on come first.</summary>
    [Fact]
    public async Task A_move_before_what_it_waits_for_is_refused_with_that_reason()
    {
        var book = await OfflineAsync();
        Assert.True(book.Try(Car, "refit.tank", new(2027, 3, 2, 18, 20)).IsGood);
        var early = Assert.Single(book.Try(Car, "refit.tank", new(2027, 3, 2, 18, 10)).Faults);
        Assert.StartsWith("it cannot begin Tue 2027-03-02 18:10: first: ", early.Found, StringComparison.Ordinal);
        Assert.EndsWith("which ends Tue 2027-03-02 18:20", early.Found, StringComparison.Ordinal);
        Assert.Contains("that is past", Assert.Single(book.Try(Car, "strip.tank", new(2027, 2, 27, 18, 0)).Faults).Found,
            StringComparison.Ordinal);
    }

    private async Task<TimelineBook> OfflineAsync()
    {
        var book = Book(new() { Next = () => FaultyServer.Fate.RequestLost });
        await book.AskAsync(Car, Goals, 0);
        Assert.Empty(book.Faults);
        return book;
    }

    private TimelineBook Book(FaultyServer server)
    {
        var services = new ServiceCollection();
        services.AddGarage(server);
        _services = services.AddSingleton<TimeProvider>(_clock).BuildServiceProvider();
        return _services.GetRequiredService<TimelineBook>();
    }
}
