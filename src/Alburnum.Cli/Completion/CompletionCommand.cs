using System.ComponentModel;
using Alburnum.Records.Facts;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Completion;

/// <summary>Prints a script with which a shell completes commands and options.</summary>
internal sealed class CompletionCommand(IAnsiConsole console, FactLibrary facts)
    : AsyncCommand<CompletionCommand.Settings>
{
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<SHELL>")]
        [Description("bash, zsh or fish")]
        public required string Shell { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        Func<CommandTree, string> script = settings.Shell switch
        {
            "bash" => CompletionScripts.Bash,
            "zsh" => CompletionScripts.Zsh,
            "fish" => CompletionScripts.Fish,
            var other => throw Options.Refused("SHELL", other, "bash, zsh or fish"),
        };
        console.Profile.Out.Writer.Write(script(await CommandTree.OfProgramAsync(facts, cancellationToken)));
        return CommandLine.Done;
    }
}
