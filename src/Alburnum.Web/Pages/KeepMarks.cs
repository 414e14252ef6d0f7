using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Reports.Json;
using Alburnum.Web.Asking;
using Alburnum.Web.Marking;
using Alburnum.Workflows.Cases;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;

namespace Alburnum.Web.Pages;

/// <summary>What happens when marks are to be kept: the case is run again with them, and the browser goes to the piece on its sheet.</summary>
internal static class KeepMarks
{
    public static async Task<IResult> PostAsync(
        int number,
        int piece,
        [FromForm] IFormCollection form,
        ICaseStore store,
        FactLibrary facts,
        CancellationToken stop
    )
    {
        if (
            await store.RunAsync(number, null, stop) is not { } run
            || KeptDocument.Of(run) is not { } document
            || await PieceToMark.OfAsync(run, document, piece, store, facts, stop) is not { } kept
            || MarkDraft.Of(form) is not { } draft
        )
            return Results.NotFound();
        var said = DraftReading.Of(draft, kept.Folder.Case.Enquiry.Section!);
        // The page shows what is wrong or unfinished, with the points as they were sent.
        var back = $"{MarkPage.Address(number, piece)}{draft.Query()}#marking";
        if (said.Problems.Count > 0 || said.Waiting.Count > 0)
            return Results.Redirect(back);
        CaseReading again;
        try
        {
            again = await ReadAgain.CaseAsync(
                kept.Case.WithMarks(kept.Piece.Name, said.Marks),
                store,
                facts,
                progress: null,
                stop
            );
        }
        catch (InputRefusedException)
        {
            // Asked for again with the same points, the page says why.
            return Results.Redirect(back);
        }
        await NewRun.KeepAsync(again, number, store, facts, stop);
        return Results.Redirect($"{CasePage.Address(number)}#piece-{piece}");
    }
}
