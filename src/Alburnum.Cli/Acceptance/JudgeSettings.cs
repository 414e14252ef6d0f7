using System.ComponentModel;
using Alburnum.Acceptance;
using Alburnum.Facts;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Workflows.Acceptance;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Acceptance;

/// <summary>What every batch may be judged with.</summary>
internal abstract class JudgeSettings : CommandSettings
{
    [CommandOption("--lot <PIECES>")]
    [Description("Pieces in the batch")]
    public int? Lot { get; init; }

    [CommandOption("--confidence <PERCENT>")]
    [Description("Confidence of the bound on the conforming share; default: 95")]
    public double Confidence { get; init; } = 95;

    [CommandOption("--json")]
    [Description("Print the verdict as JSON")]
    public bool Json { get; init; }

    /// <summary>Confidence as a share.</summary>
    public double Sure => Options.Number("--confidence", Confidence, Ranges.ConfidencePercent) / 100;

    /// <summary>Pieces in the batch; null where not stated.</summary>
    public int? Pieces => Options.OptionalWhole("--lot", Lot, Ranges.Pieces);

    /// <summary>What a field is called as an option.</summary>
    public static string NameOf(JudgingField field) =>
        field switch
        {
            JudgingField.Lot => "--lot",
            JudgingField.Cut => "--cut",
            JudgingField.MustPass => "--must-pass",
            JudgingField.Aql => "--aql",
            JudgingField.LeastDepth => "--least-depth",
            JudgingField.Required => "--required",
            _ => throw new ArgumentOutOfRangeException(nameof(field), field, "Not a field."),
        };
}

/// <summary>What a batch may be judged with where its pieces are counted.</summary>
internal abstract class CountingSettings : JudgeSettings
{
    [CommandOption("--must-pass <PERCENT>")]
    [Description("Share of the pieces cut that must pass")]
    public double? MustPass { get; init; }

    [CommandOption("--aql <PERCENT>")]
    [Description("Or the plan indexed at this AQL")]
    public double? Aql { get; init; }

    [CommandOption("--level <LEVEL>")]
    [Description("Inspection level of the indexed plan; default: II")]
    public string Level { get; init; } = "II";

    [CommandOption("--severity <SEVERITY>")]
    [Description("normal (default), tightened or reduced")]
    public string Severity { get; init; } = "normal";

    [CommandOption("--required <KG_PER_M3>")]
    [Description("Required retention in the analytical zone, kg/m³")]
    public double? Required { get; init; }

    [CommandOption("--assay <VALUE>")]
    [Description("Composite assay, kg/m³, such as \"14.2 ± 0.4\" or \"< 0.5\"; may be given more than once")]
    public string[] Assays { get; init; } = [];

    /// <summary>What the batch is judged by.</summary>
    /// <param name="facts">The standard's tables.</param>
    /// <param name="cut">Pieces cut.</param>
    /// <param name="source">What says how many were cut, for messages.</param>
    public CountingRequest Request(FactLibrary facts, int cut, string source) =>
        new CountingQuestion
        {
            Lot = Pieces,
            Rule = Rule(),
            Assays = [.. Assays.Select(Assay)],
            RequiredKgPerM3 = Options.OptionalNumber("--required", Required, Ranges.RetentionKgPerM3),
            Confidence = Sure,
            NameOf = field => field == JudgingField.Cut ? source : NameOf(field),
        }.Of(cut, facts);

    private static Assay Assay(string text) =>
        WrittenValue.ReadAssay(text) ?? throw Options.Refused("--assay", text, WrittenValue.ExpectedAssay);

    private AskedRule Rule() =>
        (MustPass, Aql) switch
        {
            ({ } percent, null) => new AskedShare(Options.Number("--must-pass", percent, Ranges.MustPassPercent) / 100),
            (null, { } aql) => new AskedPlan(
                SamplingOptions.Aql(aql),
                SamplingOptions.Level(Level),
                SamplingOptions.Severity(Severity)
            ),
            _ => throw Options.Refused(
                "--must-pass, --aql",
                Aql is null ? "neither" : "both",
                "one of the two: they are different rules"
            ),
        };
}
