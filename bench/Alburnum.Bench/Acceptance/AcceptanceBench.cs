using System.Diagnostics;
using Alburnum.Acceptance;
using Alburnum.Acceptance.History;
using Alburnum.Acceptance.Variables;

namespace Alburnum.Bench.Acceptance;

/// <summary>Sampling sums and charts: each time as milliseconds, and as a ratio to a plain binomial characteristic in the same run.</summary>
internal static class AcceptanceBench
{
    private const int Runs = 15;
    private const int Charges = 1_000_000;
    private static readonly double[] Shares = [.. Enumerable.Range(0, 101).Select(i => i / 100.0)];

    public static void Run()
    {
        SteadyProcess process = new();
        FiniteLot lot = new(100_000);
        RiskPoints risks = new(0.05, 0.05, 0.10, 0.10);
        RiskPoints close = new(0.010, 0.05, 0.014, 0.10);
        var random = new Random(5);
        double[] values = [.. Enumerable.Range(0, Charges).Select(_ => 9 + 0.8 * Gauss(random))];

        var unit = Time(
            "binomial characteristic, 101 points, n = 50",
            5,
            () => OperatingCharacteristic.Curve(new SingleSamplingPlan(50, 10), process, Shares)
        );
        Console.WriteLine();
        Report(
            unit,
            "hypergeometric characteristic, lot 100 000, n = 1250",
            5,
            () => OperatingCharacteristic.Curve(new SingleSamplingPlan(1250, 21), lot, Shares)
        );
        Report(
            unit,
            "double characteristic, lot 100 000",
            5,
            () => OperatingCharacteristic.Curve(new DoubleSamplingPlan(200, 3, 8, 200, 7), lot, Shares)
        );
        Report(
            unit,
            "sequential characteristic, 120 pieces",
            5,
            () => OperatingCharacteristic.Curve(SequentialPlan.For(new(0.05, 0.05, 0.25, 0.1), 120), process, Shares)
        );
        Report(unit, "outgoing limit", 5, () => OperatingCharacteristic.OutgoingLimit(new(50, 10), 500));
        Report(unit, "smallest plan, lot 100 000", 50, () => PlanDesign.Single(risks, 100_000));
        Report(unit, "smallest plan for close risks, lot 100 000", 50, () => PlanDesign.Single(close, 100_000));
        Report(unit, "tolerance factor, n = 20", 5, () => ToleranceLimit.Factor(20, 0.95, 0.95));
        Report(unit, "EWMA run length", 5, () => AverageRunLength.Of(EwmaChart.Usual, 1));
        Report(unit, $"watch over {Charges} charges", 2000, () => Follow(values));
    }

    private static double Follow(double[] values)
    {
        var state = default(WatchState);
        RunChart chart = new();
        foreach (var value in values)
        {
            (state, var signals) = Watch.Next(state, value, WatchRules.Usual);
            chart.Add(value, signals != Signals.None);
        }
        return state.Mean + chart.Marks.Count;
    }

    private static void Report<T>(double unit, string name, double mostMs, Func<T> work)
    {
        var ms = Time(name, mostMs, work);
        Console.WriteLine($"   {ms / unit:0.0} ×");
    }

    private static double Time<T>(string name, double mostMs, Func<T> work)
    {
        var times = new double[Runs];
        work();
        for (var i = 0; i < Runs; i++)
        {
            var clock = Stopwatch.StartNew();
            GC.KeepAlive(work());
            times[i] = clock.Elapsed.TotalMilliseconds;
        }
        Array.Sort(times);
        var median = times[Runs / 2];
        Console.Write($"{name, -55} {median, 9:0.000} ms of {mostMs:0} {(median <= mostMs ? "" : "TOO SLOW")}");
        return median;
    }

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
