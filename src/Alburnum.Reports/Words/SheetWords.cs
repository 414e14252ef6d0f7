using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>What the sheet of a case says beside its sentences, in words: titles, rows of a name and a value, what a drawing shows.</summary>
/// <param name="wording">The language.</param>
public sealed class SheetWords(Wording wording)
{
    private readonly RequirementWords _requirements = new(wording);

    /// <summary>In the language chosen.</summary>
    public static SheetWords Current => new(Wording.Current);

    /// <summary>What the sheet is about.</summary>
    public string Subject => wording.Say("sheet.subject");

    /// <summary>What is said for a value that the enquiry leaves out.</summary>
    public string NotStated => wording.Say("sheet.not-stated");

    /// <summary>"yes", "no" or, for null, "not known".</summary>
    public string YesNo(bool? answer) =>
        answer switch
        {
            true => wording.Say("sheet.yes"),
            false => wording.Say("sheet.no"),
            null => wording.Say("rows.not-known"),
        };

    /// <summary>Title of what the code demands.</summary>
    public string Demanded => wording.Say("sheet.demanded");

    /// <summary>Title of what is said of the batch.</summary>
    public string Batch => wording.Say("sheet.batch");

    /// <summary>Title of the drawings.</summary>
    public string Sections => wording.Say("sheet.sections");

    /// <summary>How the drawings are read.</summary>
    public string SectionsKey => wording.Say("sheet.sections-key");

    /// <summary>Title of what is said of retention.</summary>
    public string RetentionTitle => wording.Say("sheet.retention");

    /// <summary>Heads of the table of assays.</summary>
    public IReadOnlyList<string> AssayHeads =>
        [
            wording.Say("sheet.assay-sample"),
            wording.Say("sheet.assay-paper"),
            wording.Say("sheet.assay-reported"),
            wording.Say("sheet.assay-unit"),
        ];

    /// <summary>An assay as the laboratory reported it, with its sub-samples; empty where it was reported in kg/m³ from one.</summary>
    public string Reported(string? figures, int? subSamples) =>
        string.Join(
            ", ",
            new[]
            {
                figures,
                subSamples is > 1 and var count ? wording.Count("count.sub-sample", count) : null,
            }.OfType<string>()
        );

    /// <summary>Title of the rows of the rulebook.</summary>
    public string Trace => wording.Say("sheet.trace");

    /// <summary>Heads of the table of rows.</summary>
    public IReadOnlyList<string> TraceHeads =>
        [wording.Say("sheet.trace-row"), wording.Say("sheet.trace-applies"), wording.Say("sheet.trace-source")];

    /// <summary>Title of the sources.</summary>
    public string Sources => wording.Say("sheet.sources");

    /// <summary>Title of what a reader should know beside the verdict.</summary>
    public string Remarks => wording.Say("sheet.remarks");

    /// <summary>Title of the photographs that were left out.</summary>
    public string LeftOut => wording.Say("sheet.left-out");

    /// <summary>Heads of the table of photographs that were left out.</summary>
    public IReadOnlyList<string> LeftOutHeads =>
        [
            wording.Say("sheet.left-out-file"),
            wording.Say("sheet.left-out-reason"),
            wording.Say("sheet.left-out-with-it"),
        ];

    /// <summary>Title of the list of photographs.</summary>
    public string Photographs => wording.Say("sheet.photographs");

    /// <summary>How the list of photographs is read.</summary>
    public string PhotographsKey => wording.Say("sheet.photographs-key");

    /// <summary>Heads of the list of photographs.</summary>
    public IReadOnlyList<string> PhotographHeads =>
        [
            wording.Say("sheet.photographs-piece"),
            wording.Say("sheet.photographs-file"),
            wording.Say("sheet.photographs-sha256"),
        ];

    /// <summary>Title of the cautions.</summary>
    public string Cautions => wording.Say("sheet.cautions");

    /// <summary>Title of the uncertainty budget.</summary>
    public string Uncertainty => wording.Say("sheet.uncertainty");

    /// <summary>How the uncertainty budget is read.</summary>
    public string UncertaintyKey => wording.Say("sheet.uncertainty-key");

    /// <summary>Heads of the table of causes, after the one of their numbers.</summary>
    public IReadOnlyList<string> CauseHeads =>
        [
            wording.Say("sheet.cause"),
            wording.Say("sheet.cause-size"),
            wording.Say("sheet.cause-type"),
            wording.Say("sheet.cause-source"),
        ];

    /// <summary>Head of what the causes contribute to the mean depth.</summary>
    public string MeanDepth => wording.Say("sheet.mean-depth");

    /// <summary>Head of what the causes contribute to the least depth.</summary>
    public string LeastDepth => wording.Say("sheet.least-depth");

    /// <summary>Head of the combined uncertainty.</summary>
    public string Together => wording.Say("sheet.together");

    /// <summary>Title of the file.</summary>
    public string Title(string title) => wording.Say("sheet.title", ("title", title));

    /// <summary>What stands at the foot of every page.</summary>
    public string Foot(string reference, string title, string program, string runAt) =>
        wording.Say("sheet.foot", ("reference", reference), ("title", title), ("program", program), ("runAt", runAt));

    /// <summary>For whom it is, and of what day the sections are.</summary>
    public string ForClient(string client, string sampled) =>
        wording.Say("sheet.for-client", ("client", client), ("sampled", sampled));

    /// <summary>Whether a rule is met, with the chance that it would be if depths and retention were known exactly.</summary>
    /// <param name="verdict">Whether it is met.</param>
    /// <param name="low">Least chance that the evidence allows, 0 to 1; null where none is known.</param>
    /// <param name="high">Greatest, likewise.</param>
    public string Rule(Verdict verdict, double? low, double? high)
    {
        var met = Wording.Capital(wording.SayRule(verdict));
        return (low, high) is ({ } least, { } most)
            ? wording.Say("sheet.rule-met", ("rule", met), ("chance", new FindingWords(wording).Chance(least, most)))
            : met;
    }

    /// <summary>A verdict, with its probability where there is one.</summary>
    public string Verdict(string verdict, double? probability) =>
        probability is null
            ? verdict
            : wording.Say(
                "sheet.verdict-probability",
                ("verdict", verdict),
                ("probability", new JudgeWords(wording).Probability(probability))
            );

    /// <summary>A name and what it says; the name alone where it says the same.</summary>
    public string Named(string name, string? says) =>
        says == name ? name : wording.Say("sheet.named", ("name", name), ("says", says ?? ""));

    /// <summary>The component enquired about.</summary>
    public (string Name, string Value) Component(string component, string section, TimberForm form, bool? isIncised) =>
        (
            wording.Say("sheet.component"),
            wording.Say(
                isIncised == true ? "sheet.component-incised" : "sheet.component-and-size",
                ("component", component),
                ("section", section),
                ("form", _requirements.Say(form))
            )
        );

    /// <summary>The section enquired about, sawn or round, incised or not.</summary>
    public string Size(string section, TimberForm form, bool? isIncised) =>
        wording.Say(
            isIncised == true ? "sheet.size-incised" : "sheet.size",
            ("section", section),
            ("form", _requirements.Say(form))
        );

    /// <summary>The species enquired about.</summary>
    public (string Name, string Value) Species(string species, string botanical) =>
        (
            wording.Say("sheet.species"),
            wording.Say("sheet.species-and-botanical", ("species", species), ("botanical", botanical))
        );

    /// <summary>The use class enquired about.</summary>
    /// <param name="useClass">The class, or those possible.</param>
    /// <param name="isOfCode">Whether it is the code's own for the component.</param>
    /// <param name="contractsClass">The class of the contract that it is for; null where it comes from elsewhere.</param>
    /// <param name="meaning">The situation that it stands for; empty where it is not known.</param>
    public (string Name, string Value) UseClass(
        string useClass,
        bool isOfCode,
        string? contractsClass,
        string meaning
    ) => (wording.Say("sheet.use-class"), UseClassAndMeaning(useClass, isOfCode, contractsClass, meaning));

    /// <summary>The use class and the situation that it stands for.</summary>
    public string UseClassAndMeaning(string useClass, bool isOfCode, string? contractsClass, string meaning)
    {
        var said = UseClass(useClass, isOfCode, contractsClass);
        return meaning.Length > 0 ? Named(said, meaning) : said;
    }

    /// <summary>A use class, with where it comes from: the code's own for the component, or what the contract's class is for.</summary>
    internal string UseClass(string useClass, bool isOfCode, string? contractsClass) =>
        contractsClass is { } named
            ? wording.Say("sheet.by-contract", ("value", useClass), ("class", named))
            : ByCode(useClass, isOfCode);

    /// <summary>A value, with a word where it is the code's own for the component.</summary>
    public string ByCode(string value, bool isOfCode) =>
        isOfCode ? wording.Say("sheet.by-code", ("value", value)) : value;

    /// <summary>The desired service life.</summary>
    public (string Name, string Value) ServiceLife(int? years, bool isOfCode) =>
        (wording.Say("sheet.life"), Life(years, isOfCode));

    /// <summary>A desired service life; null is "not stated".</summary>
    public string Life(int? years, bool isOfCode) =>
        years is { } known ? ByCode(wording.Say("rows.years", ("years", Figures.Whole(known))), isOfCode) : NotStated;

    /// <summary>What is said of penetration.</summary>
    public (string Name, string Value) Penetration(string says) => (wording.Say("sheet.penetration"), says);

    /// <summary>A retention demanded.</summary>
    /// <param name="kgPerM3">The figure to meet, kg/m³; null where there is none.</param>
    /// <param name="factor">Multiple of the preservative's critical value; null where none is named.</param>
    public string RetentionDemand(double? kgPerM3, double? factor) =>
        (kgPerM3, factor) switch
        {
            ({ } retention, { } multiple) => wording.Say(
                "sheet.retention-multiple",
                ("retention", Figures.Number(retention, 1)),
                ("factor", Figures.Number(multiple, 2))
            ),
            ({ } stated, null) => wording.Say("sheet.retention-named", ("retention", Figures.Number(stated, 1))),
            (null, { } multiple) => wording.Say("sheet.retention-open", ("factor", Figures.Number(multiple, 2))),
            _ => wording.Say("sheet.consult-code"),
        };

    /// <summary>What goes with the demand.</summary>
    public (string Name, string Value) Condition(string says) => (wording.Say("sheet.condition"), says);

    /// <summary>How many pieces there are, and how many were cut.</summary>
    public (string Name, string Value) Pieces(int batch, int cut) => (wording.Say("sheet.pieces"), Cut(batch, cut));

    /// <summary>How many pieces of a batch were cut.</summary>
    public string Cut(int batch, int cut) =>
        wording.Say("sheet.pieces-cut", ("batch", Figures.Whole(batch)), ("cut", Figures.Whole(cut)));

    /// <summary>The rule by which the batch is accepted.</summary>
    public (string Name, string Value) Rule(string rule) => (wording.Say("sheet.rule"), rule);

    /// <summary>The depth of a section where none could be read.</summary>
    public (string Name, string Value) NoDepth => (wording.Say("sheet.depth"), wording.Say("figures.not-determined"));

    /// <summary>The least depth of a section.</summary>
    public (string Name, string Value) Least(double mm, double uMm) => (wording.Say("sheet.least"), Depth(mm, uMm));

    /// <summary>The 5th percentile of the depth.</summary>
    public (string Name, string Value) FifthPercentile(double mm, double uMm) =>
        (wording.Say("penetration.fifth-percentile"), Depth(mm, uMm));

    /// <summary>The mean depth.</summary>
    public (string Name, string Value) Mean(double mm, double uMm) => (wording.Say("sheet.mean"), Depth(mm, uMm));

    /// <summary>The greatest depth.</summary>
    public (string Name, string Value) Greatest(double mm, double uMm) =>
        (wording.Say("sheet.greatest"), Depth(mm, uMm));

    /// <summary>The treated share of the section, 0 to 1.</summary>
    public (string Name, string Value) Treated(double share) =>
        (
            wording.Say("sheet.treated"),
            wording.Say("sheet.treated-share", ("share", Figures.WholePercent(share, wording)))
        );

    /// <summary>The same in a narrow column.</summary>
    public (string Name, string Value) TreatedShare(double share) =>
        (wording.Say("sheet.treated"), Figures.WholePercent(share, wording));

    /// <summary>The treated share of the sapwood, 0 to 1.</summary>
    public (string Name, string Value) SapwoodTreated(double share) =>
        (wording.Say("sheet.sapwood"), Figures.WholePercent(share, wording));

    /// <summary>What the depths are to the scale of.</summary>
    public (string Name, string Value) Scale(ScaleBasis basis) =>
        (
            wording.Say("sheet.scale"),
            wording.Say(
                basis switch
                {
                    ScaleBasis.NominalSize => "sheet.scale-nominal",
                    ScaleBasis.KnownLength => "sheet.scale-known-length",
                    ScaleBasis.MeasuredSize => "sheet.scale-measured",
                    ScaleBasis.Card => "sheet.scale-card",
                    _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "Not a basis."),
                }
            )
        );

    /// <summary>How good the reading is.</summary>
    public (string Name, string Value) Quality(string quality) => (wording.Say("sheet.quality"), quality);

    /// <summary>The verdict on retention.</summary>
    public (string Name, string Value) Finding(string verdict) => (wording.Say("sheet.finding"), verdict);

    /// <summary>An assay that found nothing down to its limit, kg/m³.</summary>
    public string BelowDetection(double limitKgPerM3) =>
        wording.Say("sheet.below-detection", ("limit", Figures.Digits(limitKgPerM3, 3)));

    private static string Depth(double mm, double uMm) => Figures.Measured(mm, uMm, "mm");
}
