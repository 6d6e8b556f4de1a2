namespace Refettle.Cli;

/// <summary>A line on the error stream while something takes longer than a second.</summary>
internal sealed class Progress : IDisposable
{
    private static readonly TimeSpan _second = TimeSpan.FromSeconds(1);

    private readonly Surroundings _around;
    private readonly ITimer _timer;
    private readonly Lock _lock = new();
    private readonly string _doing;
    private int _seconds;
    private bool _ended;

    public Progress(Surroundings around, string doing)
    {
        (_around, _doing) = (around, doing);
        _timer = around.Clock.CreateTimer(_ => Tick(), null, _second, _second);
    }

    public void Dispose()
    {
        _timer.Dispose();
        lock (_lock)
        {
            _ended = true;
            if (_seconds > 0 && _around.IsWatched)
                _around.Error.Write("\r\e[K");
        }
    }

    /// <summary>On a terminal the line counts on; elsewhere it is written once.</summary>
    private void Tick()
    {
        lock (_lock)
        {
            _seconds++;
            if (_ended)
                return;
            if (_around.IsWatched)
                _around.Error.Write($"\r{_doing}, {_seconds} s");
            else if (_seconds == 1)
                _around.Error.WriteLine($"{_doing} …");
        }
    }
}
