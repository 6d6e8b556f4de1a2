using Refettle.Judging;

namespace Refettle.Web.Judging;

/// <summary>Conditions and verdicts in words.</summary>
public static class ConditionWords
{
    public static string Of(Severeness? how) => how switch { null => "Not looked at yet", { } known => known.ToString() };

    public static string Of(VerdictKind kind, DoneBy by) => by == DoneBy.OutsideShop ? $"{kind} by an outside shop" : kind.ToString();

    public static string Of(VerdictOption option) => Of(option.Kind, option.By);
}
