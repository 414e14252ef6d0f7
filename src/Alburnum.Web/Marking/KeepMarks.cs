using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Web.Pages;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;

namespace Alburnum.Web.Marking;

/// <summary>What happens when marks are to be kept: the case is run again with them, and the browser goes to the piece on its sheet.</summary>
internal static class KeepMarks
{
    public static async Task<IResult> PostAsync(
        string reference,
        int number,
        [FromForm] IFormCollection form,
        ICaseStore store,
        KeptCases cases,
        CancellationToken stop
    )
    {
        if (
            await store.RunAsync(reference, null, stop) is not { } run
            || CaseJson.Read(run.Document) is not { } document
            || await cases.PieceAsync(run, document, number, stop) is not { } kept
            || MarkDraft.Of(form) is not { } draft
        )
            return Results.NotFound();
        var said = DraftReading.Of(draft, kept.Folder.Case.Enquiry.Section!);
        // The page shows what is wrong or unfinished, with the points as they were sent.
        var back = $"{MarkPage.Address(reference, number)}{draft.Query()}#marking";
        if (said.Problems.Count > 0 || said.Waiting.Count > 0)
            return Results.Redirect(back);
        CaseRecord again;
        try
        {
            again = await cases.RunAgainAsync(run, document, kept.Piece.Name, said.Marks, stop);
        }
        catch (InputRefusedException)
        {
            // Asked for again with the same points, the page says why.
            return Results.Redirect(back);
        }
        await store.AddAsync(again, _ => Task.CompletedTask, stop);
        return Results.Redirect($"{CasePage.Address(reference)}#piece-{number}");
    }
}
