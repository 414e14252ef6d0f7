using System.Text;
using Alburnum.Records.Store;
using Alburnum.Reports.Json;
using Alburnum.Reports.Sheets;
using Alburnum.Web.Guarding;
using Microsoft.AspNetCore.Http;

namespace Alburnum.Web.Files;

/// <summary>The reports of a run.</summary>
internal static class ServedReport
{
    public static async Task<IResult> JsonAsync(
        int number,
        int? run,
        ICaseStore store,
        ReadyCopies copies,
        HttpContext http,
        CancellationToken stop
    )
    {
        var report = await ReadyAsync(
            new(number, run, store),
            "json",
            kept => new(Encoding.UTF8.GetBytes(kept.Document)),
            copies,
            stop
        );
        if (report is null)
            return Results.NotFound();
        AnswerHeaders.Name(http.Response, isShown: false, $"case-{number}-run-{report.Run}.json");
        return Results.Stream(new MemoryStream(report.Bytes, writable: false), "application/json; charset=utf-8");
    }

    public static async Task<IResult> PdfAsync(
        int number,
        int? run,
        ICaseStore store,
        ReadyCopies copies,
        HttpContext http,
        CancellationToken stop
    )
    {
        var report = await ReadyAsync(new(number, run, store), "pdf", kept => DrawAsync(kept, store), copies, stop);
        if (report is null)
            return Results.NotFound();
        AnswerHeaders.Name(http.Response, isShown: true, $"case-{number}-run-{report.Run}.pdf");
        return Results.Stream(new MemoryStream(report.Bytes, writable: false), "application/pdf");
    }

    /// <summary>A report, made once of each state of its case, whoever of those who wait goes away; null where there is no such run.</summary>
    private static async Task<ReadyReport?> ReadyAsync(
        AskedRun asked,
        string kind,
        Func<KeptRun, ValueTask<byte[]>> make,
        ReadyCopies copies,
        CancellationToken stop
    ) =>
        await asked.Store.StateAsync(asked.Number, stop) is { } state
            ? await copies.OfAsync(
                $"{kind} {state} {asked.Run}",
                async () =>
                    await asked.Store.RunAsync(asked.Number, asked.Run, CancellationToken.None) is { } kept
                        ? new ReadyReport(kept.Number, await make(kept))
                        : null,
                each => each.Bytes.Length
            )
            : null;

    private static async ValueTask<byte[]> DrawAsync(KeptRun kept, ICaseStore store)
    {
        var document = KeptDocument.Of(kept);
        var photographs = new List<Photograph>();
        foreach (
            var sha256 in document
                .Pieces.Select(piece => piece.Reading.Sha256)
                .OfType<string>()
                .Distinct(StringComparer.Ordinal)
        )
        {
            if (await store.PhotographAsync(sha256, CancellationToken.None) is { } photograph)
                photographs.Add(photograph);
        }
        return CaseReport.Write(document, CaseReport.Pictures(photographs));
    }

    private sealed record AskedRun(int Number, int? Run, ICaseStore Store);

    private sealed record ReadyReport(int Run, byte[] Bytes);
}
