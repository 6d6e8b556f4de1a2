using System.CommandLine;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

/// <summary><c>sound</c> and <c>unsound</c>.</summary>
internal static class SoundVerb
{
    public static Command Sound(Desk desk) => Make(desk, "sound", "Records that a part can carry the car.", true);

    public static Command Unsound(Desk desk) => Make(desk, "unsound", "Records that a part is too weak to carry the car.", false);

    private static Command Make(Desk desk, string verb, string says, bool isSound)
    {
        var part = new Argument<string>("part") { Description = "The part." };
        return new Command(verb, says) { part }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var judged = new SoundnessJudged(parsed.GetRequiredValue(part), isSound);
                return desk.Record(open, [judged],
                    now => Stands.After(now, $"{judged.Part} is {(isSound ? "sound" : "not sound: no stance may rest on it")}."));
            }));
    }
}
