namespace Refettle.Checks;

/// <summary>States and stances.</summary>
internal static class StateCheck
{
    public static void Run(Structure structure, Names names, FaultBook book)
    {
        foreach (var state in structure.States)
            One(state, names, book);
    }

    private static void One(State state, Names names, FaultBook book)
    {
        var place = $"state {state.Id}";
        PartCheck.Name(place, state.Name, book);
        if (state.Ways.Count == 0)
            book.Error(place, "ways", "there is no way to bring it about", "Describe at least one way");
        WayCheck.Run(place, state.Ways, names, book);
        PartCheck.Listed(place, "supports", state.Supports, names, book);
        if (state.Supports.Count > 0 && !state.IsStance)
            book.Error(place, "supports", "parts that carry the car are named, but it is not a stance",
                "Write stance: true, or leave supports out");
        if (state.Drains
            .FirstOrDefault(hazard => hazard is not (Hazard.Fuel or Hazard.BrakeFluid or Hazard.Refrigerant or Hazard.HotCoolant
                or Hazard.Oil), Hazard.Oil) is var odd and not Hazard.Oil)
            book.Error(place, "drains", $"{odd} is no fluid that runs out", "Write fuel, brake-fluid, refrigerant, hot-coolant or oil");
        for (var i = 0; i < state.Ways.Count; i++)
        {
            if (state.IsStance && state.Ways[i].Clear.FirstOrDefault(names.IsStance) is { Subject: { } other } && other != state.Id)
                book.Error(place, $"ways[{i}].clear", $"it waits for state({other}), and a car is in one stance at a time",
                    "Leave it out: a change goes from any stance, its minutes those of the whole");
            if (state.Ways[i].Where == WorkPlace.OnBench)
                book.Error(place, $"ways[{i}].where", "a state of the car cannot be brought about on the bench", "Write where: on-car");
        }
    }
}
