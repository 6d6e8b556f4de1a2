using Refettle.Logbook;

namespace Refettle.CloseUp;

/// <summary>Torques of one joint that differ, recorded by devices of which neither had seen the other's.
/// All are kept; which one holds is decided by an entry: the joint torqued again by somebody who has seen
/// them, or the wrong one struck.</summary>
/// <param name="Told">Two or more, in the order of the log.</param>
public sealed record TorqueConflict(string Joint, ValueList<ToldTorque> Told)
{
    public string Says =>
        $"two torques are recorded and neither knew of the other: {string.Join(" or ", Told.Select(one => $"{one.Torque} ({one.At.UtcDateTime:yyyy-MM-dd}, entry {$"{one.Entry:N}"[^8..]})"))}. Torque it again, or strike the wrong one";

    /// <summary>The entries by which one of them holds: the others are struck.</summary>
    public ValueList<Happening> Decided(NewtonMetres holds) =>
        Told.Where(one => one.Torque != holds).Select(one => (Happening)new Struck(one.Entry, $"decided: {holds} holds")).ToValueList();
}

/// <summary>One of them.</summary>
/// <param name="By">Who did it; null when not said.</param>
public sealed record ToldTorque(Guid Entry, string Device, DateTimeOffset At, NewtonMetres Torque, string? By)
{
    /// <summary>Value, who, when, and the entry's mark.</summary>
    public string Says(DeviceNames names) =>
        $"{Torque}, by {By ?? $"somebody at {names.Of(Device)}"}, {At.UtcDateTime:yyyy-MM-dd HH:mm} UTC, entry {$"{Entry:N}"[^8..]}";
}

/// <summary>Finds torques that contradict each other.</summary>
public static class TorqueConflicts
{
    public static ValueList<TorqueConflict> Of(CarHistory history)
    {
        var last = new Dictionary<string, List<HistoryLine>>();
        foreach (var line in history.Lines.Where(line => line.Standing == Standing.InForce))
        {
            foreach (var joint in line.Happening is StepDone done ? ClosingRecord.OpenedBy(history.Car.Structure, done.Fact) : [])
                last.Remove(joint);
            if (line.Happening is not JointTightened tightened)
                continue;
            if (!last.TryGetValue(tightened.Joint, out var known))
                last.Add(tightened.Joint, known = []);
            known.Add(line);
        }

        var told = last.Where(joint => joint.Value.Select(line => line.Entry.Device).Distinct().Count() > 1).ToList();
        if (told.Count == 0)
            return [];
        var causes = new Causes(history);
        return told.Select(joint => Conflict(joint.Key, joint.Value, causes)).OfType<TorqueConflict>()
            .OrderBy(conflict => conflict.Joint, StringComparer.Ordinal).ToValueList();
    }

    /// <summary>What no other tightening of the joint has seen stands; it is a conflict when torques among that differ.</summary>
    private static TorqueConflict? Conflict(string joint, List<HistoryLine> lines, Causes causes)
    {
        var told = lines.Where(line => !lines.Exists(other => other != line && causes.Knew(other.Entry, line.Entry)))
            .Select(line => (line.Entry, Told: (JointTightened)line.Happening!)).Where(one => one.Told.Torque is not null)
            .Select(one => new ToldTorque(one.Entry.Id, one.Entry.Device, one.Entry.At, one.Told.Torque!.Value, one.Told.By)).ToValueList();
        return told.Select(one => one.Torque).Distinct().Count() > 1 ? new(joint, told) : null;
    }

    /// <summary>Who had seen what: by the chains and what entries name, never by clocks.</summary>
    private sealed class Causes(CarHistory history)
    {
        private readonly Dictionary<Guid, Entry> _byId = history.Lines.ToDictionary(line => line.Entry.Id, line => line.Entry);

        private readonly Dictionary<(string, long), Entry> _chain = history.Lines.Select(line => line.Entry)
            .GroupBy(entry => (entry.Device, entry.Sequence)).ToDictionary(group => group.Key, group => group.First());

        public bool Knew(Entry writer, Entry earlier)
        {
            var (seen, open) = (new HashSet<Guid>(), new Stack<Entry>([writer]));
            while (open.TryPop(out var entry))
            {
                foreach (var before in Before(entry).Where(before => seen.Add(before.Id)))
                {
                    if (before.Id == earlier.Id)
                        return true;
                    open.Push(before);
                }
            }

            return false;
        }

        private IEnumerable<Entry> Before(Entry entry)
        {
            if (_chain.TryGetValue((entry.Device, entry.Sequence - 1), out var previous))
                yield return previous;
            foreach (var id in entry.After)
            {
                if (_byId.TryGetValue(id, out var named))
                    yield return named;
            }
        }
    }
}
