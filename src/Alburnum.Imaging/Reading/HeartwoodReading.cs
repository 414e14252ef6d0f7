using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Reading;

/// <summary>How the heartwood was told.</summary>
public enum HeartwoodEvidence
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>Shown by the user.</summary>
    Given,

    /// <summary>By its own colour on untreated wood.</summary>
    Colour,

    /// <summary>By the colour that a reagent gives it.</summary>
    Reagent,
}

/// <summary>What is known of the heartwood on one photograph.</summary>
/// <param name="Evidence">How it was told.</param>
/// <param name="BorderUncertaintyMm">Standard uncertainty of the border at a place of it, mm; null where it was not told.</param>
/// <param name="BorderPx">The border as lines on the section, where it was told from colours or a reagent.</param>
/// <param name="PithPx">The middle of the heartwood's circle, in upright pixels; may lie outside the photograph. Null as above.</param>
/// <param name="RadiusMm">Its radius, mm. Null as above.</param>
/// <param name="InWords">A sentence: how it was told, or why not and what to do.</param>
public sealed record HeartwoodReading(
    HeartwoodEvidence Evidence,
    double? BorderUncertaintyMm,
    IReadOnlyList<IReadOnlyList<PointPx>> BorderPx,
    PointPx? PithPx,
    double? RadiusMm,
    string InWords
)
{
    /// <summary>"given", "colour", "reagent" or "not determined".</summary>
    public string EvidenceInWords =>
        Evidence switch
        {
            HeartwoodEvidence.None => "not determined",
            HeartwoodEvidence.Given => "given",
            HeartwoodEvidence.Colour => "colour",
            HeartwoodEvidence.Reagent => "reagent",
            _ => throw new InvalidOperationException($"{Evidence} is no evidence."),
        };
}
