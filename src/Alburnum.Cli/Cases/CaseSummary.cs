using Alburnum.Reports.Documents;
using Alburnum.Reports.Sheets;
using Alburnum.Reports.Words;
using Spectre.Console;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Cases;

/// <summary>A case at a glance: what was demanded, each piece on a line, and what was found last.</summary>
internal static class CaseSummary
{
    public static void Print(IAnsiConsole console, CaseDocument document, string reportFolder)
    {
        var words = CaseWords.Current;
        var (enquiry, requirement) = (document.Enquiry, document.Requirement);
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{document.Title}[/]  {document.Reference}");
        console.WriteLine(
            words.Subject(
                enquiry.Component,
                enquiry.Section,
                enquiry.Species,
                enquiry.UseClass,
                enquiry.UseClassByCode,
                enquiry.UseClassByContract
            )
        );
        console.WriteLine(
            requirement.Penetration is { } penetration
                ? words.Demanded(
                    requirement.Outcome,
                    requirement.Rulebook,
                    penetration,
                    requirement.PenetrationInWords ?? "",
                    requirement.PenetrationStanding ?? document.WeakestStanding
                )
                : words.NoDemand(
                    requirement.Rulebook,
                    RequirementWords.Current.Answers.Say(requirement.Outcome, requirement.Unless.Count > 0),
                    requirement.Reason ?? ""
                )
        );
        if (requirement.Unless.Count > 0)
            console.WriteLine(Said("answers.sheet.unless"));
        foreach (var insect in requirement.Unless)
            console.WriteLine($"  · {insect}");
        if (requirement.Contract is { } contract)
            console.WriteLine(contract.InWords);
        else if (enquiry is { StatedClass: { } named, UseClassByContract: null } && requirement.Warnings is null or [])
            console.WriteLine(words.StatedClass(named));
        foreach (var warning in requirement.Warnings ?? [])
            console.WriteLine(warning);
        console.WriteLine();
        console.Write(Pieces(document));
        console.WriteLine(Figures.PlusMinus);
        console.WriteLine(Said("terminal.least-and-probability"));
        console.WriteLine();
        Remarks(console, document);
        Expectation(console, document);
        console.WriteLine(
            words.Batch(document.Batch.PiecesInBatch, document.Batch.PiecesCut, document.Batch.AcceptanceRule)
        );
        FindingsPrint.Print(console, FindingsMapping.Of(document));
        console.WriteLine();
        console.WriteLine(
            Said("terminal.report", ("pdf", Path.Combine(reportFolder, ReportFiles.Pdf)), ("json", ReportFiles.Json))
        );
        if (document.Pieces.Any(piece => piece.Reading.OutlineMayBeWrong))
            console.WriteLine(Said("terminal.point-out", ("command", "alburnum serve")));
    }

    private static void Remarks(IAnsiConsole console, CaseDocument document)
    {
        var patterns = document
            .Pieces.SelectMany(piece => SectionRows.Patterns(piece.Reading).Select(says => (piece.Name, Says: says)))
            .GroupBy(pattern => pattern.Says, pattern => pattern.Name, StringComparer.Ordinal)
            .Select(same => Said("sheet.named", ("name", string.Join(", ", same)), ("says", same.Key)));
        var leftOut = document.LeftOut.Select(photograph =>
            CaseWords.Current.LeftOutFor(photograph.File, photograph.Reason, photograph.InWords)
        );
        List<string> lines = [.. document.Remarks ?? [], .. patterns, .. leftOut];
        if (LeftOutMapping.Together(document) is { } together)
            lines.Add(together);
        foreach (var line in lines)
            console.WriteLine(line);
        if (lines.Count > 0)
            console.WriteLine();
    }

    private static void Expectation(IAnsiConsole console, CaseDocument document)
    {
        if (!ExpectationMapping.HasExpectation(document))
            return;
        console.MarkupLineInterpolated($"[bold]{ExpectationWords.Current.Title}[/]");
        foreach (var (name, value) in ExpectationMapping.Rows(document))
            console.WriteLine(Said("sheet.named", ("name", name), ("says", value)));
        foreach (var note in ExpectationMapping.Notes(document))
            console.WriteLine(note);
        console.WriteLine();
    }

    private static Table Pieces(CaseDocument document)
    {
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn(Said("terminal.piece"));
        table.AddColumn(new TableColumn(Said("terminal.least-mm")).RightAligned());
        table.AddColumn(new TableColumn(Said("terminal.mean-mm")).RightAligned());
        table.AddColumn(new TableColumn(Said("terminal.treated")).RightAligned());
        table.AddColumn(new TableColumn(Said("terminal.verdict")).NoWrap());
        table.AddColumn(new TableColumn(Said("terminal.probability")).RightAligned());
        foreach (var piece in document.Pieces)
        {
            var depth = piece.Reading.Depth;
            table.AddRow(
                new Text(piece.Name),
                new Text(depth is null ? "–" : Figures.Measured(depth.MinMm, depth.MinUMm, "")),
                new Text(depth is null ? "–" : Figures.Measured(depth.MeanMm, depth.MeanUMm, "")),
                new Text(piece.Reading.TreatedShare is { } share ? Figures.WholePercent(share) : "–"),
                new Text(
                    Wording.Current.Say(piece.Verdict.Verdict),
                    new Style(VerdictColour.Of(piece.Verdict.Verdict))
                ),
                new Text(piece.Verdict.Probability is null ? "–" : Figures.Certainty(piece.Verdict.Probability))
            );
        }
        return table;
    }
}
