namespace Refettle.Logbook;

/// <summary>Works out the facts that follow by definition from parts off, joints open and states.</summary>
internal static class FactsThatHold
{
    /// <summary>A joint between a part that is off and one that is not is open; a sub-assembly is off when all its members are; a part is
    /// free when it is off and all its joints are open; a space can be reached when all that closes it is off.</summary>
    public static ValueList<Fact> Of(Structure car, HashSet<string> off, HashSet<string> open, HashSet<string> states)
    {
        var facts = new HashSet<Fact>();
        var held = new HashSet<string>();
        foreach (var joint in car.Joints)
        {
            if (open.Contains(joint.Id) || (joint.Holds.Any(off.Contains) && !joint.Holds.All(off.Contains)))
                facts.Add(Fact.Open(joint.Id));
            else
                held.UnionWith(joint.Holds);
        }

        foreach (var part in car.Parts.Where(part => off.Contains(part.Id)))
        {
            facts.Add(Fact.Off(part.Id));
            if (!held.Contains(part.Id))
                facts.Add(Fact.Free(part.Id));
        }

        facts.UnionWith(car.SubAssemblies.Where(group => group.Members.All(off.Contains)).Select(group => Fact.Off(group.Id)));
        facts.UnionWith(car.Spaces.Where(space => space.ClosedBy.All(unit => facts.Contains(Fact.Off(unit))))
            .Select(space => Fact.Reach(space.Id)));
        facts.UnionWith(car.States.Where(state => !state.IsStance && states.Contains(state.Id)).Select(state => Fact.State(state.Id)));
        return facts.Order().ToValueList();
    }
}
