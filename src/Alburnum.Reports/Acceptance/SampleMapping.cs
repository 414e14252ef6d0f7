using Alburnum.Reports.Words;
using Alburnum.Workflows.Acceptance;

namespace Alburnum.Reports.Acceptance;

/// <summary>Writes a planned sample down.</summary>
public static class SampleMapping
{
    private static SampleWords Words => SampleWords.Current;

    /// <summary>The sample as a document.</summary>
    public static SampleDocument Of(PlannedSample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        var lot = sample.Request.Lot;
        return new()
        {
            Plan = Words.Plan(sample),
            Source = Words.Source(sample),
            Standing = StandingOf(sample),
            LotSize = lot,
            Cut = Words.Cut(sample),
            Passes = Words.Passes(sample.Plan),
            MostPiecesCut = sample.Plan.MostPiecesCut,
            Seed = lot is null ? null : sample.Request.Seed,
            Positions = sample.Positions,
            Readings =
            [
                .. sample.Behaviours.Select(behaviour => new SampleReading
                {
                    Name = Words.Reading(behaviour.Reading, sample),
                    Landmarks = behaviour.Landmarks,
                    Curve = behaviour.Curve,
                }),
            ],
            Notes = SampleNoteWords.Current.Say(sample),
        };
    }

    // A standard's tables stand as their file says; no standard is named for a share; the rest is exact by published methods.
    private static Standing StandingOf(PlannedSample sample) =>
        sample switch
        {
            { Request: SampleByTables, Indexed: { } found } => found.Source.Standing,
            { Request: SampleByShare } => Standing.CommonPractice,
            _ => Standing.Published,
        };
}
