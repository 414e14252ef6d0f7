using System.ComponentModel;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Reports;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Sheets;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Cases;

/// <summary>Runs a case folder from enquiry to report.</summary>
internal sealed class CaseCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<CaseCommand.Settings>
{
    internal sealed class Settings : StoreSettings
    {
        [CommandArgument(0, "<FOLDER>")]
        [Description("Case folder: case.yaml, photographs, tables in CSV")]
        public required string Folder { get; init; }

        [CommandOption("--out <FOLDER>")]
        [Description("Folder for report.pdf and report.json; the case folder unless said")]
        public string? Out { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        OutFolder.Examine(settings.Out ?? settings.Folder);
        CaseStore.Examine(settings.StorePath);
        var reading = await FolderReading.ReadAsync(console, facts, settings.Folder, cancellationToken);
        var document = CaseMapping.From(
            reading.Result,
            reading.Readings,
            facts.Cautions,
            ProgramName.WithVersion,
            DateTime.UtcNow
        );
        var store = await CaseStore.KeepAsync(settings.StorePath, console.WriteLine, cancellationToken);
        var before = await store.RunAsync(document.Reference, null, cancellationToken);
        await KeepAsync(store, reading.Folder, document, settings, cancellationToken);
        CaseSummary.Print(console, document, settings.Out ?? settings.Folder);
        if (before is not null)
            LostMarks.Print(console, CaseJson.Read(before.Document), document);
        return CommandLine.Done;
    }

    private static async Task KeepAsync(
        ICaseStore store,
        CaseFolder folder,
        CaseDocument document,
        Settings settings,
        CancellationToken stop
    )
    {
        var json = CaseJson.Write(document);
        var pictures = folder
            .Photographs.Select(photograph => photograph.File)
            .DistinctBy(photograph => photograph.Sha256, StringComparer.Ordinal)
            .ToDictionary(
                photograph => photograph.Sha256,
                photograph => CaseReport.Picture(photograph.FileName, photograph.Bytes),
                StringComparer.Ordinal
            );
        var pdf = CaseReport.Write(document, pictures);
        var run = folder.Run(document.RunAt, document.Verdict.Verdict, json);
        await store.AddAsync(
            run,
            token => ReportFiles.WriteAsync(settings.Out ?? settings.Folder, pdf, json, token),
            stop
        );
    }
}
