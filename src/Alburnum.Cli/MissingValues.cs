using System.Reflection;
using Spectre.Console.Cli;

namespace Alburnum.Cli;

/// <summary>Refuses an option that ends the line without its value: the parser puts a word of its own there.</summary>
internal sealed class MissingValues : ICommandInterceptor
{
    /// <summary>The parser's word for a command that was not named.</summary>
    public const string StandIn = "__default_command";

    /// <inheritdoc/>
    public void Intercept(CommandContext context, CommandSettings settings)
    {
        foreach (var property in settings.GetType().GetProperties())
        {
            if (
                property.GetCustomAttribute<CommandOptionAttribute>() is { } option
                && property.GetValue(settings) is StandIn
            )
                throw Options.Refused($"--{option.LongNames[0]}", "nothing", "a value after it");
        }
    }
}
