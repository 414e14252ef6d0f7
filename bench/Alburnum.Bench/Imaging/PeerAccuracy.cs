using System.Globalization;
using Alburnum.DrawnSections;
using Alburnum.Imaging.Tests.Accuracy;
using OpenCvSharp;

namespace Alburnum.Bench.Imaging;

/// <summary>The peer over the sawn sections of the accuracy test set, corners given.</summary>
internal static class PeerAccuracy
{
    public static void Run()
    {
        var to = Console.Out;
        to.WriteLine(
            "| stratum | photographs | local depth, mm | mean depth, mm | minimum (median), mm | treated share, points |"
        );
        to.WriteLine("|---|---|---|---|---|---|");
        foreach (var stratum in Enum.GetValues<Stratum>())
        {
            var errors = TestPhotographs
                .Seeds(stratum)
                .Select(seed => TestPhotographs.Of(stratum, seed))
                .Where(photograph => photograph.Truth.OutlinePx.Count == 4)
                .Select(Errors)
                .ToList();
            var minima = errors.Select(error => error.Minimum).Order().ToList();
            to.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"| {stratum.ToString().ToLowerInvariant()} | {errors.Count} | {errors.Average(e => e.Local):0.00} | {errors.Average(e => e.Mean):0.00} | {minima[minima.Count / 2]:0.00} | {errors.Average(e => e.Share):0.0} |"
                )
            );
        }
    }

    private static (double Local, double Mean, double Minimum, double Share) Errors(TestPhotograph photograph)
    {
        var truth = photograph.Truth;
        var depthTruth = truth.Depth ?? throw new InvalidOperationException($"{truth.Name} has no true depth.");
        using var decoded = Cv2.ImDecode(photograph.Jpeg, ImreadModes.Color);
        Point2f[] corners = [.. truth.OutlinePx.Select(p => new Point2f((float)p.X, (float)p.Y))];
        var depths = OpenCvPeer.Depths(decoded, corners, truth.SectionMm[0], truth.SectionMm[1]);
        // Compared only where the truth deems it fair; a script has no exclusions of its own.
        var pairs = depths
            .SelectMany((face, k) => face.Select((depth, i) => (Read: depth, True: truth.Faces[k].DepthAtMm(i + 0.5))))
            .Where(pair => pair.True is not null)
            .Select(pair => (pair.Read, True: pair.True ?? 0))
            .ToList();
        var share = OpenCvPeer.TreatedShare(decoded, corners, truth.SectionMm[0], truth.SectionMm[1]);
        return (
            pairs.Average(pair => Math.Abs(pair.Read - pair.True)),
            Math.Abs(pairs.Average(pair => pair.Read) - depthTruth.MeanMm),
            Math.Abs(pairs.Min(pair => pair.Read) - depthTruth.MinMm),
            100 * Math.Abs(share - truth.TreatedShare)
        );
    }
}
