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
        HttpContext http,
        CancellationToken stop
    )
    {
        if (await store.RunAsync(number, run, stop) is not { } kept)
            return Results.NotFound();
        AnswerHeaders.Name(http.Response, isShown: false, $"case-{number}-run-{kept.Number}.json");
        return Results.Text(kept.Document, "application/json; charset=utf-8");
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
        if (
            await store.StateAsync(number, stop) is not { } state
            || await copies.OfAsync(
                $"report {state} {run}",
                () => DrawAsync(number, run, store, CancellationToken.None),
                each => each.Pdf.Length
            )
                is not { } report
        )
            return Results.NotFound();
        AnswerHeaders.Name(http.Response, isShown: true, $"case-{number}-run-{report.Run}.pdf");
        return Results.Bytes(report.Pdf, "application/pdf");
    }

    private static async Task<ReadyReport?> DrawAsync(int number, int? run, ICaseStore store, CancellationToken stop)
    {
        if (await store.RunAsync(number, run, stop) is not { } kept)
            return null;
        var document = KeptDocument.Of(kept);
        var photographs = new List<Photograph>();
        foreach (
            var sha256 in document
                .Pieces.Select(piece => piece.Reading.Sha256)
                .OfType<string>()
                .Distinct(StringComparer.Ordinal)
        )
        {
            if (await store.PhotographAsync(sha256, stop) is { } photograph)
                photographs.Add(photograph);
        }
        return new(kept.Number, CaseReport.Write(document, CaseReport.Pictures(photographs)));
    }

    private sealed record ReadyReport(int Run, byte[] Pdf);
}
