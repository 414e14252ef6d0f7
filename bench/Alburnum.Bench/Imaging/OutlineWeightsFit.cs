using System.Collections.Concurrent;
using System.Globalization;
using Alburnum.DrawnSections;
using Alburnum.Imaging;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outline;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Tests.Accuracy;

namespace Alburnum.Bench.Imaging;

/// <summary>
/// Fits the weights by which the likeliest outline is chosen, on drawings that the accuracy tests do not use, and judges them on those left out of the fit.
/// </summary>
internal static class OutlineWeightsFit
{
    // The accuracy tests have the seeds up to 76.
    private const int FirstSeed = 1001;
    private const int Hard = 120;
    private const int Ordinary = 40;
    private const int Parts = 5;

    /// <summary>An outline nearer than this to the true one is right, mm.</summary>
    private const double RightMm = 1;

    /// <summary>What each of <see cref="OutlineLook.Terms"/> is called.</summary>
    private static readonly string[] TermNames =
    [
        "support",
        "least support",
        "contrast",
        "inside alike",
        "outside alike",
        "misfit",
        "log size",
        "log size either way",
    ];

    /// <summary>One photograph's candidates, look by look.</summary>
    private sealed record Case(bool IsRound, IReadOnlyList<Look> Looks);

    /// <summary>What one look found, and how far each of it is from the truth.</summary>
    private sealed record Look(IReadOnlyList<OutlineCandidate> Candidates, IReadOnlyList<double> ErrorMm);

    public static void Run()
    {
        var cases = new ConcurrentDictionary<(Stratum, int), Case>();
        var wanted = Enumerable
            .Range(FirstSeed, Hard)
            .Select(seed => (Stratum.Hard, seed))
            .Concat(Enumerable.Range(FirstSeed, Ordinary).Select(seed => (Stratum.Ordinary, seed)));
        Parallel.ForEach(
            wanted,
            new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
            key => cases[key] = Looked(TestPhotographs.Of(key.Item1, key.seed))
        );
        var all = cases.OrderBy(c => c.Key).Select(c => c.Value).ToList();
        Report("Sides", [.. all.Where(c => !c.IsRound)], OutlineWeights.Sides);
        Report("Rim", [.. all.Where(c => c.IsRound)], OutlineWeights.Rim);
    }

    private static void Report(string name, IReadOnlyList<Case> cases, OutlineWeights shipped)
    {
        var to = Console.Out;
        var possible = cases.Count(c => c.Looks.Any(look => look.ErrorMm.Any(error => error <= RightMm)));
        to.WriteLine($"{name}: {cases.Count} photographs, in {possible} the right outline is among those weighed");
        to.WriteLine($"  as shipped: {Judged(cases.Select(c => (c, shipped)))}");
        var leftOut = Enumerable
            .Range(0, Parts)
            .SelectMany(part =>
            {
                var fitted = Fitted(cases.Where((_, i) => i % Parts != part));
                return cases.Where((_, i) => i % Parts == part).Select(c => (c, fitted));
            });
        to.WriteLine($"  judged where left out of the fit: {Judged(leftOut)}");
        var weights = Fitted(cases);
        to.WriteLine($"  fitted to all: {Judged(cases.Select(c => (c, weights)))}");
        foreach (var (term, weight) in TermNames.Zip(weights.Terms))
            to.WriteLine(string.Create(CultureInfo.InvariantCulture, $"    {term}: {weight:0.0}"));
        to.WriteLine(string.Create(CultureInfo.InvariantCulture, $"    none: {weights.None:0.0}"));
    }

    private static OutlineWeights Fitted(IEnumerable<Case> cases)
    {
        var fitted = ConditionalLogit.Fit([
            .. cases
                .SelectMany(c => c.Looks)
                .Select(look => new Choice(
                    [.. look.Candidates.Select(c => c.Look.Terms)],
                    [.. look.ErrorMm.Select(error => error <= RightMm)]
                )),
        ]);
        return new(fitted[..^1], fitted[^1]);
    }

    private static string Judged(IEnumerable<(Case Case, OutlineWeights Weights)> judged)
    {
        var read = judged.Select(j => Taken(j.Case, j.Weights)).ToList();
        return string.Join(
            "; ",
            new[] { 0.5, 0.6, 0.7, 0.8 }.Select(sure =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"sure above {sure}: {read.Count(r => r.Confidence > sure && r.ErrorMm <= RightMm)} right, {read.Count(r => r.Confidence > sure && !(r.ErrorMm <= RightMm))} wrong"
                )
            )
        );
    }

    // The outline that would be taken, and how wrong it is.
    private static (double Confidence, double ErrorMm) Taken(Case of, OutlineWeights weights)
    {
        var surest = OutlineFinder.Surest(of.Looks.Select(look => look.Candidates), weights);
        if (!surest.Has(out var taken, out _))
            return (0, double.PositiveInfinity);
        var error = of
            .Looks.SelectMany(look => look.Candidates.Zip(look.ErrorMm))
            .First(c => ReferenceEquals(c.First.Outline.Points, taken.Points))
            .Second;
        return (taken.Confidence, error);
    }

    private static Case Looked(TestPhotograph photograph)
    {
        var truth = photograph.Truth;
        var isRound = truth.Shape == "round";
        using var file = PhotographFile.Open(truth.Name + ".jpg", photograph.Jpeg);
        // As the reader decodes it where no outline is given.
        using var photo = file.Decode(SectionReader.LeastScale(file.WidthPx, file.HeightPx, truth.SectionMm.Max()));
        var looks = isRound
            ? OutlineFinder.RimLooks(photo)
            : OutlineFinder.SideLooks(photo, truth.SectionMm[0], truth.SectionMm[1]);
        var error = isRound ? RimError(photograph) : CornerError(truth);
        return new(isRound, [.. looks.Select(look => new Look(look, [.. look.Select(c => error(c.Outline.Points))]))]);
    }

    private static Func<IReadOnlyList<PointPx>, double> CornerError(SectionTruth truth)
    {
        var corners = truth.OutlinePx.Select(p => new PointPx(p.X, p.Y)).ToList();
        return found =>
            Enumerable
                .Range(0, 4)
                .Min(turn => Enumerable.Range(0, 4).Max(k => found[k].DistanceTo(corners[(k + turn) % 4])))
            / truth.PixelsPerMm;
    }

    private static Func<IReadOnlyList<PointPx>, double> RimError(TestPhotograph photograph)
    {
        const int Places = 720;
        var face = photograph.Scene.Shape.Faces[0];
        var rim = Enumerable
            .Range(0, Places)
            .Select(k => photograph.Scene.Lens.Project(face.At(face.LengthMm * k / Places)))
            .Select(p => new PointPx(p.X, p.Y))
            .ToList();
        return found => found.Max(p => rim.Min(r => r.DistanceTo(p))) / photograph.Truth.PixelsPerMm;
    }
}
