using Refettle.Bench.Torque;

namespace Refettle.CloseUp;

/// <summary>What is on a thread.</summary>
public enum ThreadCondition
{
    /// <summary>Nothing is said about it.</summary>
    NotSaid,

    /// <summary>Clean and dry.</summary>
    Dry,

    Oiled,
    AntiSeize,

    /// <summary>It slips while wet, by how much its sheet says.</summary>
    Threadlocker,
}

/// <summary>What to do with a stated torque.</summary>
public enum TorqueUse
{
    AsStated,

    /// <summary>Turned into the torque for the same clamp load; both are shown.</summary>
    Corrected,

    /// <summary>Fit the thread as the figure wants it, then use the figure.</summary>
    FitAsStated,

    /// <summary>A person has to say what the figure is for.</summary>
    Ask,
}

/// <summary>The decision, with its torque and reason.</summary>
/// <param name="Torque">What to set; null while something has to be asked.</param>
public sealed record TorqueAdvice(TorqueUse Use, NewtonMetres? Torque, string Says);

/// <summary>Whether a stated torque fits the thread as it will be fitted.</summary>
/// <remarks>A maker's figure for a lubricated thread is never changed by calculation. Nut factors are those of
/// <see cref="NutFactor.Surfaces"/>.</remarks>
public static class LubricantDecision
{
    /// <param name="stated">The figure, more than 0.</param>
    /// <param name="origin">Where the figure comes from.</param>
    /// <param name="statedFor">The condition that the figure is for.</param>
    /// <param name="fitted">The condition that it will be fitted in; <see cref="ThreadCondition.NotSaid"/> has to be asked.</param>
    public static TorqueAdvice Of(NewtonMetres stated, Origin origin, ThreadCondition statedFor, ThreadCondition fitted) =>
        (statedFor, fitted) switch
        {
            (_, ThreadCondition.NotSaid) => Ask("How will the thread be fitted: dry, oiled, with anti-seize or with threadlocker?"),
            (ThreadCondition.NotSaid, ThreadCondition.Dry) =>
                new(TorqueUse.AsStated, stated,
                    "As stated: a figure without a word about lubricant is for a clean thread as supplied (common practice, no source)."),
            (ThreadCondition.NotSaid, _) => Ask($"Is {stated} for a dry thread, or for one {Words(fitted)}?"),
            _ when statedFor == fitted => new(TorqueUse.AsStated, stated, $"As stated, for a thread {Words(fitted)}."),
            (_, ThreadCondition.Threadlocker) =>
                Ask($"{stated} is for a thread {Words(statedFor)}. What does the threadlocker's sheet say about torque?"),
            (_, ThreadCondition.Dry) =>
                new(TorqueUse.FitAsStated, stated, $"Fit it {Words(statedFor)}, as the figure wants; dry, the same torque clamps less."),
            (ThreadCondition.Threadlocker, _) =>
                Ask($"{stated} is for a thread with threadlocker. Will it be left out, and what replaces it?"),
            (ThreadCondition.Oiled or ThreadCondition.AntiSeize, _) when origin == Origin.Maker =>
                Ask($"The maker's {stated} is for a thread {Words(statedFor)}. Fit it so, or does the maker give a figure for one {Words(fitted)}?"),
            _ => Correct(stated, statedFor, fitted),
        };

    /// <summary>The nut factor of a condition that has one: dry, oiled, anti-seize.</summary>
    private static double NutFactorOf(ThreadCondition condition) => NutFactor.Of(condition switch
    {
        ThreadCondition.Oiled => "lubricated",
        ThreadCondition.AntiSeize => "anti-seize",
        _ => "unknown",
    });

    private static TorqueAdvice Correct(NewtonMetres stated, ThreadCondition statedFor, ThreadCondition fitted)
    {
        var (from, to) = (NutFactorOf(statedFor), NutFactorOf(fitted));
        var torque = new NewtonMetres(Math.Round((decimal)LubricantSwap.TorqueNewtonMetres((double)stated.Value, from, to), 1));
        return new(TorqueUse.Corrected, torque,
            $"{torque} instead of {stated}: the figure is for a thread {Words(statedFor)}, this one is {Words(fitted)} (nut factor {to:0.00} instead of {from:0.00}, Shigley table 8-15; good to a quarter).");
    }

    private static TorqueAdvice Ask(string question) => new(TorqueUse.Ask, null, question);

    private static string Words(ThreadCondition condition) => condition switch
    {
        ThreadCondition.Dry => "clean and dry",
        ThreadCondition.Oiled => "oiled",
        ThreadCondition.AntiSeize => "with anti-seize",
        _ => "with threadlocker",
    };
}
