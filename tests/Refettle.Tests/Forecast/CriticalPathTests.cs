using Refettle.Forecast;

namespace Refettle.Tests.Forecast;

/// <summary>Published worked examples of critical paths and three-point estimates.</summary>
public sealed class CriticalPathTests
{
    private const double Unit = 10_000;

    /// <summary>Heizer, Render, Operations Management: Milwaukee Paper.</summary>
    private const string Milwaukee = "A 1 2 3; B 2 3 4; C 1 2 3 A; D 2 4 6 A B; E 1 4 7 C; F 1 2 9 C; G 3 4 11 D E; H 1 2 3 F G";

    /// <summary>Wikipedia, Program evaluation and review technique.</summary>
    private const string Seven = "A 2 4 6; B 3 5 9; C 4 5 7 A; D 4 6 10 A; E 4 5 7 B C; F 3 4 8 D; G 3 5 8 E";

    /// <summary>Hillier, Lieberman, Introduction to Operations Research: Reliable Construction (from memory,
    /// consistent with the published totals).</summary>
    private const string Reliable =
        "A 1 2 3; B 2 3.5 8 A; C 6 9 18 B; D 4 5.5 10 C; E 1 4.5 5 C; F 4 4 10 E; G 5 6.5 11 D; H 5 8 17 E G; I 3 7.5 9 C; "
        + "J 3 9 9 F I; K 4 4 4 J; L 1 5.5 7 J; M 1 2 3 H; N 5 5.5 9 K L";

    /// <summary>Fourteen activities, wizedu.com/questions/717873.</summary>
    private const string Fourteen =
        "A 5 5 7; B 1 2 5; C 5 5 5 A; D 4 8 13 A; E 1 10 17 B C; F 1 5 7 D; G 2 6 9 D; H 4 4 6 E F; I 2 7 10 G H; J 2 4 7 I; "
        + "K 6 10 13 I; L 2 6 6 J; M 2 2 3 K; N 7 7 12 L M";

    /// <summary>Guéret, Prins, Sevaux, Applications of Optimization with Xpress-MP, 7.1: a stadium, fixed weeks.</summary>
    private const string Stadium =
        "1 2; 2 16 1; 3 9 2; 4 8 2; 5 10 3; 6 6 4 5; 7 2 4; 8 2 6; 9 9 4 6; 10 5 4; 11 3 6; 12 2 9; 13 1 7; 14 7 2; 15 4 4 14; 16 3 8 11 14; 17 9 12; 18 1 17";

    private static Net Expected(string example) =>
        Read(example, (least, likely, most) => new LongTail(Unit * (least + 4 * likely + most) / 6, 0));

    private static Net Read(string example, Func<double, double, double, Uncertainty> uncertainty) =>
        example.Split(';').Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        .Aggregate(new Net(),
            (net, words) => net.Add(words[0], uncertainty(double.Parse(words[1]), double.Parse(words[2]), double.Parse(words[3])),
                words[4..]));

    /// <summary>With expected durations the finish and the critical path are the books'.</summary>
    [Theory]
    [InlineData(Milwaukee, 15, "ACEGH")]
    [InlineData(Seven, 19.5, "ACEG")]
    [InlineData(Reliable, 44, "ABCEFJLN")]
    [InlineData(Fourteen, 50.8333, "ACEHIKMN")]
    public void Expected_durations_give_the_published_path(string example, double length, string path)
    {
        var answer = Forecaster.Of(Expected(example).Ask(futures: 100)).Value;
        Assert.Equal(length, answer.Half.Time!.Value / Unit, 3);
        Assert.Equal(path, string.Concat(answer.Deciding.Where(one => one.Share.Value == 1).Select(one => one.Id).Order()));
    }

    [Fact]
    public void A_stadium_takes_64_weeks()
    {
        var net = Stadium.Split(';').Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Aggregate(new Net(), (net, words) => net.Add(words[0], int.Parse(words[1]), words[2..]));
        Assert.Equal(64, Forecaster.Of(net.Ask(futures: 100)).Value.Half.Time);
    }

    /// <summary>Against 300 000 futures sampled with NumPy's own beta and triangular distributions: the mean with its standard error, the
    /// chance of a date. They lie above the books' normal approximation, which looks at one path only.</summary>
    [Theory]
    [InlineData(Milwaukee, ThreePointForm.Beta, 15.233988, 0.00312, 16, 0.690753)]
    [InlineData(Milwaukee, ThreePointForm.Triangle, 16.285874, 0.003888, 16, 0.48274)]
    [InlineData(Seven, ThreePointForm.Beta, 19.506847, 0.002608, 20, 0.637037)]
    [InlineData(Seven, ThreePointForm.Beta, 19.506847, 0.002608, 22, 0.95664)]
    [InlineData(Seven, ThreePointForm.Triangle, 20.024875, 0.00285, 22, 0.891357)]
    [InlineData(Reliable, ThreePointForm.Beta, 44.324559, 0.005354, 47, 0.81706)]
    [InlineData(Reliable, ThreePointForm.Triangle, 46.241856, 0.006733, 47, 0.592)]
    public void Sampled_three_points_agree_with_NumPy(
        string example, ThreePointForm form, double mean, double error, double date, double chance)
    {
        var net = Read(example, (least, likely, most) => new ThreePoint(Unit * least, Unit * likely, Unit * most, form));
        var finishes = Net.Finishes(net.Ask(300_000)).Select(finish => finish / Unit).ToList();
        Sampled.Agrees(mean, finishes, error);
        Sampled.Agrees(chance, finishes.Select(finish => finish <= date ? 1.0 : 0), Math.Sqrt(chance * (1 - chance) / 300_000));
    }

    /// <summary>Taylor, Introduction to Management Science, chapter 8: one path with mean 24 and
    /// variance 5 by the book's formula, chance of 28 or less 0.9633 by the normal curve. A beta's own variance is a little greater, so
    /// this holds to three points only.</summary>
    [Fact]
    public void One_path_is_about_normal()
    {
        var net = Read("1 5 8 17; 3 3 5 7 1; 5 4 6 8 3; 7 3 4 5 5",
            (least, likely, most) => new ThreePoint(Unit * least, Unit * likely, Unit * most));
        var finishes = Net.Finishes(net.Ask()).Select(finish => finish / Unit).ToList();
        Sampled.Agrees(24, finishes);
        Assert.Equal(0.9633, finishes.Average(finish => finish <= 28 ? 1.0 : 0), 0.03);
    }
}
