using Alburnum.DrawnSections;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Timber;

namespace Alburnum.Imaging.Tests.Accuracy;

/// <summary>Sawn sections drawn through lenses of known bow.</summary>
public sealed class AccuracyOfLensTests
{
    private const int Photographs = 12;
    private const double Megapixels = 1.5;

    [Theory]
    [InlineData(0.1)]
    [InlineData(-0.05)]
    public void A_strong_bow_is_found_and_depths_are_nearer_for_it(double bow)
    {
        var read = Scenes(bow).Select(Read).ToList();
        var found = read.Where(each => each.Bow is not null).ToList();

        Assert.InRange(found.Count, Photographs / 2, Photographs);
        Assert.All(
            found,
            each =>
                Assert.InRange(
                    each.Bow!.Value.Value,
                    bow - (2 * each.Bow.Value.StandardUncertainty),
                    bow + (2 * each.Bow.Value.StandardUncertainty)
                )
        );
        // Where the section is small in the picture, the bow is too small to tell.
        Assert.True(Median(found, each => each.WithMm) < 0.5 * Median(found, each => each.WithoutMm));
    }

    [Fact]
    public void A_straight_lens_is_left_alone() => Assert.All(Scenes(0), scene => Assert.Null(Read(scene).Bow));

    private static double Median(List<LensScore> scores, Func<LensScore, double> of) =>
        scores.Select(of).Order().ElementAt(scores.Count / 2);

    private static IEnumerable<SectionScene> Scenes(double bow)
    {
        var seed = 7000;
        for (var k = 0; k < Photographs; k++)
        {
            SectionScene scene;
            do scene = StratifiedScenes.Of(k % 2 == 0 ? Stratum.Easy : Stratum.Ordinary, seed++, [], Megapixels);
            while (scene.Shape.Name == "round");
            yield return scene with
            {
                Name = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"lens-{bow:0.00}-{seed}"),
                Lens = scene.Lens.Bowed(bow),
            };
        }
    }

    private static LensScore Read(SectionScene scene)
    {
        var photograph = TestPhotographs.Of(scene);
        var reading = SectionReader.Read(
            scene.Name + ".jpg",
            photograph.Jpeg,
            new ReadingRequest
            {
                Section = new RectangularSection(photograph.Truth.SectionMm[0], photograph.Truth.SectionMm[1]),
                OutlinePx = [.. photograph.Truth.OutlinePx.Select(p => new PointPx(p.X, p.Y))],
                Candidates = KnownIndicators.All,
            },
            CancellationToken.None
        );
        return new(
            (reading.Outcome as Read)?.Scale.LensBow,
            Scoring.WithOutlineGiven(photograph, CancellationToken.None).Depths?.LocalMm ?? double.MaxValue,
            Scoring.WithOutlineHeld(photograph, CancellationToken.None).Depths?.LocalMm ?? double.MaxValue
        );
    }

    /// <summary>The bow found, and the local error of depth with the lens undone and with the true corners held as they are drawn.</summary>
    private sealed record LensScore(Estimate? Bow, double WithMm, double WithoutMm);
}
