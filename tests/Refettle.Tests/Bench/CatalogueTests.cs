using System.Text.Json;
using CsCheck;
using Refettle.Bench;

namespace Refettle.Tests.Bench;

public sealed class CatalogueTests
{
    public static TheoryData<string> Names => new(BenchNumbers.All.Select(number => number.Name));

    [Fact]
    public void Names_are_identifiers_and_unique()
    {
        Assert.All(BenchNumbers.All, number => Assert.True(Identifier.IsValid(number.Name)));
        Assert.Equal(BenchNumbers.All.Count, BenchNumbers.All.Select(number => number.Name).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_example_is_answered_with_formula_source_and_the_makers_precedence(string name)
    {
        var number = BenchNumbers.Find(name)!;
        var answer = Ask.Answer(name + " " + number.Example);
        Assert.NotEmpty(answer.Values);
        Assert.All(new[] { answer.Formula, answer.Source, answer.Uncertainty, answer.Says }, text => Assert.True(text.Length > 4, text));
        Assert.Contains("maker's figure comes first", answer.Note);
        Assert.All(number.Inputs, input => Assert.True(input.Says.Length > 3 && input.Accepts.Length > 3));
        Assert.All(number.Inputs.Where(input => input.Default is not null), input => Assert.NotNull(input.DefaultOrigin));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void An_answer_survives_json(string name)
    {
        var answer = Ask.Answer(name + " " + BenchNumbers.Find(name)!.Example);
        var text = JsonSerializer.Serialize(answer, ExchangeJson.Options);
        Assert.Equal(answer, JsonSerializer.Deserialize<BenchAnswer>(text, ExchangeJson.Options));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Without_inputs_every_required_one_is_named_with_its_range(string name)
    {
        var number = BenchNumbers.Find(name)!;
        var faults = number.Answer(new Dictionary<string, string>()).Faults;
        Assert.All(number.Inputs.Where(input => input.IsRequired), input =>
            Assert.Contains(faults, fault => fault.Place == input.Name && fault.Mend.Contains(input.Accepts)));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_value_outside_its_range_is_refused_with_the_range(string name)
    {
        foreach (var (input, parts) in Quantities(BenchNumbers.Find(name)!))
        {
            foreach (var outside
                in new[] { parts.Least - Math.Max(1, Math.Abs(parts.Least)), parts.Most + Math.Max(1, Math.Abs(parts.Most)) })
            {
                var result = Ask.Result(
                    $"{name} {Others(name, input)} {input.Name}={outside:R}{parts.Unit.Symbol.Replace(" ", "")}".Replace("  ", " "));
                Assert.False(result.IsGood);
                Assert.Contains(result.Faults, fault => fault.Place == input.Name && fault.Mend.Contains(input.Accepts));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_wrong_unit_is_refused_with_the_range(string name)
    {
        foreach (var (input, parts) in Quantities(BenchNumbers.Find(name)!))
        {
            foreach (var wrong
                in new[] { parts.Unit.Dimension == Dimension.Energy ? "5N" : "5J", "5furlong", parts.Unit == Units.One ? "5mm" : "5" })
            {
                var result = Ask.Result($"{name} {Others(name, input)} {input.Name}={wrong}".Replace("  ", " "));
                Assert.False(result.IsGood, wrong);
                Assert.Contains(result.Faults, fault => fault.Place == input.Name && fault.Mend.Contains(input.Accepts));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Anything_within_the_ranges_gives_finite_values_or_a_fault(string name)
    {
        var number = BenchNumbers.Find(name)!;
        var texts = number.Inputs.Select(TextFor).ToList();
        Gen.Int[0, int.MaxValue - 1].Sample(seed =>
        {
            var random = new Random(seed);
            var asked = number.Inputs.Zip(texts)
                .Where(pair => pair.First.IsRequired || random.Next(2) == 0)
                .ToDictionary(pair => pair.First.Name, pair => pair.Second(random));
            var result = number.Answer(asked);
            return result.IsGood
                ? result.Value.Values
                    .All(value => double.IsFinite(value.Value) && (value.Low is not { } low || low <= value.Value + 1e-9)
                        && (value.High is not { } high || high >= value.Value - 1e-9))
                : result.Faults.All(fault => fault.Found.Length > 0 && fault.Mend.Length > 0);
        }, iter: 300);
    }

    [Fact]
    public void All_faults_come_at_once()
    {
        var result = Ask.Result("preload torque=48 thread=M10x1.2 class=9 colour=red");
        Assert.Equal(["preload", "torque", "thread", "class"], result.Faults.Select(fault => fault.Place));
    }

    [Fact]
    public void An_unknown_number_is_answered_with_the_known_ones() =>
        Assert.Contains("preload", Ask.Result("preloud torque=1Nm").Faults.Single().Mend);

    [Theory]
    [InlineData("torque")]
    [InlineData("torque=")]
    [InlineData("=48Nm")]
    public void A_pair_must_have_key_and_value(string pair) => Assert.False(Ask.Result("preload thread=M10 " + pair).IsGood);

    [Fact]
    public void A_key_given_twice_is_refused() => Assert.False(Ask.Result("preload thread=M10 torque=48Nm torque=50Nm").IsGood);

    [Fact]
    public void Defaults_are_shown_with_their_origin()
    {
        var answer = Ask.Answer("preload torque=48Nm thread=M10");
        Assert.Contains(answer.Inputs, input => input is { Name: "k", Text: "0.20", Origin: not null });
        Assert.Contains(answer.Inputs, input => input is { Name: "torque", Text: "48Nm", Origin: null });
    }

    [Fact]
    public void An_answer_can_be_turned_into_another_unit()
    {
        var value = Ask.Answer("preload torque=48Nm thread=M10").In(Units.PoundForce).Values[0];
        // 24 000 N / 4.4482216152605 N, the exact pound-force.
        Assert.Equal(5395.41, value.Value, 2);
        Assert.Equal(5395.41 * 0.65, value.Low!.Value, 2);
    }

    private static IEnumerable<(Input<double> Input, (Unit Unit, double Least, double Most) Parts)> Quantities(BenchNumber number) =>
        number.Inputs.OfType<Input<double>>().Select(input => (input, Parts(input)));

    private static string Others(string name, Input input) =>
        string.Join(' ',
            BenchNumbers.Find(name)!.Example.Split(' ').Where(pair => !pair.StartsWith(input.Name + "=", StringComparison.Ordinal)));

    /// <summary>Takes the range apart from what the input says it accepts.</summary>
    private static (Unit Unit, double Least, double Most) Parts(Input input)
    {
        var pieces = input.Accepts.Split(" to ");
        var most = Measure.Read("most", pieces[1], null).Value;
        return (most.Unit, double.Parse(pieces[0]), most.Value);
    }

    private static Func<Random, string> TextFor(Input input) => input switch
    {
        Input<double> => Parts(input) is var parts ? random => Between(random, parts.Least, parts.Most) + parts.Unit.Symbol : null!,
        Input<ValueList<double>> when input.Accepts.StartsWith("outward") =>
            random => Between(random, -3000, 3000) + "," + Between(random, 0, 1000) + "mm",
        Input<ValueList<double>> => ListText(input.Accepts),
        Input<int> => random => random.Next(1, 10).ToString(),
        Input<string> => random => input.Words[random.Next(input.Words.Count)],
        Input<Measure> => random => Between(random, 0, 10) + (random.Next(4) == 0 ? "N" : "mm"),
        Input<Unit> => random => Units.All[random.Next(1, Units.All.Count)].Symbol,
        _ => random => new[] { "M6", "M8", "M10", "M12", "M12x1.25", "M16", "M24", "1/4-20", "3/8-24", "1-8", "M39" }[random.Next(11)],
    };

    private static Func<Random, string> ListText(string accepts)
    {
        var (fewest, range) = (int.Parse(accepts.Split(' ')[0]), accepts.Split(", each ")[1].Split(" to "));
        var most = Measure.Read("most", range[1], null).Value;
        return random => string.Join(',',
            Enumerable.Range(0, fewest + random.Next(5)).Select(_ => Between(random, double.Parse(range[0]), most.Value))) + most.Unit;
    }

    private static string Between(Random random, double least, double most) =>
        random.Next(10) switch { 0 => least, 1 => most, _ => Math.Round(least + (most - least) * random.NextDouble(), 6) }
            is var value ? Math.Clamp(value, least, most).ToString("0.##########") : "";
}
