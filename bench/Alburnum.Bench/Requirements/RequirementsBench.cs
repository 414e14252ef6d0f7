using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Bench.Requirements;

/// <summary>Loading the facts, answering enquiries on one core, and comparing two editions over an archive.</summary>
/// <remarks>Times are the process's own processor time: what else the machine does at the moment has no part in them.</remarks>
internal static class RequirementsBench
{
    private const int Archive = 100_000;
    private const int Rounds = 3;

    public static void Run()
    {
        var before = ProcessorSeconds;
        var facts = new FactLibrary(Path.Combine(AppContext.BaseDirectory, "data"));
        _ = facts.Rulebooks.Named("british-2014").Answer(new Enquiry());
        Report("loading facts and answering once, cold", (ProcessorSeconds - before) * 1000, "ms", "at most 150");

        var enquiries = Enquiries(facts);
        foreach (var name in new[] { "british-2014", "spanish-se-m", "american-round", "american-use-categories" })
        {
            var rulebook = facts.Rulebooks.Named(name);
            var seconds = Best(() =>
            {
                foreach (var enquiry in enquiries)
                    _ = rulebook.Answer(enquiry);
            });
            Report($"answers, {name}", Archive / seconds, "a second on one core", "at least 100 000");
        }

        var changes = 0;
        var compare = Best(() =>
            changes = RulebookComparison
                .Of(facts.Rulebooks.Named("british-2014"), facts.Rulebooks.Named("british-2024"), enquiries)
                .Changes.Count
        );
        Report($"comparing two editions over {Archive} enquiries ({changes} change)", compare, "s", "at most 5");

        var warm = Best(() =>
            _ = new FactLibrary(Path.Combine(AppContext.BaseDirectory, "data")).Rulebooks.All.Count()
        );
        Report("loading all facts and rulebooks, warm", warm * 1000, "ms", "");
        var check = Best(() => RulebookCheck.Run(facts.Rulebooks.Named("british-2014")));
        Report("checking british-2014", check * 1000, "ms", "");
    }

    private static List<Enquiry> Enquiries(FactLibrary facts)
    {
        var random = new Random(2024);
        T Any<T>(IReadOnlyList<T> values) => values[random.Next(values.Count)];
        return
        [
            .. Enumerable
                .Range(0, Archive)
                .Select(_ => new Enquiry
                {
                    Component = Any(facts.Components.All),
                    Species = Any(facts.Species.All),
                    Section = random.Next(2) == 0 ? new RectangularSection(75, 100) : new RoundSection(120),
                    UseClasses = random.Next(2) == 0 ? [] : [Any(Enum.GetValues<UseClass>())],
                    Life = new DesiredServiceLife(Any([15, 30, 60])),
                    HasExposedHeartwood = Any<bool?>([true, false, null]),
                    IsIncised = Any<bool?>([true, false, null]),
                    Exposure = new() { IsCoated = Any<bool?>([true, false, null]) },
                    MoisturePercent = random.Next(12, 40),
                    StatedClass = random.Next(4) == 0 ? "UC4A" : null,
                    Preservative = random.Next(4) == 0 ? "CA-C" : null,
                    CriticalValue = new PreservativeAmount(8, AmountUnit.KgPerM3),
                }),
        ];
    }

    private static double ProcessorSeconds => Environment.CpuUsage.TotalTime.TotalSeconds;

    private static double Best(Action work) =>
        Enumerable
            .Range(0, Rounds)
            .Min(_ =>
            {
                var before = ProcessorSeconds;
                work();
                return ProcessorSeconds - before;
            });

    private static void Report(string what, double value, string unit, string target) =>
        Console.WriteLine(
            FormattableString.Invariant(
                $"{what, -62} {value, 12:0.##} {unit}{(target.Length > 0 ? $" ({target})" : "")}"
            )
        );
}
