using Alburnum.Timber;

namespace Alburnum.Penetration;

/// <summary>Depth of penetration along one face, read at even steps, or at places taken by hand. All lists have the same length.</summary>
/// <param name="Number">Face number from 1, clockwise; a round section has one face.</param>
/// <param name="StepMm">Distance between positions along the face, mm; the mean one where they were taken by hand, 0 where there is only one.</param>
/// <param name="PositionsMm">Distance from the start of the face, mm, rising.</param>
/// <param name="DepthMm">Depth along the inward normal to the first untreated wood, mm; 0 where none.</param>
/// <param name="StandardUncertaintyMm">Standard uncertainty of each depth, mm.</param>
/// <param name="Excluded">True where the position is left out (knot, split, corner, glare); its depth is not used.</param>
/// <param name="SapwoodDepthMm">Depth at which heartwood begins, mm; 0 where heartwood reaches the face; null where not known.</param>
public sealed record FaceProfile(
    int Number,
    double StepMm,
    IReadOnlyList<double> PositionsMm,
    IReadOnlyList<double> DepthMm,
    IReadOnlyList<double> StandardUncertaintyMm,
    IReadOnlyList<bool> Excluded,
    IReadOnlyList<double?> SapwoodDepthMm
)
{
    /// <summary>Length of the face, mm; what its positions stand for at their steps, unless said otherwise.</summary>
    public double LengthMm
    {
        get => field > 0 ? field : StepMm * PositionsMm.Count;
        init;
    }

    /// <summary>Standard uncertainty of the sapwood's depth, mm, the greatest on the face; 0 where none is known anywhere on it.</summary>
    public double SapwoodUncertaintyMm { get; init; }

    /// <summary>
    /// Depth, mm, down to which the wood is treated at least, where no front is seen because it is treated right through to what another face let in; null
    /// elsewhere. As long as the other lists, or empty where there is no such position.
    /// </summary>
    public IReadOnlyList<double?> AtLeastMm { get; init; } = [];

    /// <summary>What a demand on the depth at a position is held against: the depth read, or the depth that is reached at least; null where it is left out.</summary>
    public double? KnownMm(int position) =>
        !Excluded[position] ? DepthMm[position]
        : AtLeastMm.Count > 0 ? AtLeastMm[position]
        : null;
}

/// <summary>Depth of penetration around the whole section of one piece.</summary>
/// <param name="Section">Nominal section.</param>
/// <param name="Faces">Four faces for a sawn section, one for a round one.</param>
/// <param name="Statistics">Statistics over all positions at which a front was read; over those treated right through where no front was read anywhere.</param>
/// <param name="TreatedShare">Treated share of the section's area, 0 to 1.</param>
/// <param name="SapwoodTreatedShare">Treated share of the sapwood, 0 to 1; null where the sapwood is not known.</param>
public sealed record DepthProfile(
    Section Section,
    IReadOnlyList<FaceProfile> Faces,
    DepthStatistics Statistics,
    Estimate TreatedShare,
    Estimate? SapwoodTreatedShare
);

/// <summary>Depth statistics over a section, each with its standard uncertainty, mm.</summary>
/// <param name="MinimumMm">Least depth.</param>
/// <param name="FifthPercentileMm">Depth that 95 % of the positions reach.</param>
/// <param name="MedianMm">Median depth.</param>
/// <param name="MeanMm">Mean depth.</param>
/// <param name="MaximumMm">Greatest depth.</param>
public sealed record DepthStatistics(
    Estimate MinimumMm,
    Estimate FifthPercentileMm,
    Estimate MedianMm,
    Estimate MeanMm,
    Estimate MaximumMm
);
