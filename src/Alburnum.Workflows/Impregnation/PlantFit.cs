using Alburnum.Facts;
using Alburnum.Flow.Pieces;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Timber;

namespace Alburnum.Workflows.Impregnation;

/// <summary>A wood's permeability, calibrated by what a plant measured of its own charges.</summary>
/// <param name="IsHeartwood">True of the heartwood.</param>
/// <param name="Calibration">The law before and after, and how its forecasts came out.</param>
public sealed record PlantWood(bool IsHeartwood, PlantCalibration Calibration);

/// <summary>What is foretold of a plant's charges.</summary>
public enum PlantMeasure
{
    /// <summary>Mean depth in sapwood, mm.</summary>
    SapwoodDepth,

    /// <summary>Mean depth in heartwood, mm.</summary>
    HeartwoodDepth,

    /// <summary>Net uptake, L/m³.</summary>
    Uptake,
}

/// <summary>What the woods of a plant have in common.</summary>
public static class PlantWoods
{
    /// <summary>What the plant's uptakes are over those expected of its wood; null where no uptake was used.</summary>
    /// <param name="woods">Each wood that the plant's charges speak of.</param>
    public static double? UptakeFactor(this IReadOnlyList<PlantWood> woods) =>
        woods.Select(wood => wood.Calibration.Fit.UptakeFactor?.Value).FirstOrDefault(factor => factor is not null);

    /// <summary>Each measure that was foretold, with how it came out.</summary>
    /// <param name="woods">Each wood that the plant's charges speak of.</param>
    public static IEnumerable<(PlantMeasure Measure, ForecastRecord Record)> Forecasts(
        this IReadOnlyList<PlantWood> woods
    )
    {
        ArgumentNullException.ThrowIfNull(woods);
        foreach (var (isHeartwood, calibration) in woods)
        {
            if (calibration.DepthsMm is { } depths)
                yield return (isHeartwood ? PlantMeasure.HeartwoodDepth : PlantMeasure.SapwoodDepth, depths);
            if (calibration.UptakesLPerM3 is { } uptakes)
                yield return (PlantMeasure.Uptake, uptakes);
        }
    }
}

/// <summary>Calibrates a prediction's permeabilities by a plant's own charges.</summary>
internal sealed class PlantFit
{
    private static readonly AskedField[] Columns =
    [
        TreatmentFields.Section,
        TreatmentFields.Schedule,
        TreatmentFields.Minutes,
        TreatmentFields.Moisture,
    ];
    private readonly TreatingQuestion _asked;
    private readonly TreatingRequest _request;
    private readonly PlantRecord _record;
    private readonly FactLibrary _facts;
    private readonly Dictionary<TreatingRequest, PredictionQuestion> _questions = [];
    private readonly Dictionary<Treatment, FrontTable> _fronts = [];

    private PlantFit(TreatingQuestion asked, TreatingRequest request, PlantRecord record, FactLibrary facts) =>
        (_asked, _request, _record, _facts) = (asked, request, record, facts);

    /// <summary>The question with its laws calibrated, and what changed in each.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="request">The same as it was asked: says section, moisture and schedule where a line of the history does not.</param>
    /// <param name="record">What the plant measured.</param>
    /// <param name="facts">Permeabilities and schedules.</param>
    /// <param name="seed">Seed of the draws.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="InputRefusedException">A charge cannot have been treated so, or a depth is greater than the piece allows.</exception>
    public static (TreatingQuestion Asked, IReadOnlyList<PlantWood> Woods) Of(
        TreatingQuestion asked,
        TreatingRequest request,
        PlantRecord record,
        FactLibrary facts,
        int seed,
        CancellationToken stop
    ) => new PlantFit(asked, request, record, facts).Calibrated(seed, stop);

    // Heartwood first: what it takes up is part of the uptakes that the sapwood is judged by.
    private (TreatingQuestion Asked, IReadOnlyList<PlantWood> Woods) Calibrated(int seed, CancellationToken stop)
    {
        var prediction = _asked.Prediction;
        List<PlantWood> woods = [];
        foreach (var isHeartwood in new[] { true, false })
        {
            var evidence = Evidence(prediction, isHeartwood);
            if (evidence is { Depths.Count: 0, Uptakes.Count: 0 })
                continue;
            var calibration = Calibration(
                isHeartwood ? prediction.Heartwood : prediction.Sapwood,
                evidence,
                seed,
                stop
            );
            woods.Insert(0, new(isHeartwood, calibration));
            prediction = isHeartwood
                ? prediction with
                {
                    Heartwood = calibration.Fit.After,
                }
                : prediction with
                {
                    Sapwood = calibration.Fit.After,
                };
        }
        return (_asked with { Prediction = prediction }, woods);
    }

    private PlantCalibration Calibration(
        PermeabilityLaw before,
        PlantEvidence evidence,
        int seed,
        CancellationToken stop
    )
    {
        try
        {
            return PlantCalibration.Of(before, evidence, seed, stop);
        }
        catch (InputRefusedException refused)
        {
            throw new InputRefusedException([
                .. refused.Problems.Select(problem => problem with { File = _record.File }),
            ]);
        }
    }

    private PlantEvidence Evidence(PredictionQuestion prediction, bool isHeartwood)
    {
        List<PlantDepth> depths = [];
        Dictionary<string, PlantUptake> uptakes = new(StringComparer.Ordinal);
        Dictionary<Treatment, (UptakeCurve Curve, double Voids)> curves = [];
        foreach (var row in _record.Rows)
        {
            var request = RequestOf(row);
            var question = QuestionOf(row, request);
            var treatment = Treatment.Of(request, question);
            var front = FrontOf(treatment with { Section = null }, question);
            // The unfitted laws differ by the moisture alone.
            var ratio = question.Sapwood.LateralMedianM2 / _asked.Prediction.Sapwood.LateralMedianM2;
            if (row.DepthMm is { } depth && row.IsHeartwood == isHeartwood)
                depths.Add(Depth(row, depth, question, front, ratio));
            // Uptake speaks of the wood at the faces.
            if (row.UptakeLPerM3 is not { } uptake || question.HasSapwood == isHeartwood)
                continue;
            if (!curves.TryGetValue(treatment, out var known))
            {
                var charge = question with
                {
                    Sapwood = prediction.Sapwood.Times(ratio),
                    Heartwood = prediction.Heartwood.Times(ratio),
                };
                known = (UptakeCurve.Of(charge, front, isHeartwood, ratio), question.VoidFraction);
                curves.Add(treatment, known);
            }
            uptakes.TryAdd(
                row.Charge,
                new(row.Charge, uptake, known.Curve.InVoids(question.VoidFraction / known.Voids))
            );
        }
        return new(
            [.. _record.Rows.Select(row => row.Charge).Distinct(StringComparer.Ordinal)],
            depths,
            [.. uptakes.Values]
        );
    }

    private TreatingRequest RequestOf(PlantRow row)
    {
        var request = _request with
        {
            Section = row.Section ?? _request.Section,
            MoisturePercent = row.MoisturePercent ?? _request.MoisturePercent,
            // What is required now was not required then, and may be deeper than an older piece is thick.
            DepthMm = null,
            ZoneDepthMm = null,
            Demand = null,
            IsWholeSapwood = false,
        };
        if (row.Schedule.Length > 0)
            request = request with { Schedule = row.Schedule, PeakKPa = null, PressureMinutes = null };
        return request with { PressureMinutes = row.PressureMinutes ?? request.PressureMinutes };
    }

    private PredictionQuestion QuestionOf(PlantRow row, TreatingRequest request)
    {
        if (_questions.TryGetValue(request, out var known))
            return known;
        try
        {
            var question = TreatingQuestion.Of(request, _facts).Prediction;
            _questions.Add(request, question);
            return question;
        }
        catch (InputRefusedException refused)
        {
            throw new InputRefusedException([
                .. refused.Problems.Select(problem =>
                    problem with
                    {
                        File = _record.File,
                        Line = row.Line,
                        // A question refuses by the option; here the same stands in a column.
                        Field = Array.Find(Columns, field => field.Option == problem.File)?.Column ?? problem.Field,
                    }
                ),
            ]);
        }
    }

    private FrontTable FrontOf(Treatment treatment, PredictionQuestion question)
    {
        if (!_fronts.TryGetValue(treatment, out var front))
            _fronts.Add(treatment, front = WayRun.Table(question));
        return front;
    }

    private PlantDepth Depth(PlantRow row, double depthMm, PredictionQuestion question, FrontTable front, double ratio)
    {
        var way = row.WayMm ?? question.Section.ThicknessMm / 2;
        return depthMm <= way
            ? new(row.Charge, row.Piece, depthMm, way, front, (question.VoidFraction, ratio))
            : throw _record.Refused(
                row,
                PlantTable.DepthColumn,
                InputProblem.Number(depthMm),
                $"at most {InputProblem.Number(way)} mm, half the thickness of the piece, or a column way_mm"
            );
    }

    /// <summary>What a run of the flow solver depends on. Below fibre saturation moisture makes no difference to it but where heat comes in; free water does, to a hundredth.</summary>
    private sealed record Treatment(
        Section? Section,
        string Schedule,
        double? PressureMinutes,
        double WaterShare,
        double? WarmedMoisturePercent
    )
    {
        public static Treatment Of(TreatingRequest request, PredictionQuestion question) =>
            new(
                request.Section,
                request.Schedule,
                request.PressureMinutes,
                Math.Round(question.WaterShare, 2),
                question.Warming is null ? null : Math.Round(request.MoisturePercent)
            );
    }
}
