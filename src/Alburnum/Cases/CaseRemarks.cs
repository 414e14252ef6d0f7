using Alburnum.Impregnation.Prediction;
using Alburnum.Timber;

namespace Alburnum.Cases;

/// <summary>Warnings about a case that asks what its timber should reach.</summary>
public abstract record CaseRemark
{
    private protected CaseRemark() { }
}

/// <summary>Nothing is predicted: the code demands no depth, and none is given.</summary>
public sealed record NoDepthToReach : CaseRemark;

/// <summary>Nothing is predicted: how permeable the wood is, is not known.</summary>
/// <param name="Species">The timber.</param>
/// <param name="IsHeartwood">Whether that is not known of its heartwood, or of its sapwood.</param>
public sealed record PermeabilityNotKnown(Species Species, bool IsHeartwood) : CaseRemark;

/// <summary>Nothing is predicted: the density of the timber, and so its voids, are not known.</summary>
/// <param name="Species">The timber.</param>
public sealed record DensityNotKnown(Species Species) : CaseRemark;

/// <summary>Nothing is predicted: where the heartwood lies is neither written nor known of the timber.</summary>
/// <param name="Species">The timber.</param>
public sealed record SapwoodNotKnown(Species Species) : CaseRemark;

/// <summary>The mean depth measured lies outside the range that nine pieces of ten were expected to have.</summary>
/// <param name="MeasuredMm">Mean depth over the pieces measured, mm.</param>
/// <param name="PredictedMm">Mean depth of a piece as it was predicted, mm.</param>
public sealed record MeasuredOutsidePrediction(Estimate MeasuredMm, Spread PredictedMm) : CaseRemark;
