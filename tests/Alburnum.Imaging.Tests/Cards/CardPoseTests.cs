using Alburnum.DrawnSections;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Accuracy;

namespace Alburnum.Imaging.Tests.Cards;

/// <summary>Poles seen at an angle, with the card beside them and the true rim held: what the card tells of the pose, apart from how well a rim is found.</summary>
public sealed class CardPoseTests
{
    private const double Megapixels = 1.5;
    private const int Poles = 6;

    [Fact]
    public void With_the_card_a_tilted_pole_is_read_alike_on_its_near_and_its_far_side()
    {
        foreach (var photograph in Photographs())
        {
            // Held, since a rim drawn to the far edge of the pole's side errs once round as well.
            var read =
                photograph.Read(photograph.AskedWithCorners() with { OutlineIsExact = true }).Outcome as Read
                ?? throw new Xunit.Sdk.XunitException($"{photograph.Truth.Name} was not read.");
            var pose = read.Budget.MeanMm.Components.Single(component => component.Cause.Key == "pose").Contribution;
            // The mean keeps a share of what one side errs by.
            var statedMm = pose / DepthCauses.Pose.Share!.Value;

            Assert.InRange(statedMm, 0, 1);
            Assert.InRange(OnceRoundMm(photograph, read), 0, Math.Min(1, 3 * statedMm));
        }
    }

    private static IEnumerable<TestPhotograph> Photographs()
    {
        // No limit was set on these seeds, nor was this test.
        var seed = 8200;
        for (var k = 0; k < Poles; k++)
        {
            SectionScene scene;
            do scene = StratifiedScenes.Of(k % 2 == 0 ? Stratum.Easy : Stratum.Ordinary, ++seed, [], Megapixels);
            while (scene.Shape.Name != "round");
            var tilted = scene with
            {
                Lens = scene.Lens with { Tilt = (16 + (8.0 * k / (Poles - 1))) * Math.PI / 180 },
            };
            yield return TestPhotographs.Of(CardScenes.Beside(tilted, seed, belowMm: 0, $"card-tilted-{seed}"));
        }
    }

    // Amplitude of the part of the error of depth that goes once round.
    private static double OnceRoundMm(TestPhotograph photograph, Read read)
    {
        const int Parts = 1440;
        var (truth, face) = (photograph.Truth.Faces[0], photograph.Scene.Shape.Faces[0]);
        var first = read.Outline.PointsPx[0];
        var shift = Enumerable.Range(0, Parts).Select(k => face.LengthMm * k / Parts).MinBy(Away);
        var profile = read.Profile.Faces[0];
        double cos = 0,
            sin = 0;
        var count = 0;
        for (var i = 0; i < profile.PositionsMm.Count; i++)
        {
            var depth = truth.DepthAtMm((profile.PositionsMm[i] + shift) % face.LengthMm);
            if (profile.Excluded[i] || depth is not { } trueMm)
                continue;
            var turn = Math.SinCos(2 * Math.PI * i / profile.PositionsMm.Count);
            var error = profile.DepthMm[i] - trueMm;
            (cos, sin, count) = (cos + (error * turn.Cos), sin + (error * turn.Sin), count + 1);
        }
        Assert.True(count > profile.PositionsMm.Count / 2);
        return 2 * double.Hypot(cos, sin) / count;

        double Away(double alongMm)
        {
            var at = photograph.Scene.Lens.Project(face.At(alongMm));
            return double.Hypot(at.X - first.X, at.Y - first.Y);
        }
    }
}
