using Alburnum.Records.Charges;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Impregnation;

/// <summary>Writes the plan and the account of a charge down.</summary>
public static class ChargeMapping
{
    /// <summary>The plan.</summary>
    public static ChargePlanDocument Of(PlannedCharge planned)
    {
        ArgumentNullException.ThrowIfNull(planned);
        var (order, plan) = (planned.Expected.Order, planned.Plan);
        return new()
        {
            Name = order.Name,
            PieceCount = order.Pieces.Sum(pieces => pieces.Count),
            VolumeM3 = order.VolumeM3,
            SurfaceM2 = order.SurfaceM2,
            Schedule = planned.Expected.Schedule.Value.Name,
            ScheduleMinutes = planned.Expected.Schedule.Value.Minutes,
            DryingDays = planned.DryingDays,
            DensityKgPerM3 = plan.Question.DensityKgPerM3,
            RequiredKgPerM3 = plan.Question.RetentionKgPerM3,
            SolutionDensityKgPerM3 = plan.Question.SolutionDensityKgPerM3,
            UptakeLPerM3 = plan.Question.UptakeLPerM3,
            ZoneLPerM3 = plan.Question.ZoneLPerM3,
            SolutionL = plan.SolutionL,
            StrengthPercent = plan.StrengthPercent,
            ProductKg = plan.ConcentrateKg,
            WaterKg = plan.WaterKg,
            WeightBeforeKg = plan.WeightBeforeKg,
            WeightAfterKg = plan.WeightAfterKg,
            CoreShare = planned.Expected.CoreShare,
            Product = [.. planned.Product.Select(ChargeProductDocument.Of)],
            ProductNotes = [ProductWords.Current.Planned, .. Notes(planned.Product)],
            Assumptions =
            [
                .. TreatingWords.Current.Say(planned.Expected.Assumptions),
                .. planned.DryingDays is null ? [] : (string[])[ChargeWords.Current.Diffusion],
            ],
            Cautions =
            [
                .. TreatingWords.Current.TooWet(order.Treatment.MoisturePercent),
                .. order.Pieces.SelectMany(pieces =>
                    TreatingWords.Current.TooDeep(
                        pieces.Section,
                        order.Treatment.ZoneDepthMm ?? order.Treatment.DepthMm
                    )
                ),
                .. ChargeWords.Current.OfPlan(planned),
                .. ChargeWords.Current.Cautions,
            ],
        };
    }

    /// <summary>The account.</summary>
    public static ChargeAccountDocument Of(ReconciledCharge reconciled)
    {
        ArgumentNullException.ThrowIfNull(reconciled);
        var (expected, account) = (reconciled.Expected, reconciled.Account);
        return new()
        {
            Name = expected.Order.Name,
            PieceCount = expected.Order.Pieces.Sum(pieces => pieces.Count),
            VolumeM3 = expected.Order.VolumeM3,
            NetByTankL = account.NetByTankL,
            NetByWeightL = account.NetByWeightL,
            DiscrepancyL = account.DiscrepancyL,
            GrossL = account.GrossL,
            KickbackL = account.KickbackL,
            NetLPerM3 = account.NetLPerM3,
            ExpectedLPerM3 = expected.Question.UptakeLPerM3,
            AsExpected = reconciled.IsAsExpected,
            RetentionKgPerM3 = account.RetentionKgPerM3,
            RetentionBudget =
            [
                .. account.RetentionBudget.Select(part => new UncertainPartDocument(
                    ProductWords.Current.Say(part.Cause),
                    part.KgPerM3
                )),
            ],
            SelectiveShare = account.SelectiveShare,
            Product = [.. reconciled.Product.Select(ChargeProductDocument.Of)],
            ProductNotes =
            [
                .. reconciled.Product.Count > 0
                    ? (string[])[ProductWords.Current.OfExpected(expected.Question.UptakeLPerM3)]
                    : [],
                .. Notes(reconciled.Product),
            ],
            Findings = [.. ChargeWords.Current.Say(account.Findings), .. Beyond(reconciled)],
            Assumptions = TreatingWords.Current.Say(expected.Assumptions),
            Cautions = ChargeWords.Current.Cautions,
        };
    }

    private static IEnumerable<string> Beyond(ReconciledCharge reconciled)
    {
        if (reconciled.MostByWalls is { } most)
            yield return ProductWords.Current.SelectiveBeyond(most);
        if (reconciled.IsBeyondRoom)
            yield return ChargeWords.Current.BeyondRoom(reconciled.Expected.RoomLPerM3);
    }

    private static IEnumerable<string> Notes(IReadOnlyList<ProductInCharge> products) =>
        ProductWords.Current.Notes(
            products.Select(product => product.Basis),
            TreatmentFields.Sorption.Key,
            TreatmentFields.SorptionMost.Key,
            products.Any(product => product.Bands.Count > 0)
        );
}
