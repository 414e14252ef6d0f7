using Alburnum.Cases;
using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Workflows.Cases;

/// <summary>What is expected of a case's timber before it is measured.</summary>
/// <param name="Prediction">What the schedule is expected to reach; null where the case does not ask, or something needed is not known.</param>
/// <param name="Charge">The plan of the charge; null likewise.</param>
/// <param name="Account">What the charge took up; null likewise, and where nothing was read at the vessel.</param>
/// <param name="NotPredicted">What is not known; empty where nothing is asked, or all is known.</param>
public sealed record CaseExpectation(
    TreatingPrediction? Prediction,
    PlannedCharge? Charge,
    ReconciledCharge? Account,
    IReadOnlyList<CaseRemark> NotPredicted
)
{
    /// <summary>Nothing is asked.</summary>
    internal static CaseExpectation None { get; } = new(null, null, null, []);

    /// <summary>Predicts what the case asks. What nobody knows is remarked on, so that the rest of the case is judged all the same.</summary>
    /// <param name="folder">The case.</param>
    /// <param name="facts">Permeabilities, schedules and incising patterns.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="InputRefusedException">What the case says of the treatment cannot be; names file, line and field.</exception>
    internal static CaseExpectation Of(CaseFolder folder, FactLibrary facts, CancellationToken stop)
    {
        if (folder is not { Treatment: { } treatment, Case.Enquiry.Section: { } section })
            return None;
        List<CaseRemark> notKnown = [.. NotKnown(treatment, facts.Impregnation)];
        if (folder.Case.Enquiry.PreservativeKind is { Carrier: not null } carried)
            notKnown.Add(new NotInWater(carried));
        if (notKnown.Count > 0)
            return new(null, null, null, notKnown);
        var request = new PredictionRequest
        {
            Treating = TreatingRequest.Of(treatment, section),
            Pieces = Draws.Pieces,
            Seed = Draws.Seed,
            Plant = folder.Plant,
        };
        return AtItsLine(
            treatment,
            folder.Plant?.File,
            () =>
            {
                var prediction = Predict.Run(request, facts, progress: null, stop);
                var expected = folder.Charge is { } order
                    ? ExpectedCharge.Of(order, facts, stop, prediction.Plant)
                    : null;
                return new CaseExpectation(
                    prediction,
                    expected is null ? null : PlanCharge.AsFarAsPossible(expected),
                    expected is { Order.Readings: { } readings } ? new(expected, ChargeAccount.Of(readings)) : null,
                    expected?.Question.Shortfall is { } shortfall ? [new ChargeNotPlanned(shortfall)] : []
                );
            }
        );
    }

    private static IEnumerable<CaseRemark> NotKnown(TreatmentOrder treatment, ImpregnationLibrary library)
    {
        var species = treatment.Species;
        if (treatment is { Demand: null, DepthMm: null })
            yield return new NoDepthToReach();
        foreach (var isHeartwood in (bool[])[false, true])
            if (!library.Knows(species, isHeartwood))
                yield return new PermeabilityNotKnown(species, isHeartwood);
        if (species.Density is null && treatment.DensityKgPerM3 is null)
            yield return new DensityNotKnown(species);
        if (species.SapwoodWidth is null && treatment is { All: null, HeartwoodRadiusMm: null, SapwoodMm: null })
            yield return new SapwoodNotKnown(species);
    }

    private static CaseExpectation AtItsLine(TreatmentOrder treatment, string? history, Func<CaseExpectation> predict)
    {
        try
        {
            return predict();
        }
        catch (InputRefusedException refused)
        {
            throw new InputRefusedException([
                // What stands in the plant's history is wrong there.
                .. refused.Problems.Select(problem =>
                    problem.File == history ? problem : problem with { File = treatment.File, Line = treatment.Line }
                ),
            ]);
        }
    }
}
