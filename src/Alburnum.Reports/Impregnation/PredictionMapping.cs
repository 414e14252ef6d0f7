using System.Globalization;
using Alburnum.Acceptance;
using Alburnum.Flow.Pieces;
using Alburnum.Impregnation.Incising;
using Alburnum.Impregnation.Prediction;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Impregnation;

/// <summary>Puts a prediction into the words and units of its sheet.</summary>
public static class PredictionMapping
{
    /// <summary>Builds the document.</summary>
    /// <param name="species">Name of the timber.</param>
    /// <param name="question">What was asked.</param>
    /// <param name="quick">The quick model's answer.</param>
    /// <param name="section">The flow solver's answer; null where it was not run.</param>
    /// <param name="endDepthMm">Depth from a cut end by the flow solver; null where it was not run or stopped short.</param>
    /// <param name="penalty">What design codes take off for incising.</param>
    /// <param name="scheduleSource">Where the schedule comes from.</param>
    /// <param name="strengthPercent">Strength of the solution, %; null where not given.</param>
    /// <param name="plan">Sampling plan; null where none was given.</param>
    /// <param name="demandMm">The one depth asked for, mm; null where there is none.</param>
    /// <param name="assumptions">What was assumed for want of anything said.</param>
    /// <param name="fits">Permeabilities narrowed by the plant's own depths.</param>
    public static PredictionDocument From(
        string species,
        PredictionQuestion question,
        QuickPrediction quick,
        SectionRun? section,
        double? endDepthMm,
        IncisingPenalty penalty,
        Provenance scheduleSource,
        double? strengthPercent,
        SamplingPlan? plan,
        double? demandMm,
        IReadOnlyList<string> assumptions,
        IReadOnlyList<PermeabilityFit> fits
    )
    {
        Provenance[] sources =
        [
            question.Sapwood.Provenance,
            question.Heartwood.Provenance,
            scheduleSource,
            .. question.Incising is null ? Array.Empty<Provenance>() : [penalty.Source],
        ];
        return new(
            $"{species}, {question.Section.Label}, {question.Schedule.Name}",
            question.Section.Label,
            question.Sapwood.Name,
            question.Heartwood.Name,
            question.Schedule.Name,
            question.Incising?.InWords ?? "",
            question.Incising is { } pattern ? penalty.InWords(pattern) : "",
            RequirementWords.English.Depths.Say(question.Rule),
            quick.LeastMm,
            quick.MeanMm,
            demandMm is { } depth && question.Incising is null ? Minutes(question, depth) : null,
            quick.UptakeLPerM3,
            strengthPercent is { } strength
                ? Retention(quick.ZoneLPerM3, strength, question.Liquid.DensityKgPerM3)
                : null,
            quick.PieceShare,
            quick.CoreShare,
            plan is null ? null : quick.ChanceToPass(plan),
            section is null ? null : SolverDocument.From(section, endDepthMm),
            EndReach.Quick(question, isHeartwood: question.Log.HeartwoodRadiusMm > 0),
            assumptions,
            [.. Models(question, quick, section)],
            [.. RestsOn(question, scheduleSource, fits)],
            Provenance.Weakest(sources.Select(source => source.Standing)).InWords(),
            PredictionDocument.UsualCautions
        );
    }

    // The slow and the fast twentieth of pieces, batches included.
    private static Spread? Minutes(PredictionQuestion question, double depthMm)
    {
        var places = SectionPositions.Around(question.Section, question.Log, 4);
        var sapwood = places.Min(place => place.SapwoodMm);
        var law = sapwood > 0 ? question.Sapwood : question.Heartwood;
        var spread = Math.Exp(1.645 * PermeabilityFit.PieceToPiece(law));
        return
            TimeToDepth.Minutes(question, depthMm, sapwood, spread) is { } fast
            && TimeToDepth.Minutes(question, depthMm, sapwood, 1) is { } middle
            && TimeToDepth.Minutes(question, depthMm, sapwood, 1 / spread) is { } slow
            ? new Spread(fast, middle, slow)
            : null;
    }

    private static Spread Retention(Spread litres, double strengthPercent, double densityKgPerM3)
    {
        var perLitre = densityKgPerM3 / 1000 * strengthPercent / 100;
        return new(litres.Low * perLitre, litres.Middle * perLitre, litres.High * perLitre);
    }

    private static IEnumerable<string> Models(PredictionQuestion question, QuickPrediction quick, SectionRun? section)
    {
        yield return string.Create(
            CultureInfo.InvariantCulture,
            $"Shares, percentiles, retention and times: the quick model (a sharp front with the air ahead of it), {quick.Pieces} pieces drawn, {quick.Places.Count} places each."
        );
        var end = question.Log.HeartwoodRadiusMm > 0 ? "heartwood" : "sapwood";
        yield return $"From a cut end: the quick model along the grain of {end}, the end not sealed, no further than the middle of a piece of 2 m.";
        if (section is null)
            yield return "The flow solver was not run.";
        else
        {
            var cuts = question.Incising is null ? "" : " It leaves the cuts out.";
            yield return $"Drawing and uptake curve: the flow solver (liquid and trapped air) on the median piece, {section.Mesh.Columns} × {section.Mesh.Rows} cells. {section.Run.Ending.InWords}{cuts}";
        }
    }

    private static IEnumerable<string> RestsOn(
        PredictionQuestion question,
        Provenance scheduleSource,
        IReadOnlyList<PermeabilityFit> fits
    )
    {
        yield return Law("Sapwood", question.Sapwood);
        yield return Law("Heartwood", question.Heartwood);
        foreach (var fit in fits)
            yield return Fitted(fit);
        yield return $"Schedule \"{question.Schedule.Name}\": {scheduleSource.Citation} ({scheduleSource.Standing.InWords()}).";
        yield return string.Create(
            CultureInfo.InvariantCulture,
            $"Voids of {question.VoidFraction * 100:0} % of the volume, from density and moisture; {question.Liquid.Name} of {question.Liquid.ViscosityMPaS:0.00} mPa·s."
        );
        yield return "Relative permeability, capillarity and kickback are assumed: nothing published gives them for these woods.";
    }

    /// <summary>What a fit changed, in one sentence.</summary>
    public static string Fitted(PermeabilityFit fit) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{fit.Before.Name}: fitted to {fit.Depths} depths of {fit.Pieces} pieces in {fit.Charges} charges; median {Nm2(fit.Before)} before, {Nm2(fit.After)} nm² after; nine pieces of ten within a factor of {Factor(fit.Before):0.#} before, {Factor(fit.After):0.#} after."
        );

    private static string Nm2(PermeabilityLaw law) => Figures.Digits(law.LateralMedianM2 * 1e18, 3);

    private static double Factor(PermeabilityLaw law) => Math.Exp(1.645 * PermeabilityFit.PieceToPiece(law));

    private static string Law(string zone, PermeabilityLaw law) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{zone}: {law.Name}, median {Nm2(law)} nm² across the grain, nine pieces of ten within a factor of {Factor(law):0.#}; {(law.IsInference ? "an inference; " : "")}{law.Provenance.Citation} ({law.Provenance.Standing.InWords()})."
        );
}
