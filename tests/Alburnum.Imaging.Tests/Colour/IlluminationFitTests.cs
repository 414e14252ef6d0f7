using Alburnum.Imaging.Colour;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Rectification;
using Alburnum.Imaging.Tests.Drawn;

namespace Alburnum.Imaging.Tests.Colour;

public class IlluminationFitTests
{
    [Theory]
    [InlineData(4)]
    [InlineData(9)]
    [InlineData(16)]
    public void The_light_fitted_from_sums_is_that_of_plain_least_squares(double dividedAtMm)
    {
        var samples = Samples(new PlainSection());
        var treated = samples.DepthMm.Select(depth => depth < dividedAtMm ? 1f : 0f).ToArray();

        var fitted = new IlluminationFit(samples).Of(treated);

        var plain = Plainly(samples, treated);
        Assert.Equal(plain[2], fitted.X, 1e-4);
        Assert.Equal(plain[3], fitted.Y, 1e-4);
        Assert.Equal(plain[4], fitted.XX, 1e-4);
        Assert.Equal(plain[5], fitted.XY, 1e-4);
        Assert.Equal(plain[6], fitted.YY, 1e-4);
        Assert.True(Math.Abs(fitted.YY) > 1e-3, "A drawing whose zones differ has something to fit.");
    }

    private static double[] Plainly(WoodSamples samples, float[] treated)
    {
        var normal = new double[7, 7];
        var right = new double[7];
        for (var n = 0; n < samples.Count; n++)
        {
            double x = samples.X[n];
            double y = samples.Y[n];
            double[] basis = [treated[n], 1 - treated[n], x, y, x * x, x * y, y * y];
            for (var i = 0; i < 7; i++)
            {
                right[i] += samples.Weight[n] * basis[i] * samples.L[n];
                for (var j = 0; j < 7; j++)
                    normal[i, j] += samples.Weight[n] * basis[i] * basis[j];
            }
        }
        double[] held = [0, 0, 1e-3, 1e-3, 0.02, 1e-3, 0.02];
        for (var i = 0; i < 7; i++)
            normal[i, i] += samples.Count * held[i];
        return LinearSystem.Solve(normal, right).Match(x => x, _ => throw new InvalidOperationException("Singular."));
    }

    private static WoodSamples Samples(PlainSection drawn)
    {
        var plan = SectionPlan.Rectangle(drawn.WidthMm, drawn.HeightMm);
        var map = Homography.FromFour(
            [new(0, 0), new(plan.WidthMm, 0), new(plan.WidthMm, plan.HeightMm), new(0, plan.HeightMm)],
            [.. drawn.Outline]
        );
        using var file = PhotographFile.Open("drawn.jpg", drawn.Draw());
        using var photo = file.Decode(1);
        return WoodSamples.Gather(RectifiedSection.From(photo, new SectionMap(map, null), plan, 6, 2), plan, []);
    }
}
