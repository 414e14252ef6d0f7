using Alburnum.Acceptance;
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
    /// <summary>
    /// Depth that the pieces are judged against: that which decides of code and contract. Of timber that the code does not permit, the contract's is judged all the same,
    /// beside that. Null where there is none.
    /// </summary>
    public DepthRule? Penetration =>
        ContractClass.Deciding(Answer, Contract) ?? (Contract as ContractDemand)?.Penetration;

    /// <summary>How many of the pieces cut may fail, with the code's own AQL beside it where the code demands anything.</summary>
    public AcceptanceRule Acceptance =>
        Enquired.Acceptance is ShareMustPass { TakenFrom: null } share && Answer.InAnyEvent is { Trace: var trace }
            ? share with
            {
                CodesAqlPercent = trace.AqlPercent,
            }
            : Enquired.Acceptance;

    /// <summary>Facts of the enquiry that do not go together.</summary>
    public IReadOnlyList<Discrepancy> Discrepancies { get; init; } = [];

    /// <summary>Retention that the assays are judged against, kg/m³: the greatest of those asked for; null where none is known, or nothing is required.</summary>
    public double? RequiredKgPerM3 => Retentions.Count > 0 ? Retentions.Max(each => each.KgPerM3) : null;

    /// <summary>Each retention asked for of which a figure is known: the code's, that of the contract's class, and the contract's own.</summary>
    public IReadOnlyList<RetentionDemand> Retentions =>
        [
            .. Of(RetentionDemandedBy.Code, name: null, CodeKgPerM3, CodesZone),
            .. Of(RetentionDemandedBy.Class, Contract?.Name, ClassKgPerM3, ClassZone),
            .. Of(
                RetentionDemandedBy.Contract,
                name: null,
                Enquired.StatedRetentionKgPerM3,
                Contract is ContractDemand ? ClassZone : CodesZone
            ),
        ];

    /// <summary>Zone in which the code asks for its retention; null where it asks for none, or the zone is not known.</summary>
    public AnalyticalZone? CodesZone => Zone(Answer);

    /// <summary>Weakest standing of that zone, in whichever of the answers still possible; null where it is not known.</summary>
    public Standing? CodesZoneStanding =>
        CodesZone is null ? null : Asking(Answer).Max(required => required.Trace.ZoneStanding);

    private AnalyticalZone? ClassZone => (Contract as ContractDemand)?.Answer.Requirement.Zone;

    /// <summary>Whether what is enough for the code is enough for the contract's class: it asks for no more, in a zone within the code's, and less goes deep than stays outside.</summary>
    internal bool IsClassWithinCode =>
        Contract is ContractDemand { Stricter: StricterDemand.Code }
        && CodeKgPerM3 >= ClassKgPerM3
        && (ClassZone, CodesZone) is ({ } ofClass, { } ofCode)
        && ofClass.IsWithin(ofCode);

    // Where the depth is open or not read, the retention may be settled all the same.
    private double? CodeKgPerM3 =>
        Answer switch
        {
            { InAnyEvent.Requirement: var code } => KgPerM3(code.RequiredRetention, CodesZone),
            NotCovered { Reason: DependsOn or CellNotRead, Trace.RequiredRetention: var settled } => KgPerM3(
                settled,
                CodesZone
            ),
            _ => null,
        };

    /// <summary>Retention of the class that the contract names, kg/m³; null where it gives no demand, or no figure of it is known.</summary>
    internal double? ClassKgPerM3 =>
        Contract is ContractDemand { Answer.Requirement: var contract }
            ? KgPerM3(contract.RequiredRetention, contract.Zone)
            : null;

    // Where the answer is open, the zone is known only where every answer possible takes the same one: timber that is not permitted has none.
    private static AnalyticalZone? Zone(Answer answer)
    {
        if (answer is not NotCovered { Possible: var possible })
            return (answer as Required)?.Requirement.Zone;
        List<AnalyticalZone?> zones =
        [
            .. possible
                .Select(each => each.Answer)
                .Where(each => each is not NotPermitted)
                .Select(Zone)
                .DistinctBy(zone => zone?.Place),
        ];
        return zones is [var only] ? only : null;
    }

    private static IEnumerable<Required> Asking(Answer answer) =>
        answer switch
        {
            Required required => [required],
            NotCovered { Possible: var possible } => possible.SelectMany(each => Asking(each.Answer)),
            _ => [],
        };

    private static IEnumerable<RetentionDemand> Of(
        RetentionDemandedBy by,
        string? name,
        double? kgPerM3,
        AnalyticalZone? zone
    ) => kgPerM3 is { } amount ? [new(by, name, amount) { Zone = zone }] : [];

    // What is required on a face is spread over the zone for which it is required; over the one assayed only where that is not known.
    private double? KgPerM3(PreservativeAmount? required, AnalyticalZone? zone) =>
        required switch
        {
            { Unit: AmountUnit.KgPerM3 } amount => amount.Value,
            // Grams over a square metre and a millimetre are kilograms in a cubic metre.
            { } onFace => onFace.Value / (zone?.ThicknessMm ?? Enquired.AssayBasis.ZoneDepthMm),
            null => null,
        };

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

/// <summary>Who asks for a retention.</summary>
public enum RetentionDemandedBy
{
    /// <summary>The code of practice.</summary>
    Code,

    /// <summary>The class that the contract names.</summary>
    Class,

    /// <summary>The contract itself, by a figure of its own.</summary>
    Contract,
}

/// <summary>A retention that is asked for.</summary>
/// <param name="By">Who asks for it.</param>
/// <param name="Class">Name of the class; null where none asks for it.</param>
/// <param name="KgPerM3">How much, kg/m³. Above 0.</param>
public sealed record RetentionDemand(RetentionDemandedBy By, string? Class, double KgPerM3)
{
    /// <summary>Zone in which it is asked for: the code's, or that of the contract's class, which a figure of the contract's own follows; null where it is not known.</summary>
    public AnalyticalZone? Zone { get; init; }
}
