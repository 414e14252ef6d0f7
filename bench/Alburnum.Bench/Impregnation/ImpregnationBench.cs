using System.Diagnostics;
using System.Numerics;
using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Pieces;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Bench.Impregnation;

/// <summary>The flow solver and the quick model: seconds by the clock and of processor time, and what a cell and step cost as the grid grows.</summary>
internal static class ImpregnationBench
{
    private static readonly FactLibrary Facts = new(Path.Combine(AppContext.BaseDirectory, "data"));
    private static readonly ImpregnationLibrary Library = Facts.Impregnation;
    private static readonly FluidPair Fluids = FluidPair.Of(TreatingLiquid.Water());
    private static readonly Schedule FullCell = Library.Schedules[0].Value;

    // The usual post, which is solved on an eighth, and one whose pith lies nowhere near the middle.
    private static readonly LogGeometry Boxed = new(0, 0, 30, 90);
    private static readonly LogGeometry OffCentre = new(5, -8, 30, 90);

    /// <summary>A pine post, 200 × 200 cells, and a full schedule; and the command's 60 cells with the runs that tell their error. Aim: under 2 s.</summary>
    public static void Section()
    {
        Report("section 200 × 200, pith in the middle", Post(200, Boxed).Problem, StepControl.Usual);
        Report("section 200 × 200, pith off the middle", Post(200, OffCentre).Problem, StepControl.Usual);
        foreach (var (log, cells) in new[] { (Boxed, 60), (OffCentre, 60), (Boxed, 200), (OffCentre, 200) })
        {
            var (clock, processor) = (Stopwatch.StartNew(), Environment.CpuUsage.UserTime);
            SectionRun.WithCoarser(Question() with { Log = log }, cells);
            Say(
                $"{cells} cells across with the runs for its error, pith {log.PithXMm}, {log.PithYMm}",
                clock,
                processor
            );
        }
    }

    /// <summary>The incised cell of 96 × 96 × 96 boxes, and a full schedule. Aim: under 60 s on two cores and 1.5 GB.</summary>
    public static void Cell()
    {
        Report("incised cell 96³, full cell", Incised(96), StepControl.Rough);
        using var process = Process.GetCurrentProcess();
        Console.WriteLine(FormattableString.Invariant($"  most memory {process.PeakWorkingSet64 / 1e9:0.00} GB"));
    }

    /// <summary>What a cell and step cost as the section grows 1, 4 and 16 times, against the bandwidth of memory.</summary>
    public static void Growth()
    {
        Console.WriteLine(FormattableString.Invariant($"memory bandwidth, one core: {Bandwidth() / 1e9:0.0} GB/s"));
        foreach (var cells in new[] { 50, 100, 200 })
            Report($"section {cells} × {cells}", Post(cells, OffCentre).Problem, StepControl.Usual);
    }

    /// <summary>Ten thousand pieces, with the runs on single ways that they are read from. Aim: under 1 s.</summary>
    public static void Draws()
    {
        var question = Question();
        for (var run = 0; run < 3; run++)
        {
            var (clock, processor) = (Stopwatch.StartNew(), Environment.CpuUsage.UserTime);
            QuickPrediction.Draw(question, WayRun.Table(question), seed: 1, pieces: 10_000);
            Say("10 000 draws, 40 places each", clock, processor);
        }
    }

    /// <summary>The sheet that the SciPy script times, at steps coarse and fine, to be held against reference/flow_speed.json.</summary>
    public static void AgainstSciPy()
    {
        var wood = new WoodFlow(new Permeability(1e-17, 4e-17, 1e-14), 0.6);
        var fluids = new FluidPair(1.002, 0.0181, RelativePermeability.Usual, new CapillaryCurve(2 * 72.8 / 15));
        var piece = new Piece(new RectangularSection(40, 40), new LogGeometry(0, -1e6, 0, 4e6), wood, wood);
        var hold = new Schedule("hold", [new Stage("pressure", Contact.Liquid, 30, 1300, 1300)]);
        var uptakes = new List<double>();
        foreach (var growth in new[] { 1.6, 1.3, 1.1, 1.05, 1.025, 1.0125, 1.00625 })
        {
            var control = new StepControl(firstSeconds: 0.05, growth: growth, greatestSeconds: 1800.0 / 4);
            for (var warm = 0; warm < 2; warm++)
            {
                var mesh = SectionMesh.Of(
                    piece,
                    fluids,
                    SectionGrid.Of(piece.Section, 48, null),
                    Schedule.AtmosphereKPa
                );
                var (clock, processor) = (Stopwatch.StartNew(), Environment.CpuUsage.UserTime);
                var run = FlowSolver.Run(mesh.Problem, hold, control);
                if (warm == 1)
                    uptakes.Add(run.Moments[^1].GainedM3);
                if (warm == 1)
                    Say(
                        FormattableString.Invariant(
                            $"sheet 48 × 48, growth {growth}: {run.Moments[^1].GainedM3:0.00000000e0} m³, {run.Ending}"
                        ),
                        clock,
                        processor
                    );
            }
        }
        // Halving the steps quarters the second-order error.
        Console.WriteLine(
            FormattableString.Invariant(
                $"the last two carried on: {(4 * uptakes[^1] - uptakes[^2]) / 3:0.00000000e0} m³"
            )
        );
    }

    /// <summary>What steps buy: every schedule on a single way, eight decades of permeability, at the end of every stage, against steps allowed a two-hundredth.</summary>
    public static void Steps()
    {
        double[] decades = [-20, -19, -18, -17, -16, -15, -14, -13];
        var ways = Library
            .Schedules.SelectMany(schedule => decades.Select(decade => (schedule.Value, Line(Math.Pow(10, decade)))))
            .ToArray();
        var truth = ways.Select(way => StageEnds(way, 2e-6, 1e-8)).ToArray();
        foreach (var error in new[] { 6.4e-3, 1.6e-3, 4e-4, 1e-4 })
        {
            var clock = Environment.CpuUsage.UserTime;
            var found = ways.Select(way => StageEnds(way, error, 1e-3)).ToArray();
            var seconds = (Environment.CpuUsage.UserTime - clock).TotalSeconds;
            // Uptake as a share of the most ever held; air of what is left.
            var uptake = found
                .Zip(truth)
                .SelectMany(way =>
                    way.First.Ends.Zip(
                        way.Second.Ends,
                        (a, b) => Math.Abs(a.GainedM3 - b.GainedM3) / way.Second.Ends.Max(moment => moment.GainedM3)
                    )
                )
                .ToArray();
            var kept = found.Zip(truth, (a, b) => Math.Abs(a.Ends[^1].GainedM3 / b.Ends[^1].GainedM3 - 1)).ToArray();
            var air = found
                .Zip(truth)
                .SelectMany(way => way.First.Ends.Zip(way.Second.Ends, (a, b) => Math.Abs(a.AirM3 / b.AirM3 - 1)))
                .ToArray();
            Console.WriteLine(
                FormattableString.Invariant(
                    $"allowed {error}: uptake off by {uptake.Average():0.000%}, at most {uptake.Max():0.000%}, what is kept {kept.Average():0.000%}, {kept.Max():0.000%}; air {air.Average():0.000%}, {air.Max():0.000%}; {found.Average(way => way.Done.Steps):0} steps, at most {found.Max(way => way.Done.Steps)}, {found.Average(way => way.Done.NewtonIterations):0} Newton iterations; {1000 * seconds / ways.Length:0.0} ms each"
                )
            );
        }
    }

    private static (FlowMoment[] Ends, Completed Done) StageEnds(
        (Schedule Schedule, FlowProblem Problem) way,
        double error,
        double tolerance
    )
    {
        var control = new StepControl(growth: 3, cellTolerance: tolerance, uptakeError: error, greatestSteps: 100_000);
        var run = FlowSolver.Run(way.Problem, way.Schedule, control);
        double minutes = 0;
        var ends = way.Schedule.Stages.Select(stage => minutes += stage.Minutes).ToArray();
        return (
            [.. ends.Select(end => run.Moments.MinBy(moment => Math.Abs(moment.Minutes - end))!)],
            (Completed)run.Ending
        );
    }

    private static FlowProblem Line(double permeabilityM2)
    {
        const int cells = 80;
        var edges = GradedEdges.FromOneEnd(0.05, cells, 4);
        double Middle(int cell) => (edges[cell] + edges[cell + 1]) / 2;
        var mesh = new FlowMesh(
            [.. Enumerable.Range(0, cells).Select(i => 0.6 * (edges[i + 1] - edges[i]))],
            [.. Enumerable.Range(0, cells - 1).Select(i => (i, i + 1, permeabilityM2 / (Middle(i + 1) - Middle(i))))],
            [(0, permeabilityM2 / Middle(0))]
        );
        return new FlowProblem(mesh, Fluids, new double[cells]);
    }

    private static void Report(string name, FlowProblem problem, StepControl control)
    {
        var (clock, processor) = (Stopwatch.StartNew(), Environment.CpuUsage.UserTime);
        var run = FlowSolver.Run(problem, FullCell, control);
        Say($"{name}: {run.Ending}", clock, processor);
        if (run.Ending is Completed settled)
        {
            var perCell = (Environment.CpuUsage.UserTime - processor).TotalSeconds / problem.Mesh.CellCount;
            Console.WriteLine(
                FormattableString.Invariant(
                    $"  {problem.Mesh.CellCount} cells, {settled.NewtonIterations} Newton and {settled.LinearIterations} linear iterations; a cell costs {1e9 * perCell / settled.Steps:0} ns a step, {1e9 * perCell / Math.Max(1, settled.LinearIterations):0} ns a linear iteration"
                )
            );
        }
    }

    private static void Say(string what, Stopwatch clock, TimeSpan processor) =>
        Console.WriteLine(
            FormattableString.Invariant(
                $"{what}: {clock.Elapsed.TotalSeconds:0.00} s by the clock, {(Environment.CpuUsage.UserTime - processor).TotalSeconds:0.00} s of processor"
            )
        );

    private static SectionMesh Post(int cells, LogGeometry log)
    {
        var question = Question();
        var piece = new Piece(
            question.Section,
            log,
            new WoodFlow(question.Sapwood.Typical(), question.VoidFraction),
            new WoodFlow(question.Heartwood.Typical(), question.VoidFraction)
        );
        return SectionMesh.Of(piece, Fluids, SectionGrid.Of(piece.Section, cells, null), Schedule.AtmosphereKPa);
    }

    private static FlowProblem Incised(int boxes)
    {
        var pattern = Library.Patterns.Single(row => row.Name == "usual").Pattern.Value;
        var spruce = Library.Of(Facts.Species.Get("Picea abies"), isHeartwood: false);
        return IncisedCell.Of(pattern, new WoodFlow(spruce.Typical(), 0.6), Fluids, 20, boxes).Problem;
    }

    private static PredictionQuestion Question()
    {
        var pine = Facts.Species.Get("Pinus sylvestris");
        return new PredictionQuestion
        {
            Section = new RectangularSection(100, 100),
            Log = Boxed,
            Sapwood = Library.Of(pine, isHeartwood: false),
            Heartwood = Library.Of(pine, isHeartwood: true),
            VoidFraction = 0.6,
            Liquid = TreatingLiquid.Water(),
            Schedule = FullCell,
            Incising = null,
            Rule = new LeastDepth(WoodZone.Lateral, 6),
            ZoneDepthMm = 6,
        };
    }

    // Three arrays far larger than any cache: two read, one written.
    private static double Bandwidth()
    {
        const int n = 8_000_000;
        var (a, b, c) = (new double[n], new double[n], new double[n]);
        Array.Fill(b, 1);
        var best = double.MaxValue;
        for (var run = 0; run < 8; run++)
        {
            var clock = Stopwatch.StartNew();
            for (var i = 0; i <= n - Vector<double>.Count; i += Vector<double>.Count)
                (new Vector<double>(a, i) + new Vector<double>(b, i)).CopyTo(c, i);
            best = Math.Min(best, clock.Elapsed.TotalSeconds);
        }
        return 24.0 * n / best;
    }
}
