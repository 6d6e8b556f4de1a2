using System.Text.RegularExpressions;

namespace Refettle.SaleFile;

/// <summary>The words of each rule of <see cref="WordingGuard"/>, whole words only.</summary>
/// <remarks>Made when the program is built: what reads a pattern then need not be loaded with the pages.</remarks>
internal static partial class OverclaimWords
{
    private const string Begin = @"(?<![\w-])(";
    private const string End = @")(?![\w-])";
    private const RegexOptions How = RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;
    private const int MostMilliseconds = 1000;

    [GeneratedRegex(Begin + @"rust[- ]?free|(free of|without|no|zero|0 ?%) (any )?(rust|corrosion)( (at all|anywhere|whatsoever))?" + End,
        How, MostMilliseconds)]
    public static partial Regex RustFree();

    [GeneratedRegex(Begin + @"never|not once|always" + End, How, MostMilliseconds)]
    public static partial Regex Never();

    [GeneratedRegex(Begin + @"accident[- ]?free|(no|zero) accidents?|undamaged|damage[- ]?free" + End, How, MostMilliseconds)]
    public static partial Regex AccidentFree();

    [GeneratedRegex(Begin + @"perfect(ly)?|flawless(ly)?|immaculate(ly)?|mint|concours|faultless(ly)?|pristine|showroom" + End, How,
        MostMilliseconds)]
    public static partial Regex Perfect();

    [GeneratedRegex(Begin + @"(like|as)[- ](good as )?new|better than new|as it left the (works|factory)" + End, How, MostMilliseconds)]
    public static partial Regex LikeNew();

    [GeneratedRegex(Begin + @"guaranteed?|warrant(ed|y)|bullet-?proof|100 ?%|(one )?hundred per ?cent" + End, How, MostMilliseconds)]
    public static partial Regex Guaranteed();

    [GeneratedRegex(Begin
        + @"needs nothing|nothing (to do|needs doing|left to do)|no (known )?(faults|defects|issues|problems|work needed)|no expense spared" + End, How, MostMilliseconds)]
    public static partial Regex NothingToDo();

    [GeneratedRegex(Begin + @"safe|road[- ]?legal|road ?worthy" + End, How, MostMilliseconds)]
    public static partial Regex Safe();

    [GeneratedRegex(Begin + @"genuine (mileage|kilometres|miles)|(true|real|correct) mileage" + End, How, MostMilliseconds)]
    public static partial Regex GenuineMileage();

    [GeneratedRegex(Begin
        + @"(fully|completely|totally|comprehensively|professionally) (restored|rebuilt|overhauled|refurbished|reconditioned)|(full|complete|total|nut[- ]and[- ]bolt|frame[- ]off|body[- ]off|ground[- ]up) (restoration|rebuild)" + End, How, MostMilliseconds)]
    public static partial Regex FullyRestored();

    [GeneratedRegex(Begin + @"all[- ]original|(completely|100 ?%|fully) original|matching numbers|original (engine|gearbox|paint|mileage)"
        + End, How, MostMilliseconds)]
    public static partial Regex AllOriginal();

    [GeneratedRegex(Begin + @"(brand[- ])?new|rebuilt|overhauled|restored|replaced|renewed|refurbished|reconditioned" + End, How,
        MostMilliseconds)]
    public static partial Regex New();

    [GeneratedRegex(Begin + @"(every|all)( of)?( the| its)? (bolts?|nuts?|joints?|parts?|bush(es|ings)?|seals?|bearings?)" + End, How,
        MostMilliseconds)]
    public static partial Regex Every();
}
