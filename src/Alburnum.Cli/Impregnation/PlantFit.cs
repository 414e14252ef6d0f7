using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Tables;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Cli.Impregnation;

/// <summary>Narrows a prediction's permeabilities by depths from the plant's own charges.</summary>
internal static class PlantFit
{
    // Shallower than this a depth is not told from none; deeper than this share of the way, the way is full.
    private const double LeastReadMm = 0.3;
    private const double FullShare = 0.97;
    private const double MostM2 = 1e-9;

    /// <summary>The question with its laws fitted, and what changed in each.</summary>
    /// <param name="input">What was asked; says sizes, moisture and schedule where a record does not.</param>
    /// <param name="path">The plant's depths.</param>
    /// <param name="schedules">Finds a schedule by the name that a record gives.</param>
    /// <param name="seed">Seed of the draws.</param>
    /// <param name="stop">Stops the fit.</param>
    public static (PredictionQuestion Question, IReadOnlyList<PermeabilityFit> Fits) Apply(
        TreatingQuestion input,
        string path,
        Func<string, Alburnum.Impregnation.Schedule> schedules,
        int seed,
        CancellationToken stop
    )
    {
        var question = input.Prediction;
        var records = DepthRecordTable.Read(path);
        var fronts = records
            .Select(record => record.Schedule)
            .Distinct(StringComparer.OrdinalIgnoreCase)
            .ToDictionary(
                name => name,
                name => new QuickFront(
                    name.Length == 0 ? question.Schedule : schedules(name),
                    question.Liquid,
                    isRound: false
                ),
                StringComparer.OrdinalIgnoreCase
            );
        var fits = new List<PermeabilityFit>();
        foreach (var zone in records.GroupBy(record => record.IsHeartwood).OrderBy(zone => zone.Key))
        {
            var fit = PermeabilityFit.Of(
                zone.Key ? question.Heartwood : question.Sapwood,
                [.. zone.Select(record => Point(record, question, fronts[record.Schedule]))],
                seed,
                cancellation: stop
            );
            fits.Add(fit);
            question = zone.Key ? question with { Heartwood = fit.After } : question with { Sapwood = fit.After };
        }
        return (question, fits);
    }

    private static FitPoint Point(DepthRecord record, PredictionQuestion question, QuickFront front)
    {
        var way = record.WayMm ?? question.Section.ThicknessMm / 2;
        if (record.DepthMm > way)
        {
            throw Options.Refused(
                "--fit",
                $"{Options.Digits(record.DepthMm)} mm in charge {record.Charge}, piece {record.Piece}",
                $"at most {Options.Digits(way)} mm, half the thickness asked about, or a column way_mm"
            );
        }
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
