using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Reading;

/// <summary>What is known of the heartwood on one photograph.</summary>
public abstract record HeartwoodReading
{
    private protected HeartwoodReading() { }
}

/// <summary>Heartwood as the user showed it.</summary>
/// <param name="BorderUncertaintyMm">Standard uncertainty of the border at a place of it, mm.</param>
public sealed record ShownHeartwood(double BorderUncertaintyMm) : HeartwoodReading;

/// <summary>Heartwood detected on untreated wood.</summary>
/// <param name="Sign">What gave it away.</param>
/// <param name="BorderUncertaintyMm">Standard uncertainty of the border at a place of it, mm.</param>
/// <param name="BorderPx">The border as lines on the section.</param>
/// <param name="PithPx">The middle of the heartwood's circle, in upright pixels; may lie outside the photograph.</param>
/// <param name="RadiusMm">Its radius, mm.</param>
public sealed record DetectedHeartwood(
    HeartwoodSign Sign,
    double BorderUncertaintyMm,
    IReadOnlyList<IReadOnlyList<PointPx>> BorderPx,
    PointPx PithPx,
    double RadiusMm
) : HeartwoodReading;

/// <summary>Heartwood was not determined.</summary>
/// <param name="Fault">What stands in the way.</param>
/// <param name="IsMissed">Whether it was shown or sprayed, so that the user counts on it.</param>
public sealed record UnknownHeartwood(HeartwoodFault Fault, bool IsMissed) : HeartwoodReading;

/// <summary>What gives heartwood away.</summary>
public enum HeartwoodSign
{
    /// <summary>Its own colour.</summary>
    Colour,

    /// <summary>The colour that a reagent gives it.</summary>
    Reagent,
}

/// <summary>Why heartwood was not determined.</summary>
public enum HeartwoodFault
{
    /// <summary>The points shown cannot be a border.</summary>
    NoBorderShown,

    /// <summary>Too little untreated wood is in sight.</summary>
    TooLittleUntreated,

    /// <summary>No growth rings are seen that show where the pith lies.</summary>
    NoRings,

    /// <summary>Untreated wood has no second colour about the pith.</summary>
    OneColour,

    /// <summary>Too little of a border is in sight.</summary>
    TooShort,

    /// <summary>The change of colour is no clear arc about the pith.</summary>
    NoArc,
}
