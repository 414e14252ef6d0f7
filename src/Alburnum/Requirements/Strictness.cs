namespace Alburnum.Requirements;

/// <summary>Which of two demands asks for more.</summary>
public static class Strictness
{
    /// <summary>True where one demand surely asks for less than the other; false where it does not, or where that is not certain.</summary>
    public static bool AsksLess(Demand less, Demand more) =>
        (less, more) switch
        {
            (UnknownCell or OutsideScope, _) or (_, UnknownCell or OutsideScope) => false,
            (PenetrationDemand or NoTreatment, Forbidden) or (NoTreatment, PenetrationDemand) => true,
            (PenetrationDemand a, PenetrationDemand b) => DepthOrder.AsksLess(a.Depth, b.Depth),
            (RetentionFactor a, RetentionFactor b) => a.Factor < b.Factor,
            (FixedRetention a, FixedRetention b) => a.Amount.Unit == b.Amount.Unit && a.Amount.Value < b.Amount.Value,
            _ => false,
        };
}
