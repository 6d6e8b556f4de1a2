namespace Refettle.Sheets.Tests;

/// <summary>The facts that no way brings about while the car stands on its wheels: whatever is chosen, stands come first.</summary>
internal sealed class Raised
{
    private readonly Structure _car;
    private readonly HashSet<Fact> _waiting = [Fact.State("on-stands"), Fact.State("not-rolling")];
    private readonly Dictionary<string, Joint[]> _jointsOf;

    public Raised(Structure car)
    {
        _car = car;
        _jointsOf = car.Parts.ToDictionary(part => part.Id, part => car.Joints.Where(joint => joint.Holds.Contains(part.Id)).ToArray());
        int before;
        do
        {
            before = _waiting.Count;
            Spread();
        }
        while (_waiting.Count > before);
    }

    /// <summary>Something that has to be true first waits for stands.</summary>
    public bool Waits(IEnumerable<Fact> needs) => needs.Any(_waiting.Contains);

    private void Spread()
    {
        Add(_car.States.Where(state => !state.IsStance && state.Ways.All(way => Waits(way.Clear))).Select(state => Fact.State(state.Id)));
        Add(_car.Joints.Where(joint => joint.Ways.All(way => Waits(way.Clear) || OnBench(joint, way)))
            .Select(joint => Fact.Open(joint.Id)));
        Add(_car.SubAssemblies.Where(unit => Waits(unit.Out.Clear) || Waits(Around(unit))).Select(unit => Fact.Off(unit.Id)));
        Add(_car.Parts.Where(part => Waits(JointsOf(part))).Select(part => Fact.Free(part.Id)));
        Add(_car.Parts.Where(part => (Waits(JointsOf(part)) || Waits(part.Out.Clear)) && Waits(part)).Select(part => Fact.Off(part.Id)));
    }

    private void Add(IEnumerable<Fact> facts) => _waiting.UnionWith(facts.ToArray());

    private bool OnBench(Joint joint, Way way) => way.Where == WorkPlace.OnBench && Waits(joint.Holds.Select(Fact.Off));

    private bool Waits(Part part) =>
        _car.SubAssemblies.Where(unit => unit.Members.Contains(part.Id)).All(unit => _waiting.Contains(Fact.Off(unit.Id)));

    private IEnumerable<Fact> JointsOf(Part part) => _jointsOf[part.Id].Select(joint => Fact.Open(joint.Id));

    private IEnumerable<Fact> Around(SubAssembly unit) => _car.Joints
        .Where(joint => joint.Holds.Any(unit.Members.Contains) && !joint.Holds.All(unit.Members.Contains))
        .Select(joint => Fact.Open(joint.Id));
}
