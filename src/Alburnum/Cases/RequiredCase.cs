using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Prediction;
using Alburnum.Requirements;

namespace Alburnum.Cases;

/// <summary>A case with what the code of practice demands.</summary>
/// <param name="Enquired">The case as it was put.</param>
/// <param name="Answer">What the rulebook says, with its trace.</param>
public sealed record RequiredCase(EnquiredCase Enquired, Answer Answer)
{
    /// <summary>Facts of the enquiry that do not go together.</summary>
    public IReadOnlyList<Discrepancy> Discrepancies { get; init; } = [];

    /// <summary>Retention that the case asks for, kg/m³: the contract's own, otherwise the rulebook's; null where neither gives one, or nothing is required.</summary>
    public double? RequiredKgPerM3 =>
        Answer is not Required { Requirement: var requirement } ? null
        : Enquired.StatedRetentionKgPerM3 is { } stated ? stated
        : requirement.RequiredRetention is { Unit: AmountUnit.KgPerM3 } amount ? amount.Value
        : null;

    /// <summary>The case with what its timber is expected to reach.</summary>
    /// <param name="prediction">What the schedule is expected to reach; null where the case does not ask.</param>
    /// <param name="charge">The plan of the charge; null where the case names none.</param>
    /// <param name="notPredicted">What is not known that a prediction needs.</param>
    public PredictedCase Predicted(
        QuickPrediction? prediction,
        ChargePlan? charge,
        params IReadOnlyList<CaseRemark> notPredicted
    ) => new(this, prediction, charge, notPredicted);
}
