using Alburnum.Facts;

namespace Alburnum.Records.Facts;

/// <summary>What can be said of a lot, of a plan for it and of what it must reach, beside the depth and the retention that its treatment must reach.</summary>
public static class AcceptanceFields
{
    /// <summary>Pieces in the lot or batch.</summary>
    public static AskedField Lot { get; } = Number("lot", "Pieces in the lot or batch", Ranges.Pieces);

    /// <summary>Pieces cut.</summary>
    public static AskedField Cut { get; } = Number("cut", "Pieces cut", Ranges.Pieces);

    /// <summary>Pieces that failed.</summary>
    public static AskedField Failures { get; } = Number("failures", "Pieces that failed", Ranges.Failures);

    /// <summary>Share of the pieces cut that must pass.</summary>
    public static AskedField MustPass { get; } =
        Number("mustPass", "Share of the pieces cut that must pass", Ranges.MustPassPercent);

    /// <summary>AQL that indexes a plan.</summary>
    public static AskedField Aql { get; } = Number("aql", "AQL that indexes the plan", Ranges.Aql);

    /// <summary>Inspection level of an indexed plan.</summary>
    public static AskedField Level { get; } =
        Word("level", "Inspection level of the indexed plan", "S-1, S-2, S-3, S-4, I, II or III", "II");

    /// <summary>Severity of an indexed plan.</summary>
    public static AskedField Severity { get; } =
        Word("severity", "Severity of inspection", "normal, tightened or reduced", "normal");

    /// <summary>Failing share to accept.</summary>
    public static AskedField Accept { get; } = Number("accept", "Failing share to accept", Ranges.FailingPercent);

    /// <summary>Risk of rejecting a lot at the share to accept.</summary>
    public static AskedField ProducerRisk { get; } =
        Number("producerRisk", "Risk of rejecting a lot at the share to accept", Ranges.RiskPercent, "5");

    /// <summary>Failing share to reject.</summary>
    public static AskedField Reject { get; } = Number("reject", "Failing share to reject", Ranges.FailingPercent);

    /// <summary>Limiting quality of an isolated lot.</summary>
    public static AskedField Limiting { get; } =
        Number(
            "limiting",
            "Failing share that an isolated lot is hardly ever to be accepted with",
            Ranges.FailingPercent
        );

    /// <summary>Risk of accepting a lot at the share to reject.</summary>
    public static AskedField ConsumerRisk { get; } =
        Number("consumerRisk", "Risk of accepting a lot at the share to reject", Ranges.RiskPercent, "10");

    /// <summary>Share of all pieces that is to conform.</summary>
    public static AskedField Conforming { get; } =
        Number("conforming", "Share of all pieces that must conform", Ranges.ConformingPercent);

    /// <summary>Share of the lot that is wanted to conform.</summary>
    public static AskedField Wanted { get; } =
        Number(
            "wanted",
            "Share of the lot that is wanted to conform",
            Ranges.ConformingPercent,
            "the share that must pass, or 100 % less the AQL"
        );

    /// <summary>One-sided confidence.</summary>
    public static AskedField Confidence { get; } =
        Number("confidence", "One-sided confidence in the conforming share", Ranges.ConfidencePercent, "95");

    private static AskedField Number(string key, string help, NumberRange range, string usual = "") =>
        new()
        {
            Key = key,
            Help = help,
            Examples = "",
            Range = range,
            Default = usual,
        };

    private static AskedField Word(string key, string help, string words, string usual) =>
        new()
        {
            Key = key,
            Help = help,
            Examples = words,
            Expected = words,
            Default = usual,
        };
}
