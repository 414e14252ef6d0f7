using System.ComponentModel;
using System.Reflection;
using Alburnum.Imaging;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Sheets;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli;

/// <summary>Runs a case folder from enquiry to report.</summary>
internal sealed class CaseCommand(IAnsiConsole console) : AsyncCommand<CaseCommand.Settings>
{
    internal sealed class Settings : StoreSettings
    {
        [CommandArgument(0, "<FOLDER>")]
        [Description("Case folder: case.yaml, photographs, tables in CSV")]
        public required string Folder { get; init; }

        [CommandOption("--out <DIR>")]
        [Description("Where report.pdf and report.json go; the case folder unless said")]
        public string? Out { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var reading = await CaseReading.OfAsync(console, settings.Folder, cancellationToken);
        var document = CaseMapping.From(
            reading.Result,
            reading.Readings,
            CautionFile.Load(FactLibrary.DefaultFolder),
            ProgramName,
            DateTime.UtcNow
        );
        await KeepAsync(reading.Folder, document, settings, cancellationToken);
        CaseSummary.Print(console, document, settings.Out ?? settings.Folder);
        return CommandLine.Done;
    }

    private static string ProgramName { get; } =
        $"Alburnum {Assembly.GetExecutingAssembly().GetName().Version!.ToString(3)}";

    private static async Task KeepAsync(
        CaseFolder folder,
        CaseDocument document,
        Settings settings,
        CancellationToken stop
    )
    {
        var json = CaseJson.Write(document);
        var photographs = folder
            .Photographs.Select(photograph => new PhotographRecord(
                CaseStore.Fingerprint(photograph.Bytes.Span),
                photograph.FileName,
                photograph.Bytes
            ))
            .ToList();
        var pictures = photographs
            .DistinctBy(photograph => photograph.Sha256, StringComparer.Ordinal)
            .ToDictionary(
                photograph => photograph.Sha256,
                photograph => (ReadOnlyMemory<byte>)Thumbnail.Jpeg(photograph.FileName, photograph.Bytes, 900),
                StringComparer.Ordinal
            );
        var pdf = CaseReport.Write(document, pictures);
        var run = new CaseRecord(
            document.Reference,
            document.Title,
            document.Client,
            document.RunAt,
            document.Verdict.Verdict,
            json,
            photographs
        );
        await CaseStore
            .Open(settings.StorePath)
            .AddAsync(run, token => ReportFiles.WriteAsync(settings.Out ?? settings.Folder, pdf, json, token), stop);
    }
}
