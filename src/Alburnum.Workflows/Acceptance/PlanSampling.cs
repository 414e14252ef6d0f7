using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Acceptance.Variables;
using Alburnum.Records.Facts;

namespace Alburnum.Workflows.Acceptance;

/// <summary>Plans what to cut from a lot, and which pieces.</summary>
public static class PlanSampling
{
    private const int PiecesMax = 20_000;

    /// <summary>Plans a sample.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="tables">The standard's tables.</param>
    /// <exception cref="InputRefusedException">The tables have no plan for the lot or the AQL, the lot is smaller than the sample, or the share cannot be shown.</exception>
    public static PlannedSample Plan(SamplingRequest request, AttributeTables tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        if (request is SampleForRisks risks)
            Examine(risks);
        return request switch
        {
            SampleByTables indexed => Indexed(indexed, tables),
            SampleByShare share => Share(share, tables),
            SampleForRisks { Plan: RiskPlan.Smallest } smallest => Single(
                smallest,
                PlanDesign.Single(smallest.Risks, smallest.Lot)
            ),
            SampleForRisks { Plan: RiskPlan.Double } two => Staged(two, PlanDesign.Double(two.Risks, two.Lot)),
            SampleForRisks { Plan: RiskPlan.Sequential } wald => Staged(
                wald,
                PlanDesign.Sequential(wald.Risks, wald.Lot)
            ),
            SampleForRisks variables => Variables(variables),
            SampleToShow showing => Showing(showing),
            SampleIsolated isolated => Isolated(isolated, tables),
            _ => throw new ArgumentOutOfRangeException(nameof(request), request, "Not a request."),
        };
    }

    // What cannot be planned is refused before it is sought: a plan by counts of so many pieces would be sought for hours.
    private static void Examine(SampleForRisks request)
    {
        if (request.Plan == RiskPlan.Variables && request.Risks.RejectableShare > 0.5)
            throw AcceptanceFields.Reject.Refused(
                file: null,
                InputProblem.Number(100 * request.Risks.RejectableShare),
                "at most 50 % for a plan by measured values"
            );
        if (
            request.Plan != RiskPlan.Variables
            && (request.Lot ?? int.MaxValue) > PiecesMax
            && request.Risks.ApproximatePieces > PiecesMax
        )
            throw TooClose(request.Risks);
    }

    private static InputRefusedException TooClose(RiskPoints risks) =>
        AcceptanceFields.Reject.Refused(
            file: null,
            InputProblem.Number(100 * risks.RejectableShare),
            $"a share farther from {InputProblem.Number(100 * risks.AcceptableShare)} %: to tell the two apart takes more than {PiecesMax} pieces"
        );

    /// <summary>The plan indexed at what a share lets fail; null where the tables have no such AQL or lot.</summary>
    private static IndexedPlan? OtherReading(SampleByShare request, AttributeTables tables)
    {
        var aql = Math.Round((1 - request.Rule.Share) * 100, 6);
        return request.Lot is { } lot && lot >= tables.LotSizes[0].From && tables.AqlsPercent.Contains(aql)
            ? tables.Find(lot, request.Level, aql)
            : null;
    }

    private static PlannedSample Indexed(SampleByTables request, AttributeTables tables)
    {
        var found = TablesFit.Plan(tables, request.Pieces, request.Level, request.AqlPercent, request.Severity);
        var (plan, lot) = (found.Plan, new FiniteLot(found.LotSize));
        List<PlanBehaviour> behaviours =
        [
            PlanBehaviour.Of(PlanReading.IndexedOnThisLot, plan, lot, found.LotSize),
            PlanBehaviour.Of(PlanReading.IndexedOnStandardSupply, plan, found.StandardSupply, found.LotSize),
        ];
        if (SameFigure(found) is { } share)
            behaviours.Add(
                PlanBehaviour.Of(
                    PlanReading.ShareOnThisLot,
                    new SingleSamplingPlan(plan.SampleSize, share.MayFail(plan.SampleSize)),
                    lot,
                    found.LotSize
                )
            );
        return Single(request, plan) with { Indexed = found, Behaviours = behaviours };
    }

    /// <summary>The share that must pass where the AQL's figure is read so; null for an AQL of 100 or more.</summary>
    public static ShareMustPass? SameFigure(IndexedPlan indexed)
    {
        ArgumentNullException.ThrowIfNull(indexed);
        return indexed.AqlPercent < 100 ? new(1 - indexed.AqlPercent / 100) : null;
    }

    private static PlannedSample Share(SampleByShare request, AttributeTables tables)
    {
        var sample = Single(request, new(request.Cut, request.Rule.MayFail(request.Cut)));
        return OtherReading(request, tables) is { } indexed
            ? sample with
            {
                Indexed = indexed,
                Behaviours =
                [
                    sample.Behaviours[0] with
                    {
                        Reading = PlanReading.ShareOnThisLot,
                    },
                    PlanBehaviour.Of(PlanReading.IndexedOnThisLot, indexed.Plan, SupplyOf(request.Lot), request.Lot),
                ],
            }
            : sample;
    }

    private static PlannedSample Variables(SampleForRisks request)
    {
        var plan = VariablesPlan.For(request.Risks) ?? throw TooClose(request.Risks);
        if (plan.SampleSize > request.Lot)
            throw AcceptanceFields.Lot.Refused(
                file: null,
                $"{request.Lot}",
                $"at least the {plan.SampleSize} pieces that this plan measures"
            );
        return new()
        {
            Request = request,
            Plan = plan,
            Positions = Positions(request, plan.SampleSize),
            Behaviours = [PlanBehaviour.Of(PlanReading.Itself, plan, new SteadyProcess(), null)],
        };
    }

    private static PlannedSample Showing(SampleToShow request) =>
        PlanDesign.PiecesToShow(request.Share, request.Confidence, request.Failures, request.Lot) is { } pieces
            ? Single(request, new(pieces, request.Failures))
            : throw AcceptanceFields.Failures.Refused(
                file: null,
                $"{request.Failures}",
                $"fewer: even the whole lot cannot show that {InputProblem.Number(100 * request.Share)} % conform with so many failures"
            );

    private static PlannedSample Isolated(SampleIsolated request, AttributeTables tables)
    {
        var plan =
            PlanDesign.Limiting(request.LimitingShare, request.Risk, request.Failures, request.Pieces)
            ?? throw AcceptanceFields.Failures.Refused(
                file: null,
                $"{request.Failures}",
                $"fewer than the {Math.Ceiling(request.LimitingShare * request.Pieces - 1e-9)} failing pieces of a lot at its limiting quality"
            );
        var sample = Single(request, plan);
        var lot = new FiniteLot(request.Pieces);
        return ByTables(request, lot, tables) is { } indexed
            ? sample with
            {
                Indexed = indexed,
                Behaviours =
                [
                    .. sample.Behaviours,
                    PlanBehaviour.Of(PlanReading.IndexedOnThisLot, indexed.Plan, lot, request.Pieces),
                ],
            }
            : sample;
    }

    /// <summary>The plan of the tables with the greatest AQL that accepts this lot, at its limiting quality, no more often; null where none does.</summary>
    private static IndexedPlan? ByTables(SampleIsolated request, FiniteLot lot, AttributeTables tables) =>
        request.Pieces < tables.LotSizes[0].From
            ? null
            : tables
                .AqlsPercent.Where(aql => aql <= IndexedPlan.GreatestPercentAql)
                .Reverse()
                .Select(aql => tables.Find(request.Pieces, request.Level, aql))
                .FirstOrDefault(found =>
                    found.Plan.Acceptance(Math.Ceiling(request.LimitingShare * lot.Pieces - 1e-9) / lot.Pieces, lot)
                    <= request.Risk
                );

    private static PlannedSample Single(SamplingRequest request, SingleSamplingPlan plan) =>
        new()
        {
            Request = request,
            Plan = plan,
            Positions = Positions(request, plan.SampleSize),
            Behaviours = [PlanBehaviour.Of(PlanReading.Itself, plan, SupplyOf(request.Lot), request.Lot)],
            Outgoing = OperatingCharacteristic.OutgoingLimit(plan, request.Lot),
        };

    private static PlannedSample Staged(SampleForRisks request, SamplingPlan plan) =>
        new()
        {
            Request = request,
            Plan = plan,
            Positions = request.Lot is { } pieces
                ? RandomPositions.DrawInOrder(pieces, plan.MostPiecesCut, request.Seed)
                : [],
            Behaviours = [PlanBehaviour.Of(PlanReading.Itself, plan, SupplyOf(request.Lot), request.Lot)],
            MeanPiecesCut = plan.MeanPiecesCut(request.Risks.AcceptableShare, SupplyOf(request.Lot)),
            SinglePlanSize = PlanDesign.Single(request.Risks, request.Lot).SampleSize,
        };

    private static IReadOnlyList<int> Positions(SamplingRequest request, int pieces) =>
        request.Lot is { } lot ? RandomPositions.Draw(lot, pieces, request.Seed) : [];

    private static Supply SupplyOf(int? lot) => lot is { } pieces ? new FiniteLot(pieces) : new SteadyProcess();
}
