using Alburnum.Facts;
using Alburnum.Flow.Pieces;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Timber;

namespace Alburnum.Workflows.Impregnation;

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

    // A reading without an error of its own would be exact.
    private const double LeastTankUncertaintyL = 1;

    // So many standard uncertainties apart two readings of the tank differ.
    private const double Doubtful = 3;
    private const int MostTankReadings = 12;

    // So many standard uncertainties apart, two figures cannot both be right.
    private const double Surely = 3;
    private readonly TreatingQuestion _asked;
    private readonly TreatingRequest _request;
    private readonly PlantRecord _record;
    private readonly FactLibrary _facts;
    private readonly Dictionary<TreatingRequest, TreatingQuestion> _questions = [];
    private readonly Dictionary<Treatment, FrontTable> _fronts = [];
    private readonly ZoneLaws _laws;

    private PlantFit(TreatingQuestion asked, TreatingRequest request, PlantRecord record, FactLibrary facts) =>
        (_asked, _request, _record, _facts, _laws) = (asked, request, record, facts, new(request.Sorption));

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
            var (evidence, sections) = Evidence(prediction, isHeartwood);
            if (evidence is { Depths.Count: 0, OfCharges.Count: 0 })
                continue;
            var calibration = Calibration(
                isHeartwood ? prediction.Heartwood : prediction.Sapwood,
                evidence,
                seed,
                stop
            );
            woods.Insert(0, new(isHeartwood, calibration, sections));
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

    private (PlantEvidence Evidence, IReadOnlyList<CountedSection> Sections) Evidence(
        PredictionQuestion prediction,
        bool isHeartwood
    )
    {
        var (depths, sections) = Counted([
            .. _record
                .Rows.Where(row => row.DepthMm is not null && row.IsHeartwood == isHeartwood)
                .Select(row => (row, Depth(row, row.DepthMm!.Value, TreatedOf(row)))),
        ]);
        // What is read of a whole charge speaks of the wood at the faces.
        List<(PlantRow Row, Treated Treated)> ofCharges =
        [
            .. _record
                .Rows.Where(row => row.UptakeLPerM3 is not null || row.Tank is not null || row.Zone is not null)
                .Select(row => (row, TreatedOf(row)))
                .Where(read => read.Item2.Question.Prediction.HasSapwood != isHeartwood),
        ];
        return (
            new(
                [.. _record.Rows.Select(row => row.Charge).Distinct(StringComparer.Ordinal)],
                depths,
                [.. Uptakes(prediction, ofCharges, isHeartwood), .. Zones(prediction, ofCharges)]
            ),
            sections
        );
    }

    // Of the places of one measured section those count that lie far enough apart.
    private static (IReadOnlyList<PlantDepth> Depths, IReadOnlyList<CountedSection> Sections) Counted(
        IReadOnlyList<(PlantRow Row, PlantDepth Depth)> read
    )
    {
        List<PlantDepth> counted = [.. read.Where(each => each.Row.Place is null).Select(each => each.Depth)];
        List<CountedSection> sections = [];
        foreach (
            var section in read.Where(each => each.Row.Place is not null)
                .GroupBy(each => (each.Row.Charge, each.Row.Piece))
        )
        {
            var places = section.ToList();
            var apart = PlacesApart.Of([
                .. places.Select(each => new MeasuredPlace(
                    each.Row.Place!.Value.Face,
                    each.Row.Place.Value.AlongMm,
                    each.Depth.DepthMm
                )),
            ]);
            counted.AddRange(apart.Counted.Select(i => places[i].Depth));
            sections.Add(new(places.Count, apart.Counted.Count, apart.DistanceMm));
        }
        return (counted, sections);
    }

    // Net uptakes, and the tank's readings, which are uptakes up to a moment.
    private IEnumerable<ChargeEvidence> Uptakes(
        PredictionQuestion prediction,
        IReadOnlyList<(PlantRow Row, Treated Treated)> rows,
        bool isHeartwood
    )
    {
        Dictionary<(Treatment Treatment, double? Minutes), (UptakeCurve Curve, double Voids)> curves = [];
        foreach (
            var charge in rows.Where(read => read.Row.UptakeLPerM3 is not null)
                .DistinctBy(read => read.Row.Charge, StringComparer.Ordinal)
        )
            yield return new PlantUptake(
                charge.Row.Charge,
                charge.Row.UptakeLPerM3!.Value,
                Curve(charge.Treated, null)
            );
        foreach (
            var charge in rows.Where(read => read.Row.Tank is not null)
                .GroupBy(read => read.Row.Charge, StringComparer.Ordinal)
        )
        {
            foreach (var (row, treated) in charge)
                IsInSolution(row, treated.Question.Prediction.Schedule);
            GivesNothingBackUnderPressure([.. charge.OrderBy(read => read.Row.Tank!.AtMinutes)]);
            yield return new TankReadings(
                charge.Key,
                [
                    .. Spread([.. charge.OrderBy(read => read.Row.Tank!.AtMinutes)])
                        .Select(read => new TankReading(
                            -read.Row.Tank!.TankL / read.Row.Tank.TimberM3,
                            Math.Max(LeastTankUncertaintyL, read.Row.Tank.UncertaintyL) / read.Row.Tank.TimberM3,
                            Curve(read.Treated, read.Row.Tank.AtMinutes)
                        )),
                ]
            );
        }

        UptakeCurve Curve(Treated treated, double? minutes)
        {
            var (question, key) = (treated.Question.Prediction, (treated.Treatment, minutes));
            if (!curves.TryGetValue(key, out var known))
            {
                var front = minutes is { } at ? treated.Front.By(at) : treated.Front;
                known = (
                    UptakeCurve.Of(Believed(prediction, treated), front, isHeartwood, treated.Ratio),
                    question.VoidFraction
                );
                curves.Add(key, known);
            }
            return known.Curve.InVoids(question.VoidFraction / known.Voids);
        }
    }

    private IEnumerable<ChargeEvidence> Zones(
        PredictionQuestion prediction,
        IReadOnlyList<(PlantRow Row, Treated Treated)> rows
    )
    {
        foreach (
            var charge in rows.Where(read => read.Row.Zone is not null)
                .GroupBy(read => read.Row.Charge, StringComparer.Ordinal)
        )
        {
            List<ZoneAssay> zones = [];
            double full = 0;
            foreach (var (row, treated) in charge)
            {
                var (zone, question) = (row.Zone!, Believed(prediction, treated));
                if (zone.ToMm > question.Section.ThicknessMm / 2)
                    throw _record.Refused(
                        row,
                        PlantTable.ToColumn,
                        InputProblem.Number(zone.ToMm),
                        $"at most {InputProblem.Number(question.Section.ThicknessMm / 2)} mm, half the thickness of the piece"
                    );
                var strength =
                    zone.StrengthPercent
                    ?? _request.StrengthPercent
                    ?? throw _record.Refused(
                        row,
                        TreatmentFields.Strength.Column,
                        "nothing",
                        "the strength of the charge's solution, % of product by mass, here or with what is asked"
                    );
                var kgPerM3 = strength / 100 * question.Liquid.DensityKgPerM3;
                HoldsNoMoreThanCame(row, question, kgPerM3);
                var products = _laws.Products(treated.Treatment with { Section = null }, treated.Question, kgPerM3);
                var curve = new ZoneCurve(question, products, (zone.FromMm, zone.ToMm), kgPerM3, treated.Ratio);
                zones.Add(new(zone.KgPerM3, zone.UKgPerM3, curve.KgPerM3));
                full = kgPerM3 * question.VoidFraction;
            }
            LieBelowEachOther([.. charge.Select(read => read.Row).OrderBy(row => row.Zone!.FromMm)]);
            yield return new ZoneAssays(charge.Key, zones, full, _laws.Count);
        }
    }

    // No zone holds more than all the product that came with the solution, if every cavity of the piece was full of it.
    private void HoldsNoMoreThanCame(PlantRow row, PredictionQuestion question, double strengthKgPerM3)
    {
        var zone = row.Zone!;
        var share =
            SectionBorder.Share(question.Section, zone.ToMm) - SectionBorder.Share(question.Section, zone.FromMm);
        var most = strengthKgPerM3 * question.VoidFraction / share;
        if (zone.KgPerM3 - Surely * zone.UKgPerM3 > most)
            throw _record.Refused(
                row,
                PlantTable.RetentionColumn,
                InputProblem.Number(zone.KgPerM3),
                $"at most {InputProblem.Number(Math.Ceiling(most))} kg/m³: all that solution of {InputProblem.Number(strengthKgPerM3)} kg/m³ in every cavity of the piece can have brought there"
            );
    }

    // The same zone of several pieces counts; two that overlap tell the same product twice.
    private void LieBelowEachOther(IReadOnlyList<PlantRow> rows)
    {
        foreach (var (one, next) in rows.Zip(rows.Skip(1)))
            if (
                next.Zone!.FromMm < one.Zone!.ToMm - 1e-9
                && (next.Zone.FromMm, next.Zone.ToMm) != (one.Zone.FromMm, one.Zone.ToMm)
            )
                throw _record.Refused(
                    next,
                    PlantTable.FromColumn,
                    InputProblem.Number(next.Zone.FromMm),
                    $"{InputProblem.Number(one.Zone.ToMm)} mm or more, where the zone of line {one.Line} ends: zones of a charge lie one below the other"
                );
    }

    // Readings a minute apart tell the same of the wood: of many those count that lie farthest apart.
    private static IEnumerable<(PlantRow Row, Treated Treated)> Spread(
        IReadOnlyList<(PlantRow Row, Treated Treated)> readings
    ) =>
        readings.Count <= MostTankReadings
            ? readings
            : Enumerable
                .Range(0, MostTankReadings)
                .Select(n => readings[n * (readings.Count - 1) / (MostTankReadings - 1)]);

    // Wood gives solution back as the pressure is let off, and not before.
    private void GivesNothingBackUnderPressure(IReadOnlyList<(PlantRow Row, Treated Treated)> readings)
    {
        foreach (var (one, next) in readings.Zip(readings.Skip(1)))
        {
            var (before, after, schedule) = (one.Row.Tank!, next.Row.Tank!, next.Treated.Question.Prediction.Schedule);
            var rise = after.TankL - before.TankL;
            if (
                rise > Doubtful * double.Hypot(before.UncertaintyL, after.UncertaintyL)
                && schedule.KPaAt(after.AtMinutes) >= schedule.KPaAt(before.AtMinutes)
            )
                throw _record.Refused(
                    next.Row,
                    PlantTable.TankColumn,
                    InputProblem.Number(after.TankL),
                    $"at most the {InputProblem.Number(before.TankL)} L of line {one.Row.Line}, as the pressure had not been let off"
                );
        }
    }

    private void IsInSolution(PlantRow row, Schedule schedule)
    {
        var from = schedule.Stages.TakeWhile(stage => stage.Contact != Contact.Liquid).Sum(stage => stage.Minutes);
        var to =
            from
            + schedule
                .Stages.SkipWhile(stage => stage.Contact != Contact.Liquid)
                .TakeWhile(stage => stage.Contact == Contact.Liquid)
                .Sum(stage => stage.Minutes);
        if (row.Tank!.AtMinutes < from || row.Tank.AtMinutes > to)
            throw _record.Refused(
                row,
                PlantTable.AtColumn,
                InputProblem.Number(row.Tank.AtMinutes),
                $"{InputProblem.Number(from)} to {InputProblem.Number(to)} min after the schedule \"{schedule.Name}\" began, while the wood lies in the solution"
            );
    }

    private static PredictionQuestion Believed(PredictionQuestion prediction, Treated treated) =>
        treated.Question.Prediction with
        {
            Sapwood = prediction.Sapwood.Times(treated.Ratio),
            Heartwood = prediction.Heartwood.Times(treated.Ratio),
        };

    private Treated TreatedOf(PlantRow row)
    {
        var request = RequestOf(row);
        var question = QuestionOf(row, request);
        var treatment = Treatment.Of(request, question.Prediction);
        return new(
            question,
            treatment,
            FrontOf(treatment with { Section = null }, question.Prediction),
            // The unfitted laws differ by the moisture alone.
            question.Prediction.Sapwood.LateralMedianM2 / _asked.Prediction.Sapwood.LateralMedianM2
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

    private TreatingQuestion QuestionOf(PlantRow row, TreatingRequest request)
    {
        if (_questions.TryGetValue(request, out var known))
            return known;
        try
        {
            var question = TreatingQuestion.Of(request, _facts);
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

    private PlantDepth Depth(PlantRow row, double depthMm, Treated treated)
    {
        var question = treated.Question.Prediction;
        var way = row.WayMm ?? question.Section.ThicknessMm / 2;
        return depthMm <= way
            ? new(
                row.Charge,
                row.Piece,
                depthMm,
                way,
                treated.Front,
                (question.VoidFraction, treated.Ratio * Inwards(question, row.IsHeartwood))
            )
            : throw _record.Refused(
                row,
                PlantTable.DepthColumn,
                InputProblem.Number(depthMm),
                $"at most {InputProblem.Number(way)} mm, half the thickness of the piece, or a column way_mm"
            );
    }

    // Where on the section a depth was read is seldom known: between the directions, as its places have them.
    private static double Inwards(PredictionQuestion question, bool isHeartwood)
    {
        var law = isHeartwood ? question.Heartwood : question.Sapwood;
        return Math.Exp(
            SectionPositions
                .Around(question.Section, question.Log, PredictionQuestion.UsualPlacesPerFace)
                .Average(place => Math.Log(law.InwardsTimes(place.RadialShare)))
        );
    }

    /// <summary>A line's wood as it was treated, the table of its schedule, and its permeability over that at the moisture asked about.</summary>
    private sealed record Treated(TreatingQuestion Question, Treatment Treatment, FrontTable Front, double Ratio);
}

/// <summary>What a run of the flow solver depends on. Below fibre saturation moisture makes no difference to it but where heat comes in; free water does, to a hundredth.</summary>
internal sealed record Treatment(
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
