using Alburnum.Penetration;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Spectre.Console;

namespace Alburnum.Cli.Cases;

/// <summary>A case at a glance: what was demanded, each piece on a line, and the verdict last.</summary>
internal static class CaseSummary
{
    public static void Print(IAnsiConsole console, CaseDocument document, string reportFolder)
    {
        var words = CaseWords.English;
        var (enquiry, requirement) = (document.Enquiry, document.Requirement);
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{document.Title}[/]  {document.Reference}");
        console.WriteLine(words.Subject(enquiry.Component, enquiry.Section, enquiry.Species, enquiry.UseClass));
        console.WriteLine(
            requirement.Penetration is { } penetration
                ? words.Demanded(
                    requirement.Rulebook,
                    penetration,
                    requirement.PenetrationInWords ?? "",
                    document.WeakestStanding
                )
                : words.NoDemand(
                    requirement.Rulebook,
                    RequirementWords.English.Answers.Say(requirement.Outcome),
                    requirement.Reason
                )
        );
        console.WriteLine();
        console.Write(Pieces(document));
        console.WriteLine();
        Expectation(console, document);
        console.WriteLine(
            words.Batch(document.Batch.PiecesInBatch, document.Batch.PiecesCut, document.Batch.AcceptanceRule)
        );
        foreach (var reason in document.Verdict.Reasons)
            console.WriteLine(reason);
        console.WriteLine();
        var verdict = document.Verdict.Verdict.InWords().ToUpperInvariant();
        var certainty = document.Verdict.Probability is { } probability
            ? "  " + JudgeWords.English.Probability(probability)
            : "";
        console.Write(
            new Text(verdict, new Style(VerdictColour.Of(document.Verdict.Verdict), decoration: Decoration.Bold))
        );
        console.WriteLine(certainty);
        console.WriteLine();
        console.WriteLine($"Report: {Path.Combine(reportFolder, ReportFiles.Pdf)} (and {ReportFiles.Json})");
        if (document.Pieces.Any(piece => piece.Reading is { File: not null, Depth: null, OutlineConfidence: < 1 }))
            console.WriteLine("To point an outline out on the case's page: alburnum serve");
    }

    private static void Expectation(IAnsiConsole console, CaseDocument document)
    {
        if (!ExpectationMapping.HasExpectation(document))
            return;
        console.MarkupLineInterpolated($"[bold]{ExpectationWords.English.Title}[/]");
        foreach (var (name, value) in ExpectationMapping.Rows(document))
            console.WriteLine($"{name}: {value}");
        foreach (var note in ExpectationMapping.Notes(document))
            console.WriteLine(note);
        console.WriteLine();
    }

    private static Table Pieces(CaseDocument document)
    {
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn("Piece");
        table.AddColumn(new TableColumn("Least, mm").RightAligned());
        table.AddColumn(new TableColumn("Mean, mm").RightAligned());
        table.AddColumn(new TableColumn("Treated").RightAligned());
        table.AddColumn(new TableColumn("Verdict").NoWrap());
        table.AddColumn(new TableColumn("Probability").RightAligned());
        foreach (var piece in document.Pieces)
        {
            var depth = piece.Reading.Depth;
            table.AddRow(
                new Text(piece.Name),
                new Text(depth is null ? "–" : Figures.Measured(depth.MinMm, depth.MinUMm, "")),
                new Text(depth is null ? "–" : Figures.Measured(depth.MeanMm, depth.MeanUMm, "")),
                new Text(piece.Reading.TreatedShare is { } share ? Figures.WholePercent(share) : "–"),
                new Text(piece.Verdict.Verdict.InWords(), new Style(VerdictColour.Of(piece.Verdict.Verdict))),
                new Text(piece.Verdict.Probability is null ? "–" : Figures.Certainty(piece.Verdict.Probability))
            );
        }
        return table;
    }
}
