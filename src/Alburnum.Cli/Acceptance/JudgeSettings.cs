using System.ComponentModel;
using Alburnum.Acceptance;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Workflows.Acceptance;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Acceptance;

/// <summary>What every batch may be judged with.</summary>
internal abstract class JudgeSettings : JsonSettings
{
    [CommandOption("--lot <PIECES>")]
    [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Lot))]
    public int? Lot { get; init; }

    [CommandOption("--confidence <PERCENT>")]
    [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Confidence))]
    public double Confidence { get; init; } = 95;

    /// <summary>Confidence as a share.</summary>
    public double Sure => Options.Number(AcceptanceFields.Confidence, Confidence) / 100;

    /// <summary>Pieces in the batch; null where not stated.</summary>
    public int? Pieces => Options.OptionalWhole(AcceptanceFields.Lot, Lot);
}

/// <summary>What a batch may be judged with where its pieces are counted.</summary>
internal abstract class CountingSettings : JudgeSettings
{
    [CommandOption("--must-pass <PERCENT>")]
    [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.MustPass))]
    public double? MustPass { get; init; }

    [CommandOption("--aql <PERCENT>")]
    [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Aql), Note = "in place of a share that must pass")]
    public double? Aql { get; init; }

    [CommandOption("--rulebook <FILE|NAME>")]
    [Description(
        "Code of practice whose AQL for the timber is taken where none is given, and compared with the share that must pass"
    )]
    public string? Rulebook { get; init; }

    [CommandOption("--species <NAME>")]
    [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.Species), Note = "with a rulebook")]
    public string? Species { get; init; }

    [CommandOption("--form <FORM>")]
    [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.Form), Note = "with a rulebook")]
    public string? Form { get; init; }

    [CommandOption("--level <LEVEL>")]
    [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Level))]
    public string? Level { get; init; }

    [CommandOption("--severity <SEVERITY>")]
    [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Severity))]
    public string? Severity { get; init; }

    [CommandOption("--wanted <PERCENT>")]
    [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Wanted))]
    public double? Wanted { get; init; }

    [CommandOption("--retention <KG_PER_M3>")]
    [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Retention))]
    public double? Retention { get; init; }

    [CommandOption("--assay <VALUE>")]
    [Description("Composite assay, kg/m³, such as \"14.2 ± 0.4 (k=2)\" or \"< 0.5\"; may be given more than once")]
    public string[] Assays { get; init; } = [];

    /// <summary>What the batch is judged by.</summary>
    /// <param name="facts">The standard's tables.</param>
    /// <param name="cut">Pieces cut.</param>
    /// <param name="source">What says how many were cut, for messages.</param>
    public CountingRequest Request(FactLibrary facts, int cut, string source) =>
        new CountingQuestion
        {
            Lot = Pieces,
            Rule = Rule(facts),
            Assays = [.. Assays.Select(Assay)],
            RequiredKgPerM3 = Options.OptionalNumber(TreatmentFields.Retention, Retention),
            Confidence = Sure,
            WantedShare = Options.OptionalNumber(AcceptanceFields.Wanted, Wanted) / 100,
            CutSource = source,
        }.Of(cut, facts);

    private static Assay Assay(string text) =>
        WrittenValue.ReadAssay(text) ?? throw Options.Refused("--assay", text, WrittenValue.ExpectedAssay);

    private AskedRule Rule(FactLibrary facts)
    {
        switch ((MustPass, Aql))
        {
            case ({ } percent, null):
                Options.RefuseGiven(
                    $"no such option without {AcceptanceFields.Aql.Option}, whose plan it belongs to",
                    (AcceptanceFields.Level, Level),
                    (AcceptanceFields.Severity, Severity)
                );
                return new AskedShare(
                    Options.Number(AcceptanceFields.MustPass, percent) / 100,
                    Rulebook is { } beside ? CodeAql.Known(beside, Options.Timber(this, facts), facts) : null
                );
            case (null, { } aql):
                return new AskedPlan(
                    Options.Number(AcceptanceFields.Aql, aql),
                    Options.Word(
                        AcceptanceFields.Level,
                        Level ?? AcceptanceFields.Level.Default,
                        InspectionKeys.ReadLevel
                    ),
                    Options.Word(
                        AcceptanceFields.Severity,
                        Severity ?? AcceptanceFields.Severity.Default,
                        InspectionKeys.ReadSeverity
                    )
                );
            case (null, null) when Rulebook is { } rulebook:
                return new AskedCode(CodeAql.Find(rulebook, Options.Timber(this, facts), facts));
            default:
                throw Options.Refused(
                    $"{AcceptanceFields.MustPass.Option}, {AcceptanceFields.Aql.Option}",
                    Aql is null ? "neither" : "both",
                    "one of the two: they are different rules"
                );
        }
    }
}
