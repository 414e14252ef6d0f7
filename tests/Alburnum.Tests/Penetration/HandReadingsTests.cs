using Alburnum.Penetration;
using Alburnum.Timber;
using CsCheck;

namespace Alburnum.Tests.Penetration;

public sealed class HandReadingsTests
{
    [Fact]
    public void The_treated_share_under_an_even_depth_is_what_counting_points_gives() =>
        Gen.Select(Gen.Int[0, 2], Gen.Double[40, 120], Gen.Double[0, 1])
            .Sample(
                (kind, diameter, part) =>
                {
                    Section section = kind switch
                    {
                        0 => new RoundSection(diameter),
                        1 => new HalfRoundSection(diameter),
                        _ => new QuarteredSection(diameter),
                    };
                    var depth = part * section.ThicknessMm / 2;
                    var share = HandReadings.Profile(section, [new(1, 0, depth, 0.5, null)]).TreatedShare.Value;
                    Assert.Equal(Counted(section, diameter / 2, depth), share, 0.015);
                },
                iter: 60
            );

    // Points of a grid that lie within the depth of a face, as a share of those that lie in the section.
    private static double Counted(Section section, double radius, double depth)
    {
        // A step is off by half of itself along every face: here about 0.01 of the whole at most.
        var stepMm = radius / 200;
        var (inside, near) = (0, 0);
        for (var x = -radius + stepMm / 2; x < radius; x += stepMm)
        {
            for (var y = -radius + stepMm / 2; y < radius; y += stepMm)
            {
                var toFace = Math.Min(
                    radius - double.Hypot(x, y),
                    section switch
                    {
                        HalfRoundSection => y,
                        QuarteredSection => Math.Min(x, y),
                        _ => radius,
                    }
                );
                if (toFace < 0)
                    continue;
                inside++;
                near += toFace < depth ? 1 : 0;
            }
        }
        return (double)near / inside;
    }
}
