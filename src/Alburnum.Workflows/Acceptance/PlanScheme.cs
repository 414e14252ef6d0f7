using Alburnum.Acceptance.Indexed;
using Alburnum.Records.Facts;

namespace Alburnum.Workflows.Acceptance;

/// <summary>A scheme of switched plans, and how it behaves.</summary>
/// <param name="Sequence">Tables, switching rules, level and AQL.</param>
/// <param name="Pieces">Pieces in each lot.</param>
/// <param name="IsReductionAgreed">Whether reduced inspection is agreed to.</param>
/// <param name="Points">The characteristic.</param>
public sealed record PlannedScheme(
    LotSequence Sequence,
    int Pieces,
    bool IsReductionAgreed,
    IReadOnlyList<SchemePoint> Points
)
{
    /// <summary>The plan of a severity.</summary>
    public IndexedPlan Plan(Severity severity) =>
        Sequence.Plan(SwitchingState.Beginning with { Severity = severity }, Pieces);
}

/// <summary>Works out how a standard's scheme behaves with its switching.</summary>
public static class PlanScheme
{
    // Qualities as multiples of the AQL, below it and well above.
    private static readonly double[] OfAql = [0.25, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 6];

    /// <summary>The scheme of a plant's lots.</summary>
    /// <param name="standard">Tables and switching rules.</param>
    /// <param name="pieces">Pieces in each lot.</param>
    /// <param name="level">Inspection level.</param>
    /// <param name="aqlPercent">The AQL, %.</param>
    /// <param name="isReductionAgreed">Whether reduced inspection is agreed to whenever the run of accepted lots allows it.</param>
    /// <exception cref="InputRefusedException">The lot is smaller than the tables' smallest, or they have no column for the AQL.</exception>
    public static PlannedScheme Of(
        SamplingStandard standard,
        int pieces,
        InspectionLevel level,
        double aqlPercent,
        bool isReductionAgreed
    )
    {
        ArgumentNullException.ThrowIfNull(standard);
        var plan = TablesFit.Plan(standard.Tables, pieces, level, aqlPercent, Severity.Normal);
        var sequence = new LotSequence(standard.Tables, standard.Switching, level, plan.AqlPercent);
        // Of pieces no more than all can fail; of defects there may be more than pieces.
        var shares = OfAql
            .Select(times => times * aqlPercent / 100)
            .Where(share => plan.CountsDefects || share <= 1)
            .ToList();
        return new(
            sequence,
            pieces,
            isReductionAgreed,
            SchemeCharacteristic.Curve(sequence, pieces, isReductionAgreed, shares)
        );
    }
}
