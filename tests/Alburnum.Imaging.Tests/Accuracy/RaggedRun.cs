using System.Collections.Concurrent;
using Alburnum.DrawnSections;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;

namespace Alburnum.Imaging.Tests.Accuracy;

/// <summary>Errors of depth at every place of the ragged set, mm, reading minus truth, corners given.</summary>
/// <remarks>A place on a rim is sought where its front lies in the photograph: what the pose of a disc turns round the rim is no error of depth.</remarks>
public sealed class RaggedRun
{
    private const int FirstSeed = 101;
    private const int Photographs = 8;

    /// <summary>A place on a rim is sought so far to either side, in such steps, mm.</summary>
    private const double SoughtMm = 6;

    private const double SoughtStepMm = 0.1;

    private readonly Lazy<ConcurrentDictionary<(Stratum Stratum, int Seed), List<double>>> _errors = new(ReadAll);

    internal IReadOnlyList<double> this[Stratum stratum] =>
        [.. _errors.Value.Where(each => each.Key.Stratum == stratum).SelectMany(each => each.Value).Order()];

    private static ConcurrentDictionary<(Stratum Stratum, int Seed), List<double>> ReadAll()
    {
        var errors = new ConcurrentDictionary<(Stratum Stratum, int Seed), List<double>>();
        Parallel.ForEach(
            Enum.GetValues<Stratum>()
                .SelectMany(stratum => Enumerable.Range(FirstSeed, Photographs).Select(seed => (stratum, seed))),
            new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
            key => errors[key] = Errors(TestPhotographs.Of(RaggedScenes.Of(key.stratum, key.seed)))
        );
        return errors;
    }

    private static List<double> Errors(TestPhotograph photograph)
    {
        var truth = photograph.Truth;
        if (photograph.Read(photograph.AskedWithCorners()).Outcome is not Read read)
            return [];
        var first = read.Outline.PointsPx[0];
        var errors = new List<double>();
        foreach (var (of, placePx) in Places(read))
        {
            var (face, alongMm) =
                truth.Shape == "round"
                    ? (truth.Faces[0], AlongRimMm(photograph.Scene, placePx, of.DepthMm))
                    : (truth.Faces[(of.Face + FirstCorner(truth, first)) % truth.Faces.Count], of.AlongMm);
            if (face.DepthAtMm(alongMm) is { } depthMm)
                errors.Add(of.DepthMm - depthMm);
        }
        return errors;
    }

    private static int FirstCorner(SectionTruth truth, PointPx first) =>
        Enumerable.Range(0, truth.OutlinePx.Count).MinBy(k => Apart2(truth.OutlinePx[k], first));

    // Every position that was read, with where its front lies in the photograph: lines are unbroken stretches of two positions or more.
    private static IEnumerable<((int Face, double AlongMm, double DepthMm), PointPx)> Places(Read read)
    {
        using var line = read.BoundaryPx.GetEnumerator();
        for (var f = 0; f < read.Profile.Faces.Count; f++)
        {
            var face = read.Profile.Faces[f];
            for (var i = 0; i < face.DepthMm.Count; i++)
            {
                var to = i;
                while (to < face.DepthMm.Count && !face.Excluded[to])
                    to++;
                if (to - i > 1 && line.MoveNext())
                    for (var k = i; k < to; k++)
                        yield return ((f, face.PositionsMm[k], face.DepthMm[k]), line.Current[k - i]);
                i = to;
            }
        }
    }

    private static double AlongRimMm(SectionScene scene, PointPx placePx, double depthMm)
    {
        var rim = scene.Shape.Faces[0];
        double Miss(double s) => Apart2(scene.Lens.Project(rim.At(s) + rim.Inward(s) * depthMm), placePx);
        var near = Enumerable.Range(0, (int)(rim.LengthMm / SoughtMm)).Select(k => k * SoughtMm).MinBy(Miss);
        var steps = (int)(SoughtMm / SoughtStepMm);
        var along = Enumerable.Range(-steps, 2 * steps).Select(k => near + k * SoughtStepMm).MinBy(Miss);
        return (along + rim.LengthMm) % rim.LengthMm;
    }

    private static double Apart2(Point a, PointPx b) => ((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y));
}
