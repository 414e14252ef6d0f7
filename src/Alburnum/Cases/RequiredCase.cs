using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Prediction;
using Alburnum.Requirements;

namespace Alburnum.Cases;

/// <summary>A case with what the code of practice demands.</summary>
/// <param name="Enquired">The case as it was put.</param>
/// <param name="Answer">What the rulebook says, with its trace.</param>
/// <param name="Contract">What becomes of the class that the contract names; null where none is named, or where the rulebook answers by it.</param>
public sealed record RequiredCase(EnquiredCase Enquired, Answer Answer, ContractClass? Contract)
{
    /// <summary>Depth that the pieces are judged against: the stricter of code and contract, both where neither is; null where the code demands none.</summary>
    public DepthRule? Penetration =>
        (Answer, Contract) switch
        {
            (not Required, _) => null,
            (Required, ContractDemand { Stricter: StricterDemand.Contract } contract) => contract.Penetration,
            (
                Required { Requirement.Penetration: var code },
                ContractDemand { Stricter: StricterDemand.NotComparable } contract
            ) => new AllOf([code, contract.Penetration]),
            (Required { Requirement.Penetration: var code }, _) => code,
        };

    /// <summary>Facts of the enquiry that do not go together.</summary>
    public IReadOnlyList<Discrepancy> Discrepancies { get; init; } = [];

    /// <summary>Retention that the case asks for, kg/m³: the contract's own, otherwise the rulebook's; null where neither gives one, or nothing is required.</summary>
    /// <remarks>What is required on a face, g/m², is spread over the depth of the zone that is assayed; null where that is not known.</remarks>
    public double? RequiredKgPerM3 =>
        Answer is not Required { Requirement: var requirement } ? null
        : Enquired.StatedRetentionKgPerM3 is { } stated ? stated
        : requirement.RequiredRetention switch
        {
            { Unit: AmountUnit.KgPerM3 } amount => amount.Value,
            // Grams over a square metre and a millimetre are kilograms in a cubic metre.
            { } onFace => onFace.Value / ZoneMm(requirement),
            null => null,
        };

    private double? ZoneMm(Requirement requirement) =>
        Enquired.AssayBasis.ZoneDepthMm
        ?? (requirement.Zone is { DepthMm: { } endMm } zone ? endMm - zone.FromMm : null);

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
