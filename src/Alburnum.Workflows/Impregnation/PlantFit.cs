using Alburnum.Flow.Pieces;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Tables;

namespace Alburnum.Workflows.Impregnation;

/// <summary>Narrows a prediction's permeabilities by depths from the plant's own charges.</summary>
internal static class PlantFit
{
    // Shallower than this a depth cannot be told from none; deeper than this share of the way, the way is full.
    private const double LeastReadMm = 0.3;
    private const double FullShare = 0.97;
    private const double MostM2 = 1e-9;

    /// <summary>The question with its laws fitted, and what changed in each.</summary>
    /// <param name="question">What is asked; says sizes, moisture and schedule where a depth does not.</param>
    /// <param name="depths">The plant's depths.</param>
    /// <param name="schedules">Schedules that a depth may name.</param>
    /// <param name="seed">Seed of the draws.</param>
    /// <param name="stop">Stops the fit.</param>
    /// <exception cref="InputRefusedException">A depth names a schedule that is not known, or is greater than the piece allows.</exception>
    public static (PredictionQuestion Question, IReadOnlyList<PermeabilityFit> Fits) Of(
        PredictionQuestion question,
        PlantDepths depths,
        IReadOnlyList<Fact<Schedule>> schedules,
        int seed,
        CancellationToken stop
    )
    {
        Dictionary<string, FrontTable> fronts = new(StringComparer.OrdinalIgnoreCase);
        foreach (var record in depths.Records)
            if (!fronts.ContainsKey(record.Schedule))
                fronts.Add(record.Schedule, WayRun.Table(question, ScheduleOf(record, question, depths, schedules)));
        List<PermeabilityFit> fits = [];
        foreach (var zone in depths.Records.GroupBy(record => record.IsHeartwood).OrderBy(zone => zone.Key))
        {
            var points = zone.Select(record => Point(record, question, depths, fronts[record.Schedule])).ToList();
            var fit = Fitted(zone.Key ? question.Heartwood : question.Sapwood, points, depths.File, seed, stop);
            fits.Add(fit);
            question = zone.Key ? question with { Heartwood = fit.After } : question with { Sapwood = fit.After };
        }
        return (question, fits);
    }

    private static PermeabilityFit Fitted(
        PermeabilityLaw before,
        IReadOnlyList<FitPoint> points,
        string file,
        int seed,
        CancellationToken stop
    )
    {
        try
        {
            return PermeabilityFit.Of(before, points, seed, cancellation: stop);
        }
        catch (InputRefusedException refused)
        {
            throw new InputRefusedException([.. refused.Problems.Select(problem => problem with { File = file })]);
        }
    }

    private static Schedule ScheduleOf(
        DepthRecord record,
        PredictionQuestion question,
        PlantDepths depths,
        IReadOnlyList<Fact<Schedule>> schedules
    ) =>
        record.Schedule.Length == 0
            ? question.Schedule
            : schedules
                .FirstOrDefault(row => row.Value.Name.Equals(record.Schedule, StringComparison.OrdinalIgnoreCase))
                ?.Value
                ?? throw depths.Refused(
                    record,
                    "schedule",
                    record.Schedule,
                    string.Join(", ", schedules.Select(row => row.Value.Name))
                );

    private static FitPoint Point(DepthRecord record, PredictionQuestion question, PlantDepths depths, FrontTable front)
    {
        var way = record.WayMm ?? question.Section.ThicknessMm / 2;
        if (record.DepthMm > way)
            throw depths.Refused(
                record,
                "depth_mm",
                InputProblem.Number(record.DepthMm),
                $"at most {InputProblem.Number(way)} mm, half the thickness asked about, or a column way_mm"
            );
        double Permeability(double depthMm) => front.PermeabilityM2(depthMm, question.VoidFraction, way);
        if (record.DepthMm < LeastReadMm)
            return new(record.Charge, record.Piece, 0, Permeability(LeastReadMm));
        // Air left behind stops a front short of the end; wood filled so far counts as full.
        var full = FullShare * Math.Min(way, front.DepthMm(MostM2, question.VoidFraction, way));
        if (record.DepthMm >= full)
            return new(record.Charge, record.Piece, Permeability(full), double.PositiveInfinity);
        var k = Permeability(record.DepthMm);
        return new(record.Charge, record.Piece, k, k);
    }
}
