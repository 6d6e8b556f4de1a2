using System.CommandLine;
using System.CommandLine.Parsing;

namespace Refettle.Cli;

/// <summary>Refuses plain numbers with a comma. The library takes it for one between thousands, which makes 75 of 7,5.</summary>
internal static class DecimalCommas
{
    private static readonly Type[] _numbers = [typeof(decimal), typeof(decimal?), typeof(decimal[]), typeof(double), typeof(double?)];

    /// <summary>In all options and arguments of a verb and of its further words.</summary>
    public static void RefuseIn(Command command)
    {
        foreach (var option in command.Options.Where(option => _numbers.Contains(option.ValueType)))
            option.Validators.Add(result => Refuse(result, option.Name));
        foreach (var argument in command.Arguments.Where(argument => _numbers.Contains(argument.ValueType)))
            argument.Validators.Add(result => Refuse(result, argument.Name));
        foreach (var further in command.Subcommands)
            RefuseIn(further);
    }

    private static void Refuse(SymbolResult result, string name)
    {
        if (result.Tokens.FirstOrDefault(token => token.Value.Contains(',', StringComparison.Ordinal)) is { } token)
            result.AddError($"{name} is {token.Value}, which is not a number: write a decimal point, and nothing between thousands");
    }
}
