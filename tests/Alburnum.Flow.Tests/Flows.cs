using Alburnum.Flow.Equations;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;

namespace Alburnum.Flow.Tests;

/// <summary>Schedules and fluids that the flow tests share.</summary>
internal static class Flows
{
    /// <summary>A log whose pith lies nowhere near the middle of a piece: no part of it mirrors another.</summary>
    public static LogGeometry OffCentre { get; } = new(5, -3, 0, 1e6);

    public static FluidPair Sharp(double airMPaS = 1e-5) =>
        new(1.002, airMPaS, new RelativePermeability(1, 1, 0), new CapillaryCurve(0));

    public static CellWarmth[] Even(int cells) => [.. Enumerable.Repeat(CellWarmth.Even, cells)];

    public static FlowRun Run(FlowProblem problem, Schedule schedule, StepControl control) =>
        FlowSolver.Run(problem, schedule, control, cancellation: TestContext.Current.CancellationToken);

    public static Schedule Hold(double kPa, double minutes) =>
        new("hold", [new Stage("pressure", Contact.Liquid, minutes, kPa, kPa)]);

    public static Schedule FullCell { get; } =
        new(
            "full cell",
            [
                new Stage("initial vacuum", Contact.Air, 5, 101.325, 15),
                new Stage("initial vacuum", Contact.Air, 25, 15, 15),
                new Stage("flooding", Contact.Liquid, 10, 15, 15),
                new Stage("pressure", Contact.Liquid, 10, 15, 1300),
                new Stage("pressure", Contact.Liquid, 60, 1300, 1300),
                new Stage("release", Contact.Liquid, 10, 1300, 101.325),
                new Stage("final vacuum", Contact.Air, 5, 101.325, 20),
                new Stage("final vacuum", Contact.Air, 15, 20, 20),
                new Stage("drip", Contact.Air, 5, 20, 101.325),
                new Stage("drip", Contact.Air, 30, 101.325, 101.325),
            ]
        );

    public static Schedule EmptyCell { get; } =
        new(
            "empty cell with initial air",
            [
                new Stage("initial air", Contact.Air, 5, 101.325, 400),
                new Stage("initial air", Contact.Air, 15, 400, 400),
                new Stage("flooding", Contact.Liquid, 5, 400, 400),
                new Stage("pressure", Contact.Liquid, 10, 400, 1200),
                new Stage("pressure", Contact.Liquid, 60, 1200, 1200),
                new Stage("release", Contact.Liquid, 10, 1200, 101.325),
                new Stage("final vacuum", Contact.Air, 5, 101.325, 20),
                new Stage("final vacuum", Contact.Air, 15, 20, 20),
                new Stage("drip", Contact.Air, 5, 20, 101.325),
            ]
        );

    /// <summary>Depth of a sharp front from the liquid held in a column of 1 m², mm.</summary>
    public static double FrontMm(FlowRun run, double voidFraction) => 1000 * run.Moments[^1].GainedM3 / voidFraction;
}
