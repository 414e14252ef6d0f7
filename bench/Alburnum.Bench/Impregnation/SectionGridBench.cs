using System.Diagnostics;
using Alburnum.Flow.Pieces;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Bench.Impregnation;

/// <summary>What the cells of a section leave open in refractory wood, and what the answer and the runs that tell its error take together.</summary>
internal static class SectionGridBench
{
    private static readonly FactLibrary Facts = new(Path.Combine(AppContext.BaseDirectory, "data"));

    /// <summary>Spruce and oak heartwood of small and large section, at the command's own number of cells, against four times as many.</summary>
    public static void Run()
    {
        foreach (var name in new[] { "Norway spruce", "European oak" })
        foreach (var schedule in new[] { "full cell", "double vacuum" })
        foreach (var size in new[] { 100, 200, 300 })
        {
            var question = Heartwood(name, schedule, size);
            var clock = Stopwatch.StartNew();
            var found = SectionRun.WithCoarser(question, 60);
            var seconds = clock.Elapsed.TotalSeconds;
            var limit = SectionRun.Of(question, 240);
            Console.WriteLine(
                FormattableString.Invariant(
                    $"{name}, {schedule}, {size} × {size}: first cell {found.Mesh.ColumnEdgesMm[1]:0.000} mm; depth {found.MeanDepthMm():0.000} mm, of 240 cells {limit.MeanDepthMm():0.000}, estimated {found.GridError(run => run.MeanDepthMm()):0.000} by cells and {found.StepError(run => run.MeanDepthMm()):0.0000} by steps; uptake {found.NetLPerM3:0.00} L/m³, {limit.NetLPerM3:0.00}, {found.GridError(run => run.NetLPerM3):0.00} and {found.StepError(run => run.NetLPerM3):0.000}; {seconds:0.00} s with its error"
                )
            );
        }
    }

    private static PredictionQuestion Heartwood(string name, string schedule, double sizeMm)
    {
        var law = Facts.Impregnation.Of(Facts.Species.Get(name), isHeartwood: true);
        return new()
        {
            Section = new RectangularSection(sizeMm, sizeMm),
            Log = new LogGeometry(0, 0, 1000, 1001),
            Sapwood = law,
            Heartwood = law,
            VoidFraction = 0.6,
            Liquid = TreatingLiquid.Water(),
            Schedule = Facts.Impregnation.Schedules.Single(row => row.Value.Name == schedule).Value,
            Incising = null,
            Rule = new NoDepth(),
            ZoneDepthMm = null,
        };
    }
}
