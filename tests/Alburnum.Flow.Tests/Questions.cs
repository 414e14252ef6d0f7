using Alburnum.Flow.Pieces;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Flow.Tests;

/// <summary>Questions about wood of one kind without any spread, that the flow tests share.</summary>
internal static class Questions
{
    public static PermeabilityLaw Even(double lateralM2) =>
        new()
        {
            Name = "test",
            LateralMedianM2 = lateralM2,
            Directions = new("test", 1, 6000, new(Standing.FromMemory, "test", "", "", "")),
            BatchLnSpread = 0,
            PieceLnSpread = 0,
            WithinLnSpread = 0,
            IsInference = true,
            Provenance = new(Standing.FromMemory, "test", "", "", ""),
        };

    public static PredictionQuestion Of(Schedule schedule, double waterShare = 0) =>
        new()
        {
            Section = new RectangularSection(100, 100),
            Log = LogGeometry.AllSapwood,
            Sapwood = Even(1e-17),
            Heartwood = Even(1e-17),
            VoidFraction = 0.6,
            WaterShare = waterShare,
            Liquid = TreatingLiquid.Water(),
            Schedule = schedule,
            Incising = null,
            Rule = new NoDepth(),
            ZoneDepthMm = null,
        };

    public static FrontTable Table(Schedule schedule, double waterShare = 0) => WayRun.Table(Of(schedule, waterShare));
}
