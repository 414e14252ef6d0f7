using System.ComponentModel;
using Alburnum.Records.Facts;
using Alburnum.Reports.Letters;
using Alburnum.Workflows.Letters;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Letters;

/// <summary>Answers what lay clients ask most often.</summary>
internal sealed class ExplainCommand(IAnsiConsole console, FactLibrary facts) : Command<ExplainCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "[LETTER]")]
        [Description("Which letter: red-core, worked-after, green-skin or foreign-mark; default: a list of them")]
        public string? Letter { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var document = LetterMapping.From(AnswerLetters.Run(settings.Letter, facts));
        return console.Show(document, settings.Json, LetterText.Lines(document));
    }
}
