namespace Refettle.Bench;

/// <summary>The units that are read and written. Factors are exact by definition unless a comment says otherwise.</summary>
public static class Units
{
    public static Unit One { get; } = new(Dimension.Number, "", 1);
    public static Unit Percent { get; } = new(Dimension.Share, "%", 1) { Spellings = ["percent"] };

    public static Unit Millimetre { get; } = new(Dimension.Length, "mm", 1);
    public static Unit Micrometre { get; } = new(Dimension.Length, "µm", 0.001) { Spellings = ["micron", "microns"] };
    public static Unit Centimetre { get; } = new(Dimension.Length, "cm", 10);
    public static Unit Metre { get; } = new(Dimension.Length, "m", 1000);
    public static Unit Mil { get; } = new(Dimension.Length, "mil", 0.0254) { Spellings = ["mils", "thou"] };
    public static Unit Inch { get; } = new(Dimension.Length, "in", 25.4) { Spellings = ["inch", "inches", "\""] };
    public static Unit Foot { get; } = new(Dimension.Length, "ft", 304.8) { Spellings = ["foot", "feet"] };

    public static Unit SquareMillimetre { get; } = new(Dimension.Area, "mm²", 1);
    public static Unit SquareCentimetre { get; } = new(Dimension.Area, "cm²", 100);
    public static Unit SquareMetre { get; } = new(Dimension.Area, "m²", 1e6);
    public static Unit SquareInch { get; } = new(Dimension.Area, "in²", 645.16);
    public static Unit SquareFoot { get; } = new(Dimension.Area, "ft²", 92_903.04);

    public static Unit Litre { get; } = new(Dimension.Volume, "L", 1) { Spellings = ["litre", "litres", "liter"] };
    public static Unit Millilitre { get; } = new(Dimension.Volume, "mL", 0.001) { Spellings = ["cm3", "cc"] };
    public static Unit UsGallon { get; } = new(Dimension.Volume, "US gal", 3.785411784) { Spellings = ["gal"] };
    public static Unit UsFluidOunce { get; } = new(Dimension.Volume, "US fl oz", 3.785411784 / 128) { Spellings = ["fl oz"] };

    public static Unit Kilogram { get; } = new(Dimension.Mass, "kg", 1);
    public static Unit Gram { get; } = new(Dimension.Mass, "g", 0.001);
    public static Unit Pound { get; } = new(Dimension.Mass, "lb", 0.45359237) { Spellings = ["lbs"] };

    public static Unit Hour { get; } = new(Dimension.Time, "h", 1) { Spellings = ["hr", "hours", "hour"] };
    public static Unit Minute { get; } = new(Dimension.Time, "min", 1 / 60.0) { Spellings = ["minutes"] };
    public static Unit Day { get; } = new(Dimension.Time, "d", 24) { Spellings = ["day", "days"] };

    public static Unit Newton { get; } = new(Dimension.Force, "N", 1);
    public static Unit Kilonewton { get; } = new(Dimension.Force, "kN", 1000);
    public static Unit PoundForce { get; } = new(Dimension.Force, "lbf", 4.4482216152605);
    public static Unit KilogramForce { get; } = new(Dimension.Force, "kgf", 9.80665) { Spellings = ["kp"] };

    public static Unit NewtonMetre { get; } = new(Dimension.Torque, "N·m", 1);
    public static Unit PoundForceFoot { get; } = new(Dimension.Torque, "lbf·ft", 1.3558179483314004)
    { Spellings = ["ft·lbf", "lb·ft", "ft·lb"] };
    public static Unit PoundForceInch { get; } = new(Dimension.Torque, "lbf·in", 1.3558179483314004 / 12)
    { Spellings = ["in·lbf", "lb·in", "in·lb"] };
    public static Unit KilogramForceMetre { get; } = new(Dimension.Torque, "kgf·m", 9.80665) { Spellings = ["kp·m", "kg·m", "mkp"] };
    public static Unit KilogramForceCentimetre { get; } = new(Dimension.Torque, "kgf·cm", 0.0980665) { Spellings = ["kp·cm", "kg·cm"] };
    public static Unit OunceForceInch { get; } = new(Dimension.Torque, "ozf·in", 1.3558179483314004 / 192) { Spellings = ["in·ozf"] };

    public static Unit Megapascal { get; } = new(Dimension.Pressure, "MPa", 1) { Spellings = ["N/mm2"] };
    public static Unit Gigapascal { get; } = new(Dimension.Pressure, "GPa", 1000);
    public static Unit Kilopascal { get; } = new(Dimension.Pressure, "kPa", 0.001);
    public static Unit Bar { get; } = new(Dimension.Pressure, "bar", 0.1);

    /// <summary>lbf over in², rounded to double.</summary>
    public static Unit PoundPerSquareInch { get; } = new(Dimension.Pressure, "psi", 4.4482216152605 / 645.16);
    public static Unit KilopoundPerSquareInch { get; } = new(Dimension.Pressure, "ksi", 4448.2216152605 / 645.16);
    public static Unit MegapoundPerSquareInch { get; } = new(Dimension.Pressure, "Mpsi", 4_448_221.6152605 / 645.16);

    public static Unit NewtonPerMillimetre { get; } = new(Dimension.SpringRate, "N/mm", 1);
    public static Unit NewtonPerMetre { get; } = new(Dimension.SpringRate, "N/m", 0.001);
    public static Unit PoundForcePerInch { get; } = new(Dimension.SpringRate, "lbf/in", 4.4482216152605 / 25.4) { Spellings = ["lb/in"] };
    public static Unit KilogramForcePerMillimetre { get; } = new(Dimension.SpringRate, "kgf/mm", 9.80665) { Spellings = ["kg/mm"] };

    public static Unit Degree { get; } = new(Dimension.Angle, "°", 1) { Spellings = ["deg", "degrees"] };
    public static Unit ArcMinute { get; } = new(Dimension.Angle, "′", 1 / 60.0) { Spellings = ["arcmin", "'"] };
    public static Unit Radian { get; } = new(Dimension.Angle, "rad", 180 / Math.PI);
    public static Unit DegreePerMillimetre { get; } = new(Dimension.AnglePerLength, "°/mm", 1) { Spellings = ["deg/mm"] };

    public static Unit Celsius { get; } = new(Dimension.Temperature, "°C", 1) { Spellings = ["C", "degC"] };
    public static Unit Fahrenheit { get; } = new(Dimension.Temperature, "°F", 5 / 9.0, -160 / 9.0) { Spellings = ["F", "degF"] };
    public static Unit KelvinStep { get; } = new(Dimension.TemperatureStep, "K", 1);
    public static Unit FahrenheitStep { get; } = new(Dimension.TemperatureStep, "°F step", 5 / 9.0) { Spellings = ["R"] };

    public static Unit Hertz { get; } = new(Dimension.Frequency, "Hz", 1);
    public static Unit Joule { get; } = new(Dimension.Energy, "J", 1);
    public static Unit SquareMetrePerLitre { get; } = new(Dimension.Spreading, "m²/L", 1);
    public static Unit SquareFootPerUsGallon { get; } = new(Dimension.Spreading, "ft²/US gal", 0.09290304 / 3.785411784)
    { Spellings = ["ft2/gal"] };

    public static ValueList<Unit> All { get; } =
    [
        One, Percent, Millimetre, Micrometre, Centimetre, Metre, Mil, Inch, Foot,
        SquareMillimetre, SquareCentimetre, SquareMetre, SquareInch, SquareFoot,
        Litre, Millilitre, UsGallon, UsFluidOunce, Kilogram, Gram, Pound, Hour, Minute, Day,
        Newton, Kilonewton, PoundForce, KilogramForce,
        NewtonMetre, PoundForceFoot, PoundForceInch, KilogramForceMetre, KilogramForceCentimetre, OunceForceInch,
        Megapascal, Gigapascal, Kilopascal, Bar, PoundPerSquareInch, KilopoundPerSquareInch, MegapoundPerSquareInch,
        NewtonPerMillimetre, NewtonPerMetre, PoundForcePerInch, KilogramForcePerMillimetre,
        Degree, ArcMinute, Radian, DegreePerMillimetre, Celsius, Fahrenheit, KelvinStep, FahrenheitStep,
        Hertz, Joule, SquareMetrePerLitre, SquareFootPerUsGallon,
    ];

    private static readonly Dictionary<(Dimension, string), Unit> BySpelling = All
        .SelectMany(unit => unit.Spellings.Append(unit.Symbol), (unit, word) => (Key: (unit.Dimension, Key(word)), Unit: unit))
        .ToDictionary(pair => pair.Key, pair => pair.Unit);

    /// <summary>The unit of that dimension so spelled, or null. Case, blanks, dots and hyphens do not matter.</summary>
    public static Unit? Find(Dimension dimension, string text) => BySpelling.GetValueOrDefault((dimension, Key(text)));

    /// <summary>The unit so spelled, whatever it measures, or null.</summary>
    public static Unit? Find(string text) =>
        Enum.GetValues<Dimension>().Select(dimension => Find(dimension, text)).FirstOrDefault(unit => unit is not null);

    /// <summary>All units that measure this, as <c>N·m, lbf·ft …</c>.</summary>
    public static string Of(Dimension dimension) =>
        string.Join(", ", All.Where(unit => unit.Dimension == dimension).Select(unit => unit.Symbol));

    private static string Key(string text)
    {
        var kept = text.Where(c => !char.IsWhiteSpace(c) && c is not ('·' or '⋅' or '*' or '-' or '.'));
        return string.Concat(kept.Select(
            c => c switch { '²' => '2', '³' => '3', 'µ' or 'μ' => 'u', 'º' => '°', '’' => '\'', _ => char.ToLowerInvariant(c) }));
    }
}
