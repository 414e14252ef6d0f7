using Alburnum.Bench.Acceptance;
using Alburnum.Bench.Imaging;
using Alburnum.Bench.Impregnation;
using Alburnum.Bench.Requirements;
using BenchmarkDotNet.Running;

// One line a benchmark: its name on the command line, and what it measures.
Dictionary<string, Action> benchmarks = new(StringComparer.Ordinal)
{
    ["requirements"] = RequirementsBench.Run,
    ["acceptance"] = AcceptanceBench.Run,
    ["flow-section"] = ImpregnationBench.Section,
    ["flow-cell"] = ImpregnationBench.Cell,
    ["flow-grid"] = SectionGridBench.Run,
    ["flow-growth"] = ImpregnationBench.Growth,
    ["flow-steps"] = ImpregnationBench.Steps,
    ["flow-scipy"] = ImpregnationBench.AgainstSciPy,
    ["quick-draws"] = ImpregnationBench.Draws,
    ["reading"] = () => BenchmarkRunner.Run<ReadingBenchmarks>(),
    ["reading-peer-accuracy"] = PeerAccuracy.Run,
    ["reading-memory"] = PeakMemory.Run,
    ["reading-throughput"] = ReadingThroughput.Run,
    ["outline-weights"] = OutlineWeightsFit.Run,
};

var wanted = args.Length == 0 ? benchmarks.Keys.ToArray() : args;
if (wanted.FirstOrDefault(name => !benchmarks.ContainsKey(name)) is { } unknown)
{
    Console.Error.WriteLine($"No benchmark \"{unknown}\"; there are: {string.Join(", ", benchmarks.Keys)}.");
    return 2;
}
foreach (var name in wanted)
    benchmarks[name]();
return 0;
