using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;

namespace Alburnum.Workflows.Acceptance;

/// <summary>A plan, the pieces to cut, and how surely it tells lots apart.</summary>
public sealed record PlannedSample
{
    /// <summary>What was asked.</summary>
    public required SamplingRequest Request { get; init; }

    /// <summary>The plan.</summary>
    public required SamplingPlan Plan { get; init; }

    /// <summary>Where the tables gave it, or have one for the same figure: the indexed plan.</summary>
    public IndexedPlan? Indexed { get; init; }

    /// <summary>Pieces to cut, counted through the lot from 1; in the order to cut them where the plan may stop early. Empty without a lot.</summary>
    public required IReadOnlyList<int> Positions { get; init; }

    /// <summary>How each reading of the plan behaves; the plan itself first.</summary>
    public required IReadOnlyList<PlanBehaviour> Behaviours { get; init; }

    /// <summary>Greatest average share of failing pieces that goes out, where rejected lots are sorted piece by piece (AOQL); null where the plan has none.</summary>
    public OutgoingQuality? Outgoing { get; init; }

    /// <summary>Pieces cut on average on lots at the acceptable share; null where the plan never stops early.</summary>
    public double? MeanPiecesCut { get; init; }

    /// <summary>Sample of the single plan for the same risks; null where there is none to compare with.</summary>
    public int? SinglePlanSize { get; init; }
}

/// <summary>As what a plan is read.</summary>
public enum PlanReading
{
    /// <summary>As it is.</summary>
    Itself,

    /// <summary>As the plan indexed at an AQL, on this lot.</summary>
    IndexedOnThisLot,

    /// <summary>As the plan indexed at an AQL, on the supply that its standard means.</summary>
    IndexedOnStandardSupply,

    /// <summary>As the share of the pieces cut that must pass, on this lot.</summary>
    ShareOnThisLot,
}

/// <summary>How a plan behaves.</summary>
/// <param name="Reading">As what the plan is read.</param>
/// <param name="Landmarks">Failing shares accepted with 95, 50 and 10 %.</param>
/// <param name="Curve">The operating characteristic.</param>
public sealed record PlanBehaviour(PlanReading Reading, OcLandmarks Landmarks, IReadOnlyList<OcPoint> Curve)
{
    private const double DrawnUpTo = 0.6;
    private const int Steps = 60;

    /// <summary>Reads a plan; all readings of one sample are given the same lot, so that their points stand at the same shares.</summary>
    internal static PlanBehaviour Of(PlanReading reading, SamplingPlan plan, Supply supply, int? lot) =>
        new(
            reading,
            OperatingCharacteristic.Landmarks(plan, supply),
            OperatingCharacteristic.Curve(plan, supply, Shares(lot))
        );

    /// <summary>Even steps; in a small lot the shares that it can have, piece by piece.</summary>
    private static double[] Shares(int? lot)
    {
        var most = lot is { } pieces && DrawnUpTo * pieces < Steps ? (int)Math.Ceiling(DrawnUpTo * pieces) : Steps;
        return
        [
            .. Enumerable
                .Range(0, most + 1)
                .Select(i => lot is { } of && most < Steps ? (double)i / of : DrawnUpTo * i / Steps),
        ];
    }
}
