using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Prediction;

namespace Alburnum.Cases;

/// <summary>A case with what its timber is expected to reach before anything is measured. Both parts are optional: most cases come with timber that is treated already.</summary>
/// <param name="Required">The case with what is demanded.</param>
/// <param name="Prediction">What the schedule is expected to reach; null where the case does not ask.</param>
/// <param name="Charge">The plan of the charge; null where the case names none.</param>
/// <param name="NotPredicted">What is not known that a prediction needs; empty where nothing is asked, or all is known.</param>
public sealed record PredictedCase(
    RequiredCase Required,
    QuickPrediction? Prediction,
    ChargePlan? Charge,
    IReadOnlyList<CaseRemark> NotPredicted
)
{
    /// <summary>The case as it was put.</summary>
    public EnquiredCase Enquired => Required.Enquired;

    /// <summary>The case with what was measured on each piece cut. A sapwood depth that the technologist states stands wherever none was seen.</summary>
    /// <param name="evidence">What was measured on each piece, one or more.</param>
    public MeasuredCase Measured(IReadOnlyList<PieceEvidence> evidence) =>
        new(
            this,
            Enquired.StatedSapwood is { } depthMm ? [.. evidence.Select(piece => piece.WithSapwood(depthMm))] : evidence
        );
}
