using Alburnum.Imaging.Pictures;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Sheets;

/// <summary>The printed report of a case: verdict, requirement and its trace, every section to scale, sources and cautions.</summary>
public static class CaseReport
{
    private const double PieceHeightMm = 62;
    private const double NumbersLeftMm = Sheet.MarginMm + 121;
    private const int PictureLongSidePx = 900;

    private static SheetWords Words => SheetWords.Current;

    /// <summary>Makes the PDF.</summary>
    /// <param name="document">The result of the case.</param>
    /// <param name="pictures">A small upright JPEG for each photograph's SHA-256, with width and height in the photograph's own pixels.</param>
    public static byte[] Write(CaseDocument document, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> pictures)
    {
        using var sheet = new Sheet(
            Words.Title(document.Title),
            Words.Foot(document.Reference, document.Title, document.Program, Figures.Moment(document.RunAt))
        );
        Head(sheet, document);
        Verdict(sheet, document);
        Requirement(sheet, document);
        Remarks(sheet, document);
        Expectation(sheet, document);
        Batch(sheet, document);
        Pieces(sheet, document, pictures);
        LeftOut(sheet, document);
        Retention(sheet, document);
        Trace(sheet, document);
        Sources(sheet, document);
        Cautions(sheet, document);
        Uncertainty(sheet, document);
        Photographs(sheet, document);
        return sheet.Finish();
    }

    private static void Head(Sheet sheet, CaseDocument document)
    {
        sheet.RightAligned(
            document.Reference,
            Typeface.Plain(9),
            Ink.Quiet,
            Sheet.WidthMm - Sheet.MarginMm,
            sheet.TopMm
        );
        sheet.Text(Words.Subject, Typeface.Plain(9), Ink.Quiet);
        sheet.Space(2);
        sheet.Text(document.Title, Typeface.Heading(22), Ink.Text);
        var sampled = Figures.Day(document.SampledOn);
        sheet.Text(Words.ForClient(document.Client, sampled), Typeface.Plain(10), Ink.Text);
    }

    private static void Verdict(Sheet sheet, CaseDocument document)
    {
        sheet.Space(6);
        var top = sheet.TopMm;
        sheet.Space(2);
        var findings = FindingsMapping.Of(document);
        sheet.Text(findings.Headline, Typeface.Heading(15), Ink.Text, indentMm: 5);
        sheet.Space(1.5);
        foreach (var (name, says) in FindingsMapping.Lines(findings))
        {
            sheet.Text(name, Typeface.Bold(9.5), Ink.Text, indentMm: 5);
            sheet.Text(says, Typeface.Plain(9.5), Ink.Text, indentMm: 5);
            sheet.Space(0.8);
        }
        sheet.Space(2);
        var height = sheet.TopMm - top;
        var bar = new Area([new(0, 0), new(1.2, 0), new(1.2, height), new(0, height)], VerdictInk(findings.Weakest));
        sheet.Draw(new Drawing(1.2, height, "", [bar]), Sheet.MarginMm, top, 1);
    }

    private static void Requirement(Sheet sheet, CaseDocument document)
    {
        var (enquiry, requirement) = (document.Enquiry, document.Requirement);
        sheet.Section(Words.Demanded);
        Fact(sheet, Words.Component(enquiry.Component, enquiry.Section, enquiry.Form, enquiry.Incised));
        Fact(sheet, Words.Species(enquiry.Species, enquiry.BotanicalName));
        Fact(
            sheet,
            Words.UseClass(
                enquiry.UseClass,
                enquiry.UseClassByCode,
                enquiry.UseClassByContract,
                enquiry.UseClassInWords
            )
        );
        Fact(sheet, Words.ServiceLife(enquiry.ServiceLifeYears, enquiry.ServiceLifeByCode));
        foreach (var row in DemandRows.Of(requirement, document.WeakestStanding))
            Fact(sheet, row);
        foreach (var condition in (requirement.Warnings ?? []).Concat(requirement.Conditions))
            Fact(sheet, Words.Condition(condition));
    }

    private static void Remarks(Sheet sheet, CaseDocument document)
    {
        if (document.Remarks is not { } remarks)
            return;
        sheet.Section(Words.Remarks);
        foreach (var remark in remarks)
        {
            sheet.KeepTogether(8);
            sheet.Text(remark, Typeface.Plain(9.5), Ink.Text);
            sheet.Space(0.8);
        }
    }

    private static void LeftOut(Sheet sheet, CaseDocument document)
    {
        if (document.LeftOut.Count == 0)
            return;
        sheet.Section(Words.LeftOut);
        sheet.Table(
            [40, 50, 80],
            Words.LeftOutHeads,
            document.LeftOut.Select(photograph =>
                (IReadOnlyList<string>)[photograph.File, photograph.Reason, photograph.InWords]
            )
        );
        if (LeftOutMapping.Together(document) is not { } together)
            return;
        sheet.Space(2);
        sheet.Text(together, Typeface.Plain(9.5), Ink.Text);
    }

    private static void Photographs(Sheet sheet, CaseDocument document)
    {
        var photographs = LeftOutMapping.Photographs(document).ToList();
        if (photographs.Count == 0)
            return;
        sheet.Section(Words.Photographs);
        sheet.Text(Words.PhotographsKey, Typeface.Slanted(8.5), Ink.Quiet);
        sheet.Space(2);
        sheet.Table(
            [24, 42, 104],
            Words.PhotographHeads,
            photographs.Select(photograph =>
                (IReadOnlyList<string>)[photograph.Piece, photograph.File, photograph.Sha256]
            )
        );
    }

    private static void Expectation(Sheet sheet, CaseDocument document)
    {
        if (!ExpectationMapping.HasExpectation(document))
            return;
        sheet.Section(ExpectationWords.Current.Title);
        foreach (var row in ExpectationMapping.Rows(document))
            Fact(sheet, row);
        foreach (var note in ExpectationMapping.Notes(document).Append(Figures.PlusMinus))
            sheet.Fact("", note);
    }

    /// <summary>Photographs as the report prints them, upright and small, by their SHA-256.</summary>
    /// <exception cref="InputRefusedException">The bytes are not a photograph that can be read.</exception>
    public static IReadOnlyDictionary<string, ReadOnlyMemory<byte>> Pictures(IEnumerable<Photograph> photographs) =>
        photographs
            .DistinctBy(photograph => photograph.Sha256, StringComparer.Ordinal)
            .ToDictionary(
                photograph => photograph.Sha256,
                photograph =>
                    (ReadOnlyMemory<byte>)Thumbnail.Jpeg(photograph.FileName, photograph.Bytes, PictureLongSidePx),
                StringComparer.Ordinal
            );

    private static void Batch(Sheet sheet, CaseDocument document)
    {
        var batch = document.Batch;
        sheet.Section(Words.Batch);
        Fact(sheet, Words.Pieces(batch.PiecesInBatch, batch.PiecesCut));
        Fact(sheet, Words.Rule(batch.AcceptanceRule));
        Fact(sheet, Words.Penetration(Sentence(batch.Verdict)));
        foreach (var reason in batch.Verdict.Reasons)
            sheet.Fact("", reason);
        foreach (var each in batch.ByDemand)
            sheet.Fact(Words.Named(each.Name, each.PenetrationInWords), Sentence(each.Verdict));
    }

    private static void Pieces(
        Sheet sheet,
        CaseDocument document,
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> pictures
    )
    {
        sheet.Section(Words.Sections, PieceHeightMm + 30);
        sheet.Text(Words.SectionsKey, Typeface.Slanted(8.5), Ink.Quiet);
        sheet.Text(Figures.PlusMinus, Typeface.Slanted(8.5), Ink.Quiet);
        sheet.Space(3);
        foreach (var piece in document.Pieces)
            Piece(sheet, piece, document.Requirement.DepthMm, pictures);
    }

    private static void Piece(
        Sheet sheet,
        PieceDocument piece,
        double? depthMm,
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> pictures
    )
    {
        sheet.KeepTogether(Math.Max(PieceHeightMm, HeightOf(sheet, piece)));
        var top = sheet.TopMm;
        var reading = piece.Reading;
        if (
            reading is { Sha256: { } sha256, WidthPx: { } widthPx, HeightPx: { } heightPx }
            && pictures.TryGetValue(sha256, out var jpeg)
        )
        {
            var scale = Math.Min(58.0 / widthPx, (PieceHeightMm - 6) / heightPx);
            sheet.Picture(jpeg, Sheet.MarginMm, top, widthPx * scale, heightPx * scale);
            sheet.Draw(PhotographDrawing.Draw(reading, piece.Name), Sheet.MarginMm, top, scale);
        }
        var drawing = SectionDrawing.Draw(reading, depthMm, piece.Name);
        var fit = Math.Min(1, Math.Min(56 / drawing.WidthMm, (PieceHeightMm - 4) / drawing.HeightMm));
        sheet.Draw(drawing, Sheet.MarginMm + 61, top - 3, fit);
        var numbers = Numbers(sheet, piece, NumbersLeftMm, top);
        sheet.Space(Math.Max(PieceHeightMm, numbers + 4));
    }

    private static double Numbers(Sheet sheet, PieceDocument piece, double left, double top)
    {
        var start = top;
        var width = Sheet.WidthMm - Sheet.MarginMm - left;
        top += sheet.Paragraph(piece.Name, Typeface.Bold(12), Ink.Text, left, width, top);
        top +=
            sheet.Paragraph(
                Sentence(piece.Verdict),
                Typeface.Bold(9),
                VerdictInk(piece.Verdict.Verdict),
                left,
                width,
                top
            ) + 1;
        foreach (var (name, value) in SectionRows.Measures(piece.Reading))
        {
            sheet.Paragraph(name, Typeface.Plain(8.5), Ink.Quiet, left, 24, top);
            top += sheet.Paragraph(value, Typeface.Plain(8.5), Ink.Text, left + 22, width - 22, top);
        }
        top += 1;
        foreach (var note in SectionRows.Patterns(piece.Reading).Concat(SectionRows.Notes(piece)))
            top += sheet.Paragraph(note, Typeface.Plain(7.5), Ink.Quiet, left, width, top);
        return top - start;
    }

    private static double HeightOf(Sheet sheet, PieceDocument piece)
    {
        var width = Sheet.WidthMm - Sheet.MarginMm - NumbersLeftMm;
        return 16
            + SectionRows
                .Measures(piece.Reading)
                .Sum(measure => sheet.HeightOf(measure.Value, Typeface.Plain(8.5), width - 22))
            + SectionRows
                .Patterns(piece.Reading)
                .Concat(SectionRows.Notes(piece))
                .Sum(note => sheet.HeightOf(note, Typeface.Plain(7.5), width));
    }

    private static void Retention(Sheet sheet, CaseDocument document)
    {
        sheet.Section(Words.RetentionTitle);
        foreach (var (i, says) in RetentionRows.Says(document.Retention).Index())
            if (i == 0)
                Fact(sheet, Words.Finding(says));
            else
                sheet.Fact("", says);
        if (document.Retention.Assays.Count == 0)
            return;
        foreach (var step in document.Retention.Conversion)
            sheet.Fact("", step);
        sheet.Space(2);
        sheet.Table(
            [40, 50, 50, -30],
            Words.AssayHeads,
            document.Retention.Assays.Select(assay =>
                (IReadOnlyList<string>)
                    [assay.Sample, Paper(assay), Words.Reported(assay.AsReported, assay.SubSamples), Result(assay)]
            )
        );
        if (document.Retention.Assays.Any(assay => assay.UKgPerM3 is not null))
            sheet.Text(Figures.PlusMinus, Typeface.Slanted(8.5), Ink.Quiet);
    }

    private static string Paper(AssayDocument assay) =>
        string.Join(", ", new[] { assay.Laboratory, assay.Report, assay.Method, assay.Zone }.OfType<string>());

    private static string Result(AssayDocument assay) =>
        assay is { RetentionKgPerM3: { } value, UKgPerM3: { } u }
            ? Figures.Measured(value, u, "")
            : Words.BelowDetection(assay.BelowKgPerM3 ?? 0);

    private static void Trace(Sheet sheet, CaseDocument document)
    {
        sheet.Section(Words.Trace);
        sheet.Table(
            [78, 42, 50],
            Words.TraceHeads,
            document.Requirement.Trace.Select(row =>
                (IReadOnlyList<string>)
                    [$"{row.Row}\n{row.Says}", row.Outcome, $"{row.Citation}\n({Wording.Current.Say(row.Standing)})"]
            )
        );
    }

    private static void Sources(Sheet sheet, CaseDocument document)
    {
        sheet.Section(Words.Sources);
        foreach (var source in document.Sources.Concat(document.Prediction?.RestsOn ?? []))
            sheet.Text(source, Typeface.Plain(8.5), Ink.Text);
    }

    private static void Cautions(Sheet sheet, CaseDocument document)
    {
        sheet.Section(Words.Cautions);
        foreach (var caution in document.Cautions)
        {
            sheet.KeepTogether(8);
            sheet.Text(caution, Typeface.Plain(8.5), Ink.Text);
            sheet.Space(0.8);
        }
    }

    private static void Uncertainty(Sheet sheet, CaseDocument document)
    {
        var budgets = document
            .Pieces.Where(piece => piece.Reading is { Budget: not null, Depth: not null })
            .Select(piece => (piece.Name, Budget: piece.Reading.Budget!, Depth: piece.Reading.Depth!))
            .ToList();
        if (budgets.Count == 0)
            return;
        var causes = budgets
            .SelectMany(piece => piece.Budget)
            .DistinctBy(row => row.Cause, StringComparer.Ordinal)
            .ToList();
        sheet.Section(Words.Uncertainty);
        sheet.Text(Words.UncertaintyKey, Typeface.Slanted(8.5), Ink.Quiet);
        sheet.Space(2);
        sheet.Table(
            [8, 46, 66, 10, 40],
            ["", .. Words.CauseHeads],
            causes.Select(
                (row, k) =>
                    (IReadOnlyList<string>)
                        [
                            Figures.Number(k + 1, 0),
                            row.Cause,
                            row.Size,
                            row.Type.ToString(),
                            Words.Named(Wording.Current.Say(row.Standing), row.Source),
                        ]
            )
        );
        void Contributions(string title, Func<BudgetRowDocument, double> of, Func<DepthDocument, double> together)
        {
            sheet.Space(3);
            sheet.Table(
                [30, .. causes.Select(_ => -13.0), -20],
                [title, .. causes.Select((_, k) => Figures.Number(k + 1, 0)), Words.Together],
                budgets.Select(piece =>
                    (IReadOnlyList<string>)
                        [
                            piece.Name,
                            .. causes.Select(cause =>
                                piece.Budget.FirstOrDefault(row => row.Cause == cause.Cause) is { } row
                                    ? Figures.Number(of(row), 2)
                                    : "–"
                            ),
                            Figures.Number(together(piece.Depth), 2),
                        ]
                )
            );
        }
        Contributions(Words.MeanDepth, row => row.MeanUMm, depth => depth.MeanUMm);
        Contributions(Words.LeastDepth, row => row.LeastUMm, depth => depth.MinUMm);
    }

    private static string Sentence(RuleDocument rule) =>
        Words.Rule(rule.Verdict, rule.ProbabilityLow, rule.ProbabilityHigh);

    private static string Sentence(VerdictDocument verdict) =>
        Words.Verdict(Wording.Capital(Wording.Current.Say(verdict.Verdict)), verdict.Probability);

    private static void Fact(Sheet sheet, (string Name, string Value) row) => sheet.Fact(row.Name, row.Value);

    private static Ink VerdictInk(Penetration.Verdict verdict) =>
        verdict switch
        {
            Penetration.Verdict.Conforms => Ink.Treated,
            Penetration.Verdict.DoesNotConform => Ink.Demand,
            _ => Ink.LeftOut,
        };
}
