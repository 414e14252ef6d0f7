using System.Security.Cryptography;
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
        if (await store.RunAsync(number, run, stop) is not { } kept)
            return Results.NotFound();
        // A run never changes, but its texts may be removed for a person's sake: then it is drawn anew.
        var pdf = await copies.OfAsync($"report {TextName(kept)}", () => DrawAsync(kept, store, stop));
        AnswerHeaders.Name(http.Response, isShown: true, $"case-{number}-run-{kept.Number}.pdf");
        return Results.Bytes(pdf, "application/pdf");
    }

    /// <summary>Names the text of a run's result: another text has another name.</summary>
    public static string TextName(KeptRun kept) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(kept.Document)));

    private static async Task<byte[]> DrawAsync(KeptRun kept, ICaseStore store, CancellationToken stop)
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
            if (await store.PhotographAsync(sha256, stop) is { } photograph)
                photographs.Add(photograph);
        }
        return CaseReport.Write(document, CaseReport.Pictures(photographs));
    }
}
