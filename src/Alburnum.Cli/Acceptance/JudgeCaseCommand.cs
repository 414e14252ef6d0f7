using System.ComponentModel;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Reports.Acceptance;
using Alburnum.Workflows.Acceptance;
using Alburnum.Workflows.Cases;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Acceptance;

/// <summary>Judges the batch of a case folder; keeps and writes nothing.</summary>
internal sealed class JudgeCaseCommand(IAnsiConsole console, FactLibrary facts)
    : AsyncCommand<JudgeCaseCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "<FOLDER>")]
        [Description("Case folder, with case.yaml in it")]
        public required string Folder { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var files = new FolderFiles(settings.Folder);
        var reading = await Progress.ShowAsync(
            console,
            Said("terminal.reading-sections"),
            progress => RunCase.JudgeAsync(files, facts, progress, cancellationToken)
        );
        var document = JudgeMapping.Of(JudgeBatch.OfCase(reading.Judged));
        return console.Show(document, settings.Json, () => JudgePrint.Print(console, document));
    }
}
