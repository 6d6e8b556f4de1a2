using System.Globalization;

namespace Refettle.Web.CloseUp;

/// <summary>A torque as it is typed: newton metres, with a point or a comma.</summary>
public static class TorqueText
{
    private const decimal Most = 2_000;

    /// <summary>Null where nothing was typed.</summary>
    public static Result<NewtonMetres?> Read(string text)
    {
        if (text.Trim().Length == 0)
            return Result<NewtonMetres?>.Good(null);
        return decimal.TryParse(text.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture,
            out var torque) && torque is > 0 and <= Most
            ? Result<NewtonMetres?>.Good(new NewtonMetres(torque))
            : Result<NewtonMetres?>.Bad(new Fault("torque", $"\"{text.Trim()}\" is not a torque in newton metres",
                $"Write a number above 0, up to {Most}, or nothing."));
    }
}
