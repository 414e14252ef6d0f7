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
            number,
            run,
            "json",
            kept => new(Encoding.UTF8.GetBytes(kept.Document)),
            store,
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
        var report = await ReadyAsync(number, run, "pdf", kept => DrawAsync(kept, store), store, copies, stop);
        if (report is null)
            return Results.NotFound();
        AnswerHeaders.Name(http.Response, isShown: true, $"case-{number}-run-{report.Run}.pdf");
        return Results.Stream(new MemoryStream(report.Bytes, writable: false), "application/pdf");
    }

    /// <summary>A report, made once of each state of its case, whoever of those who wait goes away; null where there is no such run.</summary>
    private static async Task<ReadyReport?> ReadyAsync(
        int number,
        int? run,
        string kind,
        Func<KeptRun, ValueTask<byte[]>> make,
        ICaseStore store,
        ReadyCopies copies,
        CancellationToken stop
    ) =>
        await store.StateAsync(number, stop) is { } state
            ? await copies.OfAsync(
                $"{kind} {state} {run}",
                async () =>
                    await store.RunAsync(number, run, CancellationToken.None) is { } kept
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

    private sealed record ReadyReport(int Run, byte[] Bytes);
}
