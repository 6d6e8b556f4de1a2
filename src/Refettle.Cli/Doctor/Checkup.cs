using System.Net;
using System.Net.NetworkInformation;
using Refettle.Access;
using Refettle.Server.Pairing;
using Refettle.Sheets;

namespace Refettle.Cli.Doctor;

/// <summary>Looks at everything that a working set-up needs.</summary>
internal static class Checkup
{
    private static readonly Structure _oneClip = new()
    {
        Parts = [new() { Id = "body", Name = "Body", Fixed = true }, new() { Id = "lid", Name = "Lid" }],
        Joints = [new()
            { Id = "clip", Kind = JointKind.Clip, Holds = ["lid", "body"],
                Ways = [new() { Id = "unclip", Tool = "hand", Open = new(1), Close = new(1) }] }],
    };

    /// <param name="store">Path of the store that would be used.</param>
    public static ValueList<CheckupLine> Of(Desk desk, string store) =>
    [
        Kits(desk), Ladders(desk), Planner(desk), .. StoreCheckup.Of(store, desk.Around.Clock), Port(), Network(),
    ];

    private static CheckupLine Kits(Desk desk)
    {
        var kits = KitShelf.Load(Path.Combine(desk.Around.Content, "kits"));
        if (!kits.IsGood)
            return new("kits", Health.Wrong, kits.Faults[0].ToString(), "Install the program anew, or run it from a whole checkout.");
        return kits.Value.Faults is { Count: > 0 } faults
            ? new("kits", Health.Mind,
                $"{kits.Value.Kits.Count} can be used; {Views.Wording.Count(faults.Count, "fault", "faults")} in others",
                "See them with refettle kits.")
            : new("kits", Health.Good, $"{kits.Value.Kits.Count} in {desk.Around.Content}");
    }

    private static CheckupLine Ladders(Desk desk) => desk.Ladders() is { IsGood: false } bad
        ? new("ladders of tries", Health.Wrong, bad.Faults[0].ToString(), "Install the program anew, or mend the file it names.")
        : new("ladders of tries", Health.Good, $"in {desk.Around.Content}");

    /// <summary>Asks for the smallest plan there is: it shows that the solvers' native library loads.</summary>
    private static CheckupLine Planner(Desk desk)
    {
        try
        {
            var plan = desk.Planner.Reach(new() { Id = "doctor", Name = "Doctor", Structure = _oneClip }, Question.For(Fact.Off("lid")));
            return plan.Status == PlanStatus.Optimal
                ? new("planner", Health.Good, "answers")
                : new("planner", Health.Wrong, $"calls the smallest plan {plan.Status}", "Install the program anew.");
        }
        catch (Exception trouble) when (trouble is DllNotFoundException or TypeInitializationException or BadImageFormatException
            or EntryPointNotFoundException)
        {
            return new("planner", Health.Wrong, $"its native library does not load ({trouble.Message.ReplaceLineEndings(" ")})",
                "Install the build for this kind of machine.");
        }
    }

    private static CheckupLine Port()
    {
        var taken = IPGlobalProperties.GetIPGlobalProperties().GetActiveTcpListeners()
            .Any(one => one.Port == Serving.UsualPort && (one.Address.Equals(IPAddress.Loopback) || one.Address.Equals(IPAddress.Any)));
        return taken
            ? new("pages", Health.Mind, $"something listens at port {Serving.UsualPort}: perhaps the pages are served already",
                $"Open http://127.0.0.1:{Serving.UsualPort}, or serve with --port.")
            : new("pages", Health.Good, $"port {Serving.UsualPort} is free");
    }

    private static CheckupLine Network() => Doorway.Addresses() is { Count: > 0 } addresses
        ? new("network", Health.Good, $"phones would find this machine at {string.Join(", ", addresses)} with serve --lan")
        : new("network", Health.Mind, "this machine has no address that a phone could reach",
            "Join the phone's network before serve --lan.");
}
