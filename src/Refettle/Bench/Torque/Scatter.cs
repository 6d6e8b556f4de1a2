namespace Refettle.Bench.Torque;

/// <summary>How far the clamp load of single bolts strays from its mean when tightened by a method.</summary>
public static class Scatter
{
    public const string Source = "NSTS 08307 Rev A 3.4; NASA-STD-5020B table 3";

    public static ValueList<Method> Methods { get; } =
    [
        new("torque-dry", 35, "torque wrench, unlubricated"),
        new("torque-cadmium", 30, "torque wrench, cadmium-plated"),
        new("torque-lubricated", 25, "torque wrench, lubricated"),
        new("angle", 25, "turn of nut, untested"),
        new("hydraulic", 15, "hydraulic tensioner"),
        new("washer", 10, "load-indicating washer"),
        new("stretch", 10, "bolt stretch measured"),
        new("instrumented", 5, "instrumented bolt"),
    ];

    public static Input<string> Input { get; } = Inputs
        .Choice("method", "how it is tightened", Methods.Select(row => row.Name).ToValueList())
        .Or("torque-dry", "the widest scatter of the table");

    public static BenchNumber Number { get; } = new()
    {
        Name = "scatter",
        Says = "Scatter of clamp load by tightening method, and the tightening factor",
        Room = "Torque",
        Formula = "αA = F max / F min = (1 + s) / (1 − s)",
        Source = Source + "; αA after VDI 2230",
        Uncertainty = "Typical of the method, not measured on your bolts. VDI 2230 gives ±17 to ±23 % for a signalling torque wrench.",
        Inputs = [Input],
        Example = "method=torque-lubricated",
        Work = Work,
    };

    /// <summary>Scatter of a method, as a share of 1.</summary>
    public static double Share(string method) => Methods.Single(row => row.Name == method).PlusMinusPercent / 100.0;

    /// <summary>αA for a scatter s from 0 to below 1.</summary>
    public static double TighteningFactor(double scatter) => (1 + scatter) / (1 - scatter);

    private static Result<Outcome> Work(Given given)
    {
        var share = Share(given.Of(Input));
        return Outcome.Of(new("scatter ±", share * 100, Units.Percent), new("tightening factor", TighteningFactor(share), Units.One));
    }
}

/// <summary>A way of tightening and its scatter.</summary>
public sealed record Method(string Name, int PlusMinusPercent, string Says);
