namespace Refettle.Access;

/// <summary>What hangs on what: along joints that carry, from the parts that everything else hangs on.</summary>
internal static class Hanging
{
    /// <summary>These carry nothing: what only they hold hangs already. Common practice, no source.</summary>
    private static readonly JointKind[] _slack =
        [JointKind.Clip, JointKind.Connector, JointKind.Hose, JointKind.Pipe, JointKind.Cable, JointKind.Seal];

    public static bool Carries(Joint joint) => !_slack.Contains(joint.Kind);

    /// <summary>The parts that nothing carries any more once a joint is open, in the order of their names.</summary>
    /// <param name="opened">Joints that are open before it, besides those of the log.</param>
    /// <param name="gone">Parts that are off by then, besides those of the log.</param>
    public static ValueList<Part> On(Joint joint, CarStanding standing, IReadOnlySet<string> opened, IReadOnlySet<string> gone)
    {
        if (!Carries(joint))
            return [];
        var falling = Carried(standing, opened, gone);
        falling.ExceptWith(Carried(standing, opened.Append(joint.Id).ToHashSet(), gone));
        return falling.Select(part => standing.Parts[part]).OrderBy(part => part.Name, StringComparer.Ordinal).ToValueList();
    }

    private static HashSet<string> Carried(CarStanding standing, IReadOnlySet<string> opened, IReadOnlySet<string> gone)
    {
        var carried = standing.Parts.Values.Where(part => part.Fixed).Select(part => part.Id).ToHashSet();
        var next = new Queue<string>(carried);
        while (next.TryDequeue(out var part))
        {
            foreach (var other in standing.JointsOf(part)
                .Where(joint => Carries(joint) && !opened.Contains(joint.Id) && !standing.IsTrue(Fact.Open(joint.Id)))
                .SelectMany(joint => joint.Holds)
                .Where(other => !gone.Contains(other) && !standing.IsTrue(Fact.Off(other)) && carried.Add(other)))
                next.Enqueue(other);
        }

        return carried;
    }
}
