namespace Refettle.Tests.Access;

/// <summary>Random cars with every hazard, ways by flame, machine and heat, zones near each other or not, work below.</summary>
internal static class HotCars
{
    private static readonly string[] _tools = ["torch and drift", "angle grinder", "reciprocating saw", "induction heater", "trolley jack",
        "spring compressor", "hand hacksaw", "13 mm socket"];

    public static Car Make(int seed, int hazardOneIn = 5)
    {
        var random = new Random(seed);
        var car = RandomCars.Make(seed);
        var structure = car.Structure;
        return car with
        {
            Stance = Car.OnWheels,
            Structure = structure with
            {
                Zones = structure.Zones
                    .Select(zone => zone with
                    {
                        Near = random.Next(3) == 0 ? [] : [zone.Id, $"z{random.Next(3)}"],
                        Posture = random.Next(2) == 0 ? "under" : "standing"
                    }).ToValueList(),
                Parts = structure.Parts
                    .Select(part => random.Next(hazardOneIn) == 0 ? part with { Hazards = [(Hazard)random.Next(10)] } : part).ToValueList(),
                Joints = structure.Joints
                    .Select(joint => joint with
                    {
                        Thread = random.Next(2) == 0 ? "M10" : null,
                        Kind = random.Next(15) == 0 ? JointKind.Weld : JointKind.Bolt,
                        Ways = Ways(joint, random)
                    }).ToValueList(),
                States =
                [
                    .. structure.States.Select(state => state.Id == "wheels" ? state with { Id = Car.OnWheels } : state),
                    .. new[] { "brakes-drained", "airbags-safe" }.Where(_ => random.Next(2) == 0)
                        .Select(safe => new State
                            { Id = safe, Name = safe, Ways = [new() { Id = "by-hand", Tool = "hands", Open = new(9) }] }),
                ],
            },
        };
    }

    private static ValueList<Way> Ways(Joint joint, Random random) =>
    [
        .. joint.Ways.Select(way => way with { Tool = _tools[random.Next(_tools.Length)], Posture = random.Next(4) == 0 ? "under" : null }),
        new() { Id = "slow", Tool = "13 mm socket", Open = new(25), Close = new(25) },
    ];
}
