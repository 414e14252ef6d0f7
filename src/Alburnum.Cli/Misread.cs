using System.Text.RegularExpressions;
using Alburnum.Cli.Completion;

namespace Alburnum.Cli;

/// <summary>What the parser could not read, in words that help.</summary>
internal static partial class Misread
{
    /// <summary>A line for each thing that is wrong: every option that is not known, and not the first alone.</summary>
    /// <param name="message">What the parser said.</param>
    /// <param name="args">Words after the program's name.</param>
    /// <param name="commands">All commands.</param>
    public static IReadOnlyList<string> InWords(string message, IReadOnlyList<string> args, CommandTree commands)
    {
        var command = commands.Named(args);
        if (Arguments().Match(message) is { Success: true } wrong)
            return [CalledSo(command, wrong)];
        if (message.StartsWith("Unknown option", StringComparison.Ordinal))
        {
            List<string> unknown =
            [
                .. args.Where(word => word.Length > 2 && word.StartsWith("--", StringComparison.Ordinal))
                    .Select(word => word.Split('=')[0])
                    .Except(command.Options, StringComparer.Ordinal),
            ];
            if (unknown.Count > 0)
                return [.. unknown.Select(option => UnknownOption(option[2..], command))];
        }
        if (message.StartsWith("Unknown command", StringComparison.Ordinal))
            return
            [
                $"{message.TrimEnd('.')}{Meant(message.Split('\'')[1], [.. command.Commands.Select(each => each.Path[^1])])}",
            ];
        return [Converted(message, args)];
    }

    private static string UnknownOption(string name, CommandTree command) =>
        $"Unknown option '{name}'{Meant(name, command.Options)}";

    private static string Meant(string name, IReadOnlyList<string> known)
    {
        var near = new NameIndex<string>(known, each => [each]).Near(name);
        return near.Count > 0 ? $"; did you mean {string.Join(" or ", near)}?" : ".";
    }

    // Too many or too few arguments: how the command is called.
    private static string CalledSo(CommandTree command, Match wrong)
    {
        var found = wrong.Groups["more"] is { Success: true, Value: var more }
            ? $"{more} beyond its arguments"
            : $"nothing for {wrong.Groups["missing"].Value}";
        return $"{string.Join(' ', command.Path)}: found {found}, expected: {command.Usage}";
    }

    [GeneratedRegex(
        @"^Could not match '(?<more>.*)' with an argument\.$|is missing required argument '(?<missing>.*)'\.$",
        RegexOptions.ExplicitCapture | RegexOptions.Singleline,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Arguments();

    // The parser names the type it failed to make, and a word of its own where a value is missing: both say nothing to a user.
    private static string Converted(string message, IReadOnlyList<string> args)
    {
        const string start = "Failed to convert '";
        if (
            !message.StartsWith(start, StringComparison.Ordinal)
            || message.LastIndexOf("' to ", StringComparison.Ordinal) is not (> 0 and var end)
        )
            return message;
        var found = message[start.Length..end];
        var kind = message[end..].Contains("Int", StringComparison.Ordinal) ? "a whole number" : "a number";
        return found == MissingValues.StandIn
            ? $"{args[^1]}: found nothing, expected a value after it."
            : $"{OptionBefore(found, args)}found {found}, expected {(IsFraction(found) ? kind : "a number")} that the option allows.";
    }

    private static bool IsFraction(string text) =>
        double.TryParse(
            text,
            System.Globalization.NumberStyles.Float,
            System.Globalization.CultureInfo.InvariantCulture,
            out _
        );

    private static string OptionBefore(string value, IReadOnlyList<string> args)
    {
        for (var i = 0; i < args.Count; i++)
            if (args[i].StartsWith("--", StringComparison.Ordinal))
                if (args[i].EndsWith($"={value}", StringComparison.Ordinal))
                    return $"{args[i][..^(value.Length + 1)]}: ";
                else if (i + 1 < args.Count && args[i + 1] == value)
                    return $"{args[i]}: ";
        return "";
    }
}
