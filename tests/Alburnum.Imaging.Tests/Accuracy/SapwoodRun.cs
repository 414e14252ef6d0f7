using System.Collections.Concurrent;
using System.Globalization;
using Alburnum.DrawnSections;
using Alburnum.Imaging.Reading;

namespace Alburnum.Imaging.Tests.Accuracy;

/// <summary>One photograph of a section on which nothing is treated, read and compared.</summary>
/// <param name="Name">The photograph, and whether what was sprayed on it was named.</param>
/// <param name="IsTakenForTreated">Whether a depth was read, or the section was taken to be treated throughout.</param>
/// <param name="Sapwood">What was measured of its sapwood; null where nothing was.</param>
/// <param name="WhyNot">What came of it otherwise.</param>
internal sealed record SapwoodScore(string Name, bool IsTakenForTreated, SapwoodMeasured? Sapwood, string WhyNot);

/// <summary>Sapwood as measured, against the truth.</summary>
/// <param name="Share">Its share of the section.</param>
/// <param name="TrueShare">The true one.</param>
/// <param name="DepthMm">Root mean square error of its depth, over the positions at which heartwood is met both truly and as measured.</param>
/// <param name="BorderMm">Stated standard uncertainty of the border.</param>
internal sealed record SapwoodMeasured(Estimate Share, double TrueShare, double DepthMm, double BorderMm)
{
    /// <summary>Whether the 95 % interval of the share holds the truth.</summary>
    public bool IsShareHeld => Math.Abs(Share.Value - TrueShare) <= 1.96 * Share.StandardUncertainty;
}

/// <summary>Every photograph of the untreated set, corners given, no heartwood shown: with what was sprayed named, and without.</summary>
public sealed class SapwoodRun
{
    private const int FirstSeed = 101;
    private const int Photographs = 24;

    private readonly Lazy<ILookup<(SapwoodKind Kind, bool IsNamed), SapwoodScore>> _scores = new(ReadAll);

    internal IReadOnlyList<SapwoodScore> this[SapwoodKind kind, bool isNamed] => [.. _scores.Value[(kind, isNamed)]];

    private static ILookup<(SapwoodKind Kind, bool IsNamed), SapwoodScore> ReadAll()
    {
        var scores = new ConcurrentBag<((SapwoodKind Kind, bool IsNamed) Key, SapwoodScore Score)>();
        Parallel.ForEach(
            Enum.GetValues<SapwoodKind>()
                .SelectMany(kind => Enumerable.Range(FirstSeed, Photographs).Select(seed => (kind, seed))),
            new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
            key =>
            {
                var photograph = TestPhotographs.Of(SapwoodScenes.Of(key.kind, key.seed));
                foreach (var isNamed in (bool[])[true, false])
                    scores.Add(((key.kind, isNamed), Read(key.kind, photograph, isNamed)));
            }
        );
        File.WriteAllLines(
            Path.Combine(Repository.Folder("artifacts"), "sapwood.csv"),
            scores
                .Select(each => each.Score)
                .Select(score =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{score.Name},{score.IsTakenForTreated},{score.Sapwood?.Share.Value:0.0000},{score.Sapwood?.Share.StandardUncertainty:0.0000},{score.Sapwood?.TrueShare:0.0000},{score.Sapwood?.DepthMm:0.00},{score.Sapwood?.BorderMm:0.00},\"{score.WhyNot}\""
                    )
                )
                .Order(StringComparer.Ordinal)
        );
        return scores.ToLookup(each => each.Key, each => each.Score);
    }

    private static SapwoodScore Read(SapwoodKind kind, TestPhotograph photograph, bool isNamed)
    {
        var (scene, truth) = (photograph.Scene, photograph.Truth);
        var reading = photograph.Read(
            photograph.AskedWithCorners() with
            {
                Indicator = isNamed ? KnownIndicators.OfDrawn(scene.Indicator.Name) : null,
                HeartwoodReagent =
                    kind == SapwoodKind.HeartwoodReagent
                        ? KnownIndicators.Reagents.Single(reagent => reagent.Key == scene.Grain.Timber.Name)
                        : null,
            }
        );
        var ended = reading.Outcome as NotDetermined;
        return new(
            $"{truth.Name}-{(isNamed ? "named" : "not-named")}",
            ended is null or { Fault: NoFront { IsTreated: true } },
            ended?.Sapwood is { } sapwood ? Measured(scene, sapwood) : null,
            ended is null
                ? "read"
                : $"{ended.Fault.GetType().Name} {(ended.Heartwood as UnknownHeartwood)?.Fault} {ended.Indicator?.Key}"
        );
    }

    private static SapwoodMeasured Measured(SectionScene scene, SapwoodAlone sapwood)
    {
        var isRound = scene.Shape.Name == "round";
        List<double> squares =
        [
            .. from face in isRound ? [] : sapwood.Faces
            from i in Enumerable.Range(0, face.DepthMm.Count)
            let measured = face.DepthMm[i]
            let truly = SapwoodTruth.DepthMm(
                scene,
                face.Number - 1,
                (i + 0.5) * face.StepMm,
                Math.Min(scene.Shape.HalfExtent.X, scene.Shape.HalfExtent.Y)
            )
            where measured is not null && truly is not null
            select (measured.Value - truly.Value) * (measured.Value - truly.Value),
        ];
        var u = sapwood.Heartwood is DetectedHeartwood detected
            ? detected.BorderUncertaintyMm
            : throw new InvalidOperationException($"{scene.Name}: nobody showed a heartwood.");
        return new(sapwood.Share, SapwoodTruth.Share(scene), squares.Count == 0 ? 0 : Math.Sqrt(squares.Average()), u);
    }
}
