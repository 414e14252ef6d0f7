using System.Globalization;
using Alburnum.Imaging.Pictures;
using Alburnum.Penetration;
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

    /// <summary>Makes the PDF.</summary>
    /// <param name="document">The result of the case.</param>
    /// <param name="pictures">A small upright JPEG for each photograph's SHA-256, with width and height in the photograph's own pixels.</param>
    public static byte[] Write(CaseDocument document, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> pictures)
    {
        using var sheet = new Sheet(
            $"{document.Title}: preservative penetration",
            $"{document.Reference} · {document.Title} · {document.Program} · {document.RunAt.ToString("d MMMM yyyy, HH:mm", CultureInfo.InvariantCulture)} UTC"
        );
        Head(sheet, document);
        Verdict(sheet, document);
        Requirement(sheet, document);
        Expectation(sheet, document);
        Batch(sheet, document);
        Pieces(sheet, document, pictures);
        Retention(sheet, document);
        Trace(sheet, document);
        Sources(sheet, document);
        Cautions(sheet, document);
        Uncertainty(sheet, document);
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
        sheet.Text("Preservative penetration in treated timber", Typeface.Plain(9), Ink.Quiet);
        sheet.Space(2);
        sheet.Text(document.Title, Typeface.Heading(22), Ink.Text);
        var sampled = document.SampledOn.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);
        sheet.Text($"For {document.Client}. Sections cut {sampled}.", Typeface.Plain(10), Ink.Text);
    }

    private static void Verdict(Sheet sheet, CaseDocument document)
    {
        sheet.Space(6);
        var top = sheet.TopMm;
        sheet.Space(2);
        sheet.Text(Wording.Capital(document.Verdict.Verdict.InWords()), Typeface.Heading(19), Ink.Text, indentMm: 5);
        sheet.Text(
            $"Probability of conformity: {Figures.Certainty(document.Verdict.Probability)}",
            Typeface.Plain(10),
            Ink.Text,
            indentMm: 5
        );
        sheet.Space(1.5);
        foreach (var reason in document.Verdict.Reasons)
            sheet.Text(reason, Typeface.Plain(9.5), Ink.Text, indentMm: 5);
        sheet.Space(2);
        var height = sheet.TopMm - top;
        var bar = new Area([new(0, 0), new(1.2, 0), new(1.2, height), new(0, height)], VerdictInk(document.Verdict));
        sheet.Draw(new Drawing(1.2, height, "", [bar]), Sheet.MarginMm, top, 1);
    }

    private static void Requirement(Sheet sheet, CaseDocument document)
    {
        var (enquiry, requirement) = (document.Enquiry, document.Requirement);
        sheet.Section("What is required");
        sheet.Fact(
            "Component",
            $"{enquiry.Component}, {enquiry.Section}, {RequirementWords.English.Say(enquiry.Form)}{(enquiry.Incised ? ", incised" : "")}"
        );
        sheet.Fact("Species", $"{enquiry.Species} ({enquiry.BotanicalName})");
        sheet.Fact("Use class", $"{enquiry.UseClass}: {enquiry.UseClassInWords}");
        sheet.Fact("Desired service life", enquiry.ServiceLifeYears is { } years ? $"{years} years" : "not stated");
        sheet.Fact("Code of practice", requirement.Rulebook);
        if (requirement.Penetration is { } penetration)
            sheet.Fact(
                "Penetration",
                penetration == requirement.PenetrationInWords
                    ? penetration
                    : $"{penetration}: {requirement.PenetrationInWords}"
            );
        else
            sheet.Fact("Answer", $"{RequirementWords.English.Answers.Say(requirement.Outcome)}: {requirement.Reason}");
        sheet.Fact("Analytical zone", requirement.AnalyticalZone ?? "not in the rulebook: the code must be consulted");
        sheet.Fact("Retention", RetentionDemand(requirement));
        if (requirement.MoistureMaxPercent is { } moisture)
            sheet.Fact("Moisture before treatment", $"at most {Figures.Number(moisture, 0)} %");
        foreach (var condition in requirement.Conditions)
            sheet.Fact("Condition", condition);
        sheet.Fact("Weakest standing of a fact used", document.WeakestStanding.InWords());
    }

    private static void Expectation(Sheet sheet, CaseDocument document)
    {
        if (!ExpectationMapping.HasExpectation(document))
            return;
        sheet.Section(ExpectationWords.English.Title);
        foreach (var (name, value) in ExpectationMapping.Rows(document))
            sheet.Fact(name, value);
        foreach (var note in ExpectationMapping.Notes(document))
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

    /// <summary>The retention demanded, in words.</summary>
    public static string RetentionDemand(RequirementDocument requirement) =>
        requirement switch
        {
            { RetentionKgPerM3: { } retention, RetentionFactor: { } factor } =>
                $"{Figures.Number(retention, 1)} kg/m³ in the zone ({Figures.Number(factor, 2)} × the preservative's critical value)",
            { RetentionKgPerM3: { } stated } =>
                $"{Figures.Number(stated, 1)} kg/m³ in the zone, as the contract or the code states it",
            { RetentionFactor: { } factor } =>
                $"{Figures.Number(factor, 2)} × the preservative's critical value, which was not stated",
            _ => "not in the rulebook: the code must be consulted",
        };

    private static void Batch(Sheet sheet, CaseDocument document)
    {
        var batch = document.Batch;
        sheet.Section("The batch");
        sheet.Fact("Pieces", $"{batch.PiecesInBatch} in the batch, {batch.PiecesCut} cut and read");
        sheet.Fact("Rule for the batch", batch.AcceptanceRule);
        sheet.Fact("Penetration", Sentence(batch.Verdict));
        if (batch.ConformingShareLowerBound is { } bound)
            sheet.Fact("Conforming share", $"at least {Figures.Percent(bound)} of the batch, with 95 % confidence");
        foreach (var reason in batch.Verdict.Reasons)
            sheet.Fact("", reason);
    }

    private static void Pieces(
        Sheet sheet,
        CaseDocument document,
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> pictures
    )
    {
        sheet.Section("The sections", PieceHeightMm + 30);
        sheet.Text(
            "Left: the photograph with the outline found and the boundary of the treated wood. Middle: the section to scale,"
                + " treated wood dark, the required depth dashed, stretches left out marked outside the outline.",
            Typeface.Slanted(8.5),
            Ink.Quiet
        );
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
            sheet.Paragraph(Sentence(piece.Verdict), Typeface.Bold(9), VerdictInk(piece.Verdict), left, width, top) + 1;
        foreach (var (name, value) in Measures(piece.Reading))
        {
            sheet.Paragraph(name, Typeface.Plain(8.5), Ink.Quiet, left, 24, top);
            top += sheet.Paragraph(value, Typeface.Plain(8.5), Ink.Text, left + 22, width - 22, top);
        }
        top += 1;
        foreach (var note in Notes(piece))
            top += sheet.Paragraph(note, Typeface.Plain(7.5), Ink.Quiet, left, width, top);
        return top - start;
    }

    /// <summary>What is to be said of a piece beside its measures, one sentence each.</summary>
    public static IEnumerable<string> Notes(PieceDocument piece) =>
        piece
            .Verdict.Reasons.Append(MarksMapping.InWords(piece.Reading.Marks))
            .Concat(Notes(piece.Reading))
            .Where(note => note.Length > 0)
            .Distinct(StringComparer.Ordinal);

    /// <summary>What the reading says of itself, and how the heartwood was told where it was.</summary>
    public static IEnumerable<string> Notes(ReadingDocument reading) =>
        reading.Heartwood is { BorderUMm: not null } told ? [told.InWords, .. reading.Notes] : reading.Notes;

    private static double HeightOf(Sheet sheet, PieceDocument piece)
    {
        var width = Sheet.WidthMm - Sheet.MarginMm - NumbersLeftMm;
        return 16
            + Measures(piece.Reading).Sum(measure => sheet.HeightOf(measure.Value, Typeface.Plain(8.5), width - 22))
            + Notes(piece).Sum(note => sheet.HeightOf(note, Typeface.Plain(7.5), width));
    }

    /// <summary>The measures of a section as name and rounded value.</summary>
    public static IEnumerable<(string Name, string Value)> Measures(ReadingDocument reading)
    {
        if (reading.Depth is not { } depth)
        {
            yield return ("depth", "not determined");
            yield break;
        }
        yield return ("least", Figures.Measured(depth.MinMm, depth.MinUMm, "mm"));
        yield return ("5th percentile", Figures.Measured(depth.P5Mm, depth.P5UMm, "mm"));
        yield return ("mean", Figures.Measured(depth.MeanMm, depth.MeanUMm, "mm"));
        yield return ("greatest", Figures.Measured(depth.MaxMm, depth.MaxUMm, "mm"));
        if (reading.TreatedShare is { } share)
            yield return ("treated", $"{Figures.WholePercent(share)} of the section");
        if (reading.SapwoodTreatedShare is { } sapwood)
            yield return ("of the sapwood", Figures.WholePercent(sapwood));
        yield return ("quality", DocumentWords.Quality(reading.Quality));
    }

    private static void Retention(Sheet sheet, CaseDocument document)
    {
        sheet.Section("Retention");
        sheet.Fact("Finding", Sentence(document.Retention.Verdict));
        foreach (var reason in document.Retention.Verdict.Reasons)
            sheet.Fact("", reason);
        if (document.Retention.Assays.Count == 0)
            return;
        sheet.Space(2);
        sheet.Table(
            [60, -50],
            ["Sample of the analytical zone", "kg/m³"],
            document.Retention.Assays.Select(assay => (IReadOnlyList<string>)[assay.Sample, Result(assay)])
        );
    }

    private static string Result(AssayDocument assay) =>
        assay is { RetentionKgPerM3: { } value, UKgPerM3: { } u }
            ? Figures.Measured(value, u, "")
            : $"under {Figures.Number(assay.BelowKgPerM3 ?? 0, 2)}";

    private static void Trace(Sheet sheet, CaseDocument document)
    {
        sheet.Section("Why: rows of the rulebook");
        sheet.Table(
            [78, 42, 50],
            ["Row", "Applies?", "Source and standing"],
            document.Requirement.Trace.Select(row =>
                (IReadOnlyList<string>)
                    [$"{row.Row}\n{row.Says}", row.Outcome, $"{row.Citation}\n({row.Standing.InWords()})"]
            )
        );
    }

    private static void Sources(Sheet sheet, CaseDocument document)
    {
        sheet.Section("Sources");
        foreach (var source in document.Sources.Concat(document.Prediction?.RestsOn ?? []))
            sheet.Text(source, Typeface.Plain(8.5), Ink.Text);
    }

    private static void Cautions(Sheet sheet, CaseDocument document)
    {
        sheet.Section("Cautions");
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
        sheet.Section("Appendix: what makes the depths uncertain");
        sheet.Text(
            "Standard uncertainties in mm, added in quadrature (JCGM 100:2008, 5.1). Type A is evaluated from scatter, type B otherwise.",
            Typeface.Slanted(8.5),
            Ink.Quiet
        );
        sheet.Space(2);
        sheet.Table(
            [8, 46, 66, 10, 40],
            ["", "Cause", "How large", "Type", "Standing and source"],
            causes.Select(
                (row, k) =>
                    (IReadOnlyList<string>)
                        [
                            Figures.Number(k + 1, 0),
                            row.Cause,
                            row.Size,
                            row.Type.ToString(),
                            $"{row.Standing.InWords()}: {row.Source}",
                        ]
            )
        );
        void Contributions(string title, Func<BudgetRowDocument, double> of, Func<DepthDocument, double> together)
        {
            sheet.Space(3);
            sheet.Table(
                [30, .. causes.Select(_ => -13.0), -20],
                [title, .. causes.Select((_, k) => Figures.Number(k + 1, 0)), "together"],
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
        Contributions("Mean depth", row => row.MeanUMm, depth => depth.MeanUMm);
        Contributions("Least depth", row => row.LeastUMm, depth => depth.MinUMm);
    }

    private static string Sentence(VerdictDocument verdict)
    {
        var words = Wording.Capital(verdict.Verdict.InWords());
        return verdict.Probability is null
            ? words
            : $"{words}, probability of conformity {Figures.Certainty(verdict.Probability)}";
    }

    private static Ink VerdictInk(VerdictDocument verdict) =>
        verdict.Verdict switch
        {
            Penetration.Verdict.Conforms => Ink.Treated,
            Penetration.Verdict.DoesNotConform => Ink.Demand,
            _ => Ink.LeftOut,
        };
}
