using Alburnum.Acceptance;
using Alburnum.Assaying;
using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Prediction;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Cases;

/// <summary>What a reader of a case should know beside its verdict: facts that do not go together, and what was expected and not met.</summary>
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

/// <summary>Nobody should work to a plan of the charge; what was measured is judged all the same.</summary>
/// <param name="Shortfall">Why not.</param>
public sealed record ChargeNotPlanned(ChargeShortfall Shortfall) : CaseRemark;

/// <summary>Nothing is predicted: the density of the timber, and so its voids, are not known.</summary>
/// <param name="Species">The timber.</param>
public sealed record DensityNotKnown(Species Species) : CaseRemark;

/// <summary>Nothing is predicted: where the heartwood lies is neither written nor known of the timber.</summary>
/// <param name="Species">The timber.</param>
public sealed record SapwoodNotKnown(Species Species) : CaseRemark;

/// <summary>Nothing is predicted: the preservative does not go in as a thin solution in water.</summary>
/// <param name="Preservative">The preservative; its carrier is known.</param>
public sealed record NotInWater(Preservative Preservative) : CaseRemark;

/// <summary>The mean depth measured lies outside the range that nine pieces of ten were expected to have.</summary>
/// <param name="MeasuredMm">Mean depth over the pieces measured, mm.</param>
/// <param name="PredictedMm">Mean depth of a piece as it was predicted, mm.</param>
public sealed record MeasuredOutsidePrediction(Estimate MeasuredMm, Spread PredictedMm) : CaseRemark;

/// <summary>Two facts of the enquiry do not go together.</summary>
/// <param name="Discrepancy">Which, and how.</param>
public sealed record EnquiryAtOdds(Discrepancy Discrepancy) : CaseRemark;

/// <summary>The sections were cut before the timber was treated.</summary>
/// <param name="SampledOn">Day on which they were cut.</param>
/// <param name="TreatedOn">Day of the treatment.</param>
public sealed record SampledBeforeTreated(DateOnly SampledOn, DateOnly TreatedOn) : CaseRemark;

/// <summary>The moisture stated as that before treatment was measured after it.</summary>
/// <param name="MeasuredOn">Day on which it was measured.</param>
/// <param name="TreatedOn">Day of the treatment.</param>
public sealed record MoistureMeasuredLater(DateOnly MeasuredOn, DateOnly TreatedOn) : CaseRemark;

/// <summary>A sapwood depth is stated of a timber that shows no clear border between sapwood and heartwood.</summary>
/// <param name="Species">The timber.</param>
/// <param name="StatedMm">Sapwood depth as stated, mm.</param>
public sealed record BorderNotDistinct(Species Species, double StatedMm) : CaseRemark;

/// <summary>A sapwood depth is stated for where none was seen.</summary>
/// <param name="DepthMm">The depth, with the standard uncertainty that is carried, mm.</param>
/// <param name="IsUncertaintyStated">False where nobody stated one: the depth is then taken to be read to the millimetre.</param>
/// <param name="MovesDemand">Whether what is required moves with that depth, so that its uncertainty counts.</param>
public sealed record SapwoodAsStated(Estimate DepthMm, bool IsUncertaintyStated, bool MovesDemand) : CaseRemark;

/// <summary>The border of the sapwood was read with a ruler, and what is required moves with it.</summary>
/// <param name="UMm">The greatest standard uncertainty that is carried, mm: that of the depth read beside it.</param>
public sealed record SapwoodByRuler(double UMm) : CaseRemark;

/// <summary>The parts of a product do not stand to each other as its formula says, in one sample.</summary>
/// <param name="Sample">Number of the sample.</param>
/// <param name="Product">The product that they count as.</param>
/// <param name="Parts">The parts that do not. At least one.</param>
public sealed record SampleOffFormula(string Sample, ProductFormula Product, IReadOnlyList<PartOffFormula> Parts)
    : CaseRemark;

/// <summary>Parts of a product were not analysed: the retention of some samples takes them to be there as the formula has them.</summary>
/// <param name="Samples">Numbers of the samples.</param>
/// <param name="Parts">Names of the parts. At least one.</param>
public sealed record SamplesInPart(IReadOnlyList<string> Samples, IReadOnlyList<string> Parts) : CaseRemark;

/// <summary>The retention counts a product that is another kind of preservative than the one stated.</summary>
/// <param name="Stated">The preservative that is stated.</param>
/// <param name="Counted">The product that the retention counts.</param>
public sealed record ProductOfAnotherKind(Preservative Stated, ProductFormula Counted) : CaseRemark;

/// <summary>An assay is of a zone for which no retention is required: it is not counted.</summary>
/// <param name="Assay">The assay; it says which zone was cut.</param>
public sealed record OtherZoneAssayed(Assay Assay) : CaseRemark;

/// <summary>Assays that do not say which zone was cut are held against retentions that are asked for in more than one.</summary>
public sealed record ZoneLeftOpen : CaseRemark;

/// <summary>Pieces that are not said to be incised show a front like that at incisions.</summary>
/// <param name="Pieces">Names of the pieces.</param>
public sealed record IncisionsNotStated(IReadOnlyList<string> Pieces) : CaseRemark;

/// <summary>Pieces that are said to be incised show no front like that at incisions.</summary>
/// <param name="Pieces">Names of the pieces.</param>
public sealed record IncisionsNotSeen(IReadOnlyList<string> Pieces) : CaseRemark;

/// <summary>Depths rest on nominal sizes: no scale lies in the picture, and no size was measured.</summary>
/// <param name="Pieces">How many pieces.</param>
public sealed record SizesOnTrust(int Pieces) : CaseRemark;
