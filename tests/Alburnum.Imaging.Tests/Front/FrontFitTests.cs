using Alburnum.Imaging.Front;
using CsCheck;

namespace Alburnum.Imaging.Tests.Front;

public class FrontFitTests
{
    [Fact]
    public void The_quick_tally_and_its_plain_twin_agree() =>
        Gen.Select(Gen.Double[-0.5, 1.5].Array[0, 45], Gen.Double[0, 3], Gen.Double[-1, 2])
            .Sample(
                (f, w, y) =>
                {
                    double[][] quick = [new double[f.Length], new double[f.Length], new double[f.Length]];
                    double[][] plain = [new double[f.Length], new double[f.Length], new double[f.Length]];
                    for (var twice = 0; twice < 2; twice++)
                    {
                        FrontFit.Tally(f, w, y, quick[0], quick[1], quick[2]);
                        FrontFit.TallyPlainly(f, w, y, plain[0], plain[1], plain[2]);
                    }
                    for (var k = 0; k < 3; k++)
                    for (var n = 0; n < f.Length; n++)
                        Assert.Equal(plain[k][n], quick[k][n], 1e-12);
                }
            );

    [Fact]
    public void A_front_shape_is_half_at_the_front_of_a_sharp_step_and_falls_inward()
    {
        var shape = new FrontShape(blurMm: 0.2, Halo.None, read: share => share);

        // From 2 mm inward to 2 mm outward.
        var along = shape.Along(2, 81).ToArray();

        Assert.Equal(0, along[0], 1e-6);
        Assert.Equal(0.5, along[40], 1e-6);
        Assert.Equal(1, along[80], 1e-6);
        Assert.Equal(along.Order(), along);
        // One standard deviation outward of the front: the normal distribution's 84 %.
        Assert.Equal(0.8413, along[44], 1e-3);
    }
}
