using System.Collections.Concurrent;
using System.Globalization;
using Alburnum.DrawnSections;
using Alburnum.Imaging.Reading;

namespace Alburnum.Imaging.Tests.Accuracy;

/// <summary>One photograph of the heartwood set read and compared.</summary>
/// <param name="Name">The photograph.</param>
/// <param name="UncertaintyMm">Stated standard uncertainty of the border; null where it was not detected.</param>
/// <param name="RootMeanSquareMm">Root mean square distance of the detected border from the true one.</param>
/// <param name="IsShareHeld">Whether the 95 % interval of the sapwood's treated share holds the truth.</param>
/// <param name="WhyNot">Why nothing was detected; empty where something was.</param>
internal sealed record HeartwoodScore(
    string Name,
    double? UncertaintyMm,
    double RootMeanSquareMm,
    bool IsShareHeld,
    string WhyNot
)
{
    public bool IsDetected => UncertaintyMm is not null;
}

/// <summary>Every photograph of the heartwood set, corners given, no heartwood shown.</summary>
public sealed class HeartwoodRun
{
    private const int FirstSeed = 101;
    private const int Photographs = 24;

    private readonly Lazy<Dictionary<HeartwoodKind, List<HeartwoodScore>>> _scores = new(ReadAll);

    internal IReadOnlyList<HeartwoodScore> this[HeartwoodKind kind] => _scores.Value[kind];

    private static Dictionary<HeartwoodKind, List<HeartwoodScore>> ReadAll()
    {
        var scores = new ConcurrentDictionary<(HeartwoodKind Kind, int Seed), HeartwoodScore>();
        Parallel.ForEach(
            Enum.GetValues<HeartwoodKind>()
                .SelectMany(kind => Enumerable.Range(FirstSeed, Photographs).Select(seed => (kind, seed))),
            new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
            key => scores[key] = Read(TestPhotographs.Of(HeartwoodScenes.Of(key.kind, key.seed)))
        );
        var all = Enum.GetValues<HeartwoodKind>()
            .ToDictionary(
                kind => kind,
                kind => scores.Where(each => each.Key.Kind == kind).Select(each => each.Value).ToList()
            );
        File.WriteAllLines(
            Path.Combine(Repository.Folder("artifacts"), "heartwood.csv"),
            all.Values.SelectMany(each => each)
                .Select(score =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{score.Name},{score.UncertaintyMm:0.00},{score.RootMeanSquareMm:0.00},{score.IsShareHeld},\"{score.WhyNot}\""
                    )
                )
                .Order(StringComparer.Ordinal)
        );
        return all;
    }

    private static HeartwoodScore Read(TestPhotograph photograph)
    {
        var (scene, truth) = (photograph.Scene, photograph.Truth);
        var reading = photograph.Read(photograph.AskedWithCorners());
        var read = reading.Outcome as Read ?? throw new InvalidOperationException($"{truth.Name} was not read.");
        var border = HeartwoodTruth.BorderPx(scene);
        if (read.Heartwood is not DetectedHeartwood heartwood)
            return new(truth.Name, null, 0, false, $"{read.Heartwood}");
        var u = heartwood.BorderUncertaintyMm;
        if (border.Count == 0)
            return new(truth.Name, u, 0, false, "");
        var square = heartwood
            .BorderPx.SelectMany(line => line)
            .Average(p => border.Min(b => ((b.X - p.X) * (b.X - p.X)) + ((b.Y - p.Y) * (b.Y - p.Y))));
        var share = read.Profile.SapwoodTreatedShare!.Value;
        return new(
            truth.Name,
            u,
            Math.Sqrt(square) / truth.PixelsPerMm,
            Math.Abs(share.Value - truth.SapwoodTreatedShare!.Value) <= 1.96 * share.StandardUncertainty,
            ""
        );
    }
}
