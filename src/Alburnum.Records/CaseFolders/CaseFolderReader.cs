using Alburnum.Acceptance;
using Alburnum.Assaying;
using Alburnum.Cases;
using Alburnum.Facts;
using Alburnum.Penetration;
using Alburnum.Records.Assays;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Records.Marks;
using Alburnum.Records.Store;
using Alburnum.Records.Tables;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Records.CaseFolders;

/// <summary>Reads a case: <c>case.yaml</c>, its photographs and its tables. Its fields are described in docs/how-to/write-a-case.md.</summary>
public static class CaseFolderReader
{
    // Cases kept in a store still have these.
    private static readonly Dictionary<string, string> OlderNames = new(StringComparer.Ordinal)
    {
        [MarkField.Corners] = "outline",
        [MarkField.HeartwoodRadius] = "heartwoodRadius",
    };

    /// <summary>Name of the file that says what the case is.</summary>
    public const string CaseFile = "case.yaml";

    /// <summary>Reads and checks everything but the pictures themselves.</summary>
    /// <param name="files">The case's files.</param>
    /// <param name="facts">Species, components, rulebooks and indicators that the case may name.</param>
    /// <param name="onlyPiece">Reads the photograph of this piece alone; null: of all.</param>
    /// <exception cref="InputRefusedException">Anything is missing or wrong; carries every problem found.</exception>
    public static CaseFolder Read(ICaseFiles files, FactLibrary facts, string? onlyPiece = null)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(facts);
        var name = files.NameOf(CaseFile);
        if (!files.TryRead(CaseFile, out var bytes, out var fault))
        {
            var found = fault == FileFault.NotThere ? "no such file" : $"a file {fault.InWords()}";
            throw new InputRefusedException(
                new InputProblem(name, 0, "", "", found, "a case folder with a case.yaml in it")
            );
        }
        var problems = new List<InputProblem>();
        CaseFolder? read = null;
        var written = new WrittenFiles(files, problems);
        written.Add(CaseFile, bytes);
        FactFile.ReadText(
            written.Text(CaseFile),
            name,
            problems,
            root => read = ReadCase(files, written, root, facts, onlyPiece, problems)
        );
        return problems.Count == 0 && read is not null ? read : throw new InputRefusedException(problems);
    }

    private static CaseFolder? ReadCase(
        ICaseFiles files,
        WrittenFiles written,
        FactRow root,
        FactLibrary facts,
        string? onlyPiece,
        List<InputProblem> problems
    )
    {
        var book = RulebookOf(root, facts, written);
        var enquiry = EnquiryReader.Read(
            new RowFields(root, EnquiryFields.Component, EnquiryFields.Section, EnquiryFields.Species),
            facts,
            book is null ? [] : [book]
        );
        var indicator = new RowFields(root).OneOf(ReagentFields.Indicator, facts.Indicators, each => each.Key);
        var leftOut = LeftOut(files, root);
        var photographs = Photographs(
            files,
            root,
            enquiry.Section,
            onlyPiece,
            [.. leftOut.Select(photograph => photograph.FileName)],
            problems
        );
        var ruler = RulerReadings(written, root, enquiry.Section, problems);
        var basis = AssayBasis(root, enquiry.Species, facts);
        var @case = Enquired(root, book, enquiry, Assays(written, root, basis, facts, problems)) with
        {
            AssayBasis = basis,
        };
        // Where something else is wrong, that there is no piece may only follow from it.
        CheckPieces(
            root,
            [.. photographs.Select(p => p.Piece), .. ruler.Select(r => r.Piece)],
            @case.BatchSize,
            mayBeNone: problems.Count > 0
        );
        var name = files.NameOf(CaseFile);
        var required = problems.Count == 0 && book is not null ? @case.Under(book, facts.Rulebooks.All) : null;
        var (prediction, charge) = new ChargeReader(name, facts, problems, new(@case, required)).OfCase(root);
        var plant = Plant(written, root, problems);
        return problems.Count > 0 || book is null
            ? null
            : new(
                name,
                @case,
                book,
                indicator,
                photographs,
                leftOut,
                ruler,
                charge?.Treatment ?? prediction,
                charge,
                written.Read
            )
            {
                Plant = plant,
            };
    }

    private static double? Stated(
        FactRow row,
        string field,
        IReadOnlyList<(string Unit, double InFirst)> units,
        NumberRange range
    ) => row.Has(field) ? row.Quantity(field, units, range) : null;

    private static EnquiredCase Enquired(FactRow root, Rulebook? book, Enquiry enquiry, IReadOnlyList<Assay> assays)
    {
        var (batchSize, acceptance) = Batch(root, book, enquiry);
        return new(
            root.Text("reference"),
            root.Text("title"),
            root.Text("client"),
            Date(root, "sectionsCut"),
            enquiry,
            batchSize,
            acceptance,
            assays,
            Stated(root, "statedRetention", Units.MassInVolume, Ranges.RetentionKgPerM3),
            // Deeper than the middle of the section no sapwood goes.
            Stated(
                root,
                "statedSapwood",
                Units.Length,
                enquiry.Section is { } section
                    ? Ranges.SapwoodMm with
                    {
                        High = section.ThicknessMm / 2,
                    }
                    : Ranges.SapwoodMm
            )
        )
        {
            StatedSapwoodUMm = StatedUncertainty(root),
            TreatedOn = root.Has("treatedOn") ? Date(root, "treatedOn") : null,
            MoistureMeasuredOn = root.Has("moistureMeasuredOn") ? Date(root, "moistureMeasuredOn") : null,
        };
    }

    private static double? StatedUncertainty(FactRow root)
    {
        const string Field = "statedSapwoodUncertainty";
        if (root.Has(Field) && !root.Has("statedSapwood"))
            root.Refuse(Field, root.OptionalText(Field), "a statedSapwood beside it, whose standard uncertainty it is");
        return Stated(root, Field, Units.Length, Ranges.RulerUncertaintyMm);
    }

    private static DateOnly Date(FactRow row, string field)
    {
        var text = row.Text(field);
        if (DateText.Read(text) is { } date)
            return date;
        if (text.Length > 0)
            row.Refuse(field, text, DateText.Expected);
        return default;
    }

    // A file of the user's own lies with the case, so that it is kept with it.
    private static Rulebook? RulebookOf(FactRow root, FactLibrary facts, WrittenFiles written)
    {
        var text = root.Text("rulebook");
        if (text.Length == 0)
            return null;
        if (Path.GetExtension(text) is RulebookFile.Extension)
            return written.Opened(
                text,
                "a rulebook file within the case folder",
                (_, bytes) => RulebookFile.Read(bytes, text, Path.GetFileNameWithoutExtension(text), facts)
            );
        if (facts.Rulebooks.Names.Contains(text, StringComparer.OrdinalIgnoreCase))
            return facts.Rulebooks.Named(text);
        root.Refuse("rulebook", text, facts.Rulebooks.MeantBy(text, ", or a rulebook file in the case's folder"));
        return null;
    }

    // A share that nobody states is the code's, where the rulebook knows it for the timber.
    private static (int Size, AcceptanceRule Rule) Batch(FactRow root, Rulebook? book, Enquiry enquiry)
    {
        var batch = root.OptionalRow("batch");
        if (batch is null)
        {
            root.Refuse("batch", "nothing", "pieces, and the share of the pieces cut that must pass");
            return (1, new ShareMustPass(1));
        }
        var pieces = batch.Whole("pieces", Ranges.Pieces);
        if (!batch.Has("mustPass") && book?.Answer(enquiry).Trace.AqlPercent is { } aql)
            return (pieces, ShareMustPass.Of(aql));
        return (pieces, new ShareMustPass(batch.Quantity("mustPass", Units.Share, Ranges.MustPassPercent) / 100));
    }

    private static List<CasePhotograph> Photographs(
        ICaseFiles files,
        FactRow root,
        Section? section,
        string? onlyPiece,
        IReadOnlyList<string> leftOut,
        List<InputProblem> problems
    )
    {
        var photographs = new List<CasePhotograph>();
        foreach (var piece in root.OptionalRows("pieces"))
        {
            var name = piece.Text("piece");
            var file = piece.Text("photograph");
            var marks = MarksOf(piece, section);
            var isIncised = new RowFields(piece).YesNo(EnquiryFields.Incised);
            var isWanted = file.Length > 0 && (onlyPiece is null || onlyPiece == name);
            if (isWanted && Load(files, file, piece) is { } photograph)
                photographs.Add(new CasePhotograph(name, piece.Line, photograph, files.NameOf(file), marks, isIncised));
        }
        RefuseOnePhotographTwice(photographs, root);
        foreach (var file in files.Photographs.Except(leftOut, StringComparer.Ordinal))
        {
            if (!photographs.Exists(photograph => photograph.FileName == file) && problems.Count == 0)
            {
                root.Refuse(
                    "pieces",
                    $"no piece for the photograph {file}",
                    "every photograph in the folder under pieces, or under leftOut with a reason"
                );
            }
        }
        return photographs;
    }

    // One cut end is evidence of one piece, whatever its file is called. Two sections on one photograph are told apart by their corners.
    private static void RefuseOnePhotographTwice(IReadOnlyList<CasePhotograph> photographs, FactRow root)
    {
        foreach (
            var same in photographs
                .GroupBy(photograph => photograph.File.Sha256, StringComparer.Ordinal)
                .Where(group => group.Count() > 1)
        )
        {
            var corners = same.Select(photograph =>
                    photograph.Marks.Corners is { } marked ? string.Join(';', marked) : ""
                )
                .ToList();
            if (corners.Contains("") || corners.Distinct(StringComparer.Ordinal).Count() < corners.Count)
                root.Refuse(
                    "pieces",
                    $"the same photograph ({string.Join(", ", same.Select(each => Path.GetFileName(each.FileName)))}: equal SHA-256) for pieces {string.Join(" and ", same.Select(each => each.Piece))}",
                    "a photograph of its own for each piece; where one shows several sections, the corners of each"
                );
        }
    }

    private static WrittenMarks MarksOf(FactRow piece, Section? section)
    {
        foreach (var (field, older) in OlderNames)
            if (piece.Has(older) && piece.Has(field))
                piece.Refuse(older, $"{field} as well", "one of the two");
        string NameOf(string field) => OlderNames.TryGetValue(field, out var older) && piece.Has(older) ? older : field;
        string? Text(string field) =>
            piece.Has(NameOf(field)) ? string.Join(' ', piece.Texts(NameOf(field))).Trim() : null;
        var (marks, faults) = MarksReader.Read(Text, NameOf, section);
        foreach (var fault in faults)
            piece.Refuse(NameOf(fault.Field), fault.Found, fault.Expected);
        return marks;
    }

    private static List<LeftOutPhotograph> LeftOut(ICaseFiles files, FactRow root)
    {
        var measured = root.OptionalRows("pieces").Select(piece => piece.OptionalText("photograph")).ToList();
        var leftOut = new List<LeftOutPhotograph>();
        foreach (var row in root.OptionalRows("leftOut"))
        {
            var (file, reason) = (row.Text("photograph"), row.Text("reason"));
            var piece = row.Has("piece") ? row.Text("piece") : file;
            if (file.Length == 0)
                continue;
            if (measured.Contains(file, StringComparer.Ordinal) || leftOut.Exists(each => each.FileName == file))
                row.Refuse("photograph", $"{file} twice", "each photograph once, under pieces or under leftOut");
            if (files.TryReadPhotograph(file, out var photograph, out var fault))
                fault = FileFault.None;
            // One that is too large, or was not kept with an older run, is listed all the same.
            if (fault is FileFault.NotThere or FileFault.OutsideTheFolder or FileFault.IsAFolder)
                Refuse(row, file, fault);
            leftOut.Add(
                new(file, reason, piece, photograph) { Sha256 = photograph?.Sha256 ?? files.HashOfLarge(file) }
            );
        }
        return leftOut;
    }

    private static Photograph? Load(ICaseFiles files, string name, FactRow piece)
    {
        if (files.TryReadPhotograph(name, out var photograph, out var fault) && photograph.Bytes.Length > 0)
            return photograph;
        if (fault == FileFault.None)
            fault = FileFault.Empty;
        Refuse(piece, name, fault);
        return null;
    }

    private static void Refuse(FactRow row, string name, FileFault fault) =>
        row.Refuse(
            "photograph",
            $"{name}, {fault.InWords()}",
            $"a photograph within the case folder, {PhotographSize.Expected}"
        );

    private static List<PieceEvidence> RulerReadings(
        WrittenFiles written,
        FactRow root,
        Section? section,
        List<InputProblem> problems
    )
    {
        var name = root.OptionalText("rulerReadings");
        if (name.Length == 0 || section is null || written.Table(name) is not { } table)
            return [];
        var pieces = RulerTable.Read(table, section, problems);
        return problems.Count > 0
            ? []
            :
            [
                .. pieces.Select(piece => new PieceEvidence(
                    piece.Piece,
                    EvidenceKind.Ruler,
                    HandReadings.Profile(section, piece.Readings)
                )),
            ];
    }

    // Without a prediction there is nothing that the plant's history could calibrate.
    private static PlantRecord? Plant(WrittenFiles written, FactRow root, List<InputProblem> problems)
    {
        const string Field = "plantHistory";
        var name = root.OptionalText(Field);
        if (name.Length == 0)
            return null;
        if (!root.Has("prediction") && !root.Has("charge"))
            root.Refuse(Field, name, "prediction or charge beside it: the history calibrates what is expected");
        var folder = Path.GetDirectoryName(name) ?? "";
        return written.Table(name) is { } table
            ? PlantTable.Read(
                table,
                file => written.Opened(Path.Combine(folder, file), MeasuredSections.Expected, MeasuredSections.Read),
                problems
            )
            : null;
    }

    private static AssayBasis AssayBasis(FactRow root, Species? species, FactLibrary facts) =>
        root.OptionalRow("assayBasis") is { } row ? AssayBasisReader.Read(new RowFields(row), species, facts)
        : species is null ? new()
        : new() { Density = UsualZoneDensity.Of(species, facts.DensityVariation) };

    private static IReadOnlyList<Assay> Assays(
        WrittenFiles written,
        FactRow root,
        AssayBasis basis,
        FactLibrary facts,
        List<InputProblem> problems
    )
    {
        var name = root.OptionalText("assays");
        return name.Length > 0 && written.Table(name) is { } table
            ? AssayTable.Read(table, basis, facts.Substances, problems)
            : [];
    }

    private static void CheckPieces(FactRow root, List<string> names, int batchSize, bool mayBeNone)
    {
        foreach (var twice in names.GroupBy(name => name, StringComparer.Ordinal).Where(group => group.Count() > 1))
            root.Refuse("pieces", $"{twice.Key} twice", "each piece once");
        if (names.Count == 0 && !mayBeNone)
            root.Refuse("pieces", "no piece with a photograph or a ruler reading", "at least one");
        if (names.Count > batchSize)
            root.Refuse(
                "batch",
                $"{names.Count} pieces cut from a batch of {batchSize}",
                "at most as many as the batch has"
            );
    }
}
