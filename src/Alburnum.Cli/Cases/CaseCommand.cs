using System.ComponentModel;
using Alburnum.Records;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Reports.Sheets;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Cases;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Cases;

/// <summary>Runs a case folder from enquiry to report.</summary>
internal sealed class CaseCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<CaseCommand.Settings>
{
    internal sealed class Settings : KeepingSettings
    {
        [CommandArgument(0, "<FOLDER>")]
        [Description("Case folder: case.yaml, photographs, tables (CSV or .xlsx)")]
        public required string Folder { get; init; }

        [CommandOption("--out <FOLDER>")]
        [Description("Folder for report.pdf and report.json; default: the case folder")]
        public string? Out { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var files = new FolderFiles(settings.Folder);
        OutFolder.Examine(settings.Out ?? settings.Folder);
        CaseStore.Examine(settings.StorePath);
        var run = await Progress.ShowAsync(
            console,
            Said("terminal.reading-sections"),
            progress => RunCase.JudgeAsync(files, facts, progress, cancellationToken)
        );
        var document = CaseMapping.From(run, facts.Cautions, ProgramName.WithVersion, DateTime.UtcNow);
        var store = await CaseStore.KeepAsync(
            settings.StorePath,
            settings.Person,
            console.WriteLine,
            cancellationToken
        );
        var kept = await RunCase.KeepAsync(run, Report(run, document, settings), store, cancellationToken);
        CaseSummary.Print(console, document, settings.Out ?? settings.Folder);
        if (CaseWords.Current.KeptAs(kept, document.Reference, document.Title, document.Client) is { } said)
            console.WriteLine(said);
        if (kept.DocumentBefore is { } before)
            LostMarks.Print(console, KeptDocument.OrNull(before), document);
        return CommandLine.Done;
    }

    private static RunReport Report(CaseReading run, CaseDocument document, Settings settings)
    {
        var json = DocumentJson.Write(document);
        var pdf = CaseReport.Write(document, CaseReport.Pictures(run.Folder.Photographs.Select(each => each.File)));
        return new(document.RunAt, json, ReportFiles.In(settings.Out ?? settings.Folder, pdf, json));
    }
}
