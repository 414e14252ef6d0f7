using System.Collections.Concurrent;
using Alburnum.DrawnSections;

namespace Alburnum.Imaging.Tests.Accuracy;

/// <summary>Every photograph of the test set, drawn once and read in three ways.</summary>
public sealed class AccuracyRun
{
    private readonly Lazy<IReadOnlyList<StratumRun>> _runs = new(ReadAll);

    internal StratumRun this[Stratum stratum] => _runs.Value.Single(run => run.Stratum == stratum);

    private static List<StratumRun> ReadAll()
    {
        var photographs = Enum.GetValues<Stratum>()
            .SelectMany(stratum => TestPhotographs.Seeds(stratum).Select(seed => (Stratum: stratum, Seed: seed)))
            .ToList();
        var scores = new ConcurrentDictionary<(Stratum, int), (PhotographScore, PhotographScore, PhotographScore)>();
        Parallel.ForEach(
            photographs,
            new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
            key =>
            {
                var photograph = TestPhotographs.Of(key.Stratum, key.Seed);
                scores[key] = (
                    Scoring.WithOutlineGiven(photograph, CancellationToken.None),
                    Scoring.WithOutlineClicked(photograph, CancellationToken.None),
                    Scoring.ByItself(photograph, CancellationToken.None)
                );
            }
        );
        var runs = Enum.GetValues<Stratum>()
            .Select(stratum =>
            {
                var ofStratum = TestPhotographs.Seeds(stratum).Select(seed => scores[(stratum, seed)]).ToList();
                return new StratumRun(
                    stratum,
                    new(stratum, [.. ofStratum.Select(score => score.Item1)]),
                    new(stratum, [.. ofStratum.Select(score => score.Item2)]),
                    new(stratum, [.. ofStratum.Select(score => score.Item3)])
                );
            })
            .ToList();
        var folder = Repository.Folder("artifacts");
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "accuracy.md"), AccuracyTable.Markdown(runs));
        File.WriteAllText(Path.Combine(folder, "accuracy.csv"), AccuracyTable.EachPhotograph(runs));
        return runs;
    }
}

/// <summary>One stratum read with the outline given, clicked, and found by the reader itself.</summary>
internal sealed record StratumRun(Stratum Stratum, StratumResult Given, StratumResult Clicked, StratumResult ByItself);
