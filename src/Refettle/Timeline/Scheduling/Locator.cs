namespace Refettle.Timeline.Scheduling;

/// <summary>Finds where times lie among ascending ones: a table says from where on to look, so that a look takes a step or two.</summary>
internal sealed class Locator
{
    private readonly int[] _values;
    private readonly int[] _places;
    private readonly int _shift;

    /// <param name="values">Ascending.</param>
    public Locator(int[] values)
    {
        _values = values;
        var width = values.Length == 0 ? 0L : (long)values[^1] - values[0];
        while (width >> _shift > 4L * values.Length)
            _shift++;
        _places = new int[(width >> _shift) + 1];
        for (int place = 0, i = 0; place < _places.Length && values.Length > 0; place++)
        {
            while (i + 1 < values.Length && values[i + 1] - (long)values[0] <= (long)place << _shift)
                i++;
            _places[place] = i;
        }
    }

    /// <summary>The last value that is no more than this; below 0 when there is none.</summary>
    public int LastAtOrBefore(int value)
    {
        var values = _values;
        if (values.Length == 0 || value < values[0])
            return -1;
        var place = ((long)value - values[0]) >> _shift;
        if (place >= _places.Length)
            return values.Length - 1;
        var i = _places[place];
        while (i + 1 < values.Length && values[i + 1] <= value)
            i++;
        return i;
    }
}
