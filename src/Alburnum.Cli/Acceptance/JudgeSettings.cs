using System.ComponentModel;
using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
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
            JudgingField.LeastDepth => "--least-depth",
            JudgingField.Required => "--required",
            _ => throw new ArgumentOutOfRangeException(nameof(field), field, "Not a field."),
        };

    /// <summary>Pieces in the batch; null where not stated.</summary>
    /// <param name="taken">Pieces that came from it.</param>
    /// <param name="how">What was done to them: "cut from it", "measured".</param>
    public int? PiecesBeside(int taken, string how)
    {
        var lot = Options.OptionalWhole("--lot", Lot, Ranges.Pieces);
        return lot < taken
            ? throw Options.Refused("--lot", Options.Digits(lot.Value), $"at least the {taken} pieces that were {how}")
            : lot;
    }
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
    [Description("Composite assay, kg/m³, such as \"14.2 ± 0.4\" or \"< 0.5\"; may be given again")]
    public string[] Assays { get; init; } = [];

    /// <summary>What the batch is judged by.</summary>
    /// <param name="facts">The standard's tables.</param>
    /// <param name="cut">Pieces cut.</param>
    /// <param name="source">What says how many were cut, for messages.</param>
    public CountingRequest Request(FactLibrary facts, int cut, string source)
    {
        var (rule, other) = Rules(facts);
        var lot = PiecesBeside(cut, "cut from it");
        if (rule.PiecesAsked < cut)
            throw Options.Refused(
                source,
                $"{cut} pieces",
                $"at most the {rule.PiecesAsked} that the plan asks for; a plan says nothing about a larger sample"
            );
        return new()
        {
            Lot = lot,
            Rule = rule,
            OtherRule = other,
            Assays = [.. Assays.Select(Assay)],
            RequiredKgPerM3 = Options.OptionalNumber("--required", Required, Ranges.RetentionKgPerM3),
            Confidence = Sure,
        };
    }

    private static Assay Assay(string text) =>
        WrittenValue.ReadAssay(text) ?? throw Options.Refused("--assay", text, WrittenValue.ExpectedAssay);

    /// <summary>The rule to use, and the other reading of the same figure where there is one.</summary>
    private (AcceptanceRule Rule, AcceptanceRule? Other) Rules(FactLibrary facts)
    {
        if (Aql is null == MustPass is null)
            throw Options.Refused(
                "--must-pass, --aql",
                Aql is null ? "neither" : "both",
                "one of the two: they are different rules"
            );
        if (MustPass is { } percent)
            return (new ShareMustPass(Options.Number("--must-pass", percent, Ranges.MustPassPercent) / 100), null);
        var tables = facts.Sampling.Tables;
        var lot = Options.Whole("--lot", Lot, Ranges.Pieces);
        var aql = SamplingOptions.Aql(tables, Aql);
        var found = tables.Find(
            SamplingOptions.Lot(tables, lot),
            SamplingOptions.Level(Level),
            aql,
            SamplingOptions.Severity(Severity)
        );
        return (new IndexedSampling(found), PlanSampling.SameFigure(found));
    }
}
