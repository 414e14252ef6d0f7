using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Rings;

namespace Alburnum.Imaging.Tests.Rings;

/// <summary>Pith from directions of rings that follow from geometry.</summary>
public class PithFinderTests
{
    private static readonly SectionPlan Plan = SectionPlan.Rectangle(100, 75);

    [Theory]
    [InlineData(50, 40)]
    [InlineData(20, 70)]
    [InlineData(50, 140)]
    [InlineData(-90, -40)]
    public void Normals_of_rings_meet_in_the_pith_within_its_uncertainty(double x, double y)
    {
        var off = new List<double>();
        for (var seed = 1; seed <= 20; seed++)
        {
            var pith = Found(Lines(new(x, y), 0.1, seed));
            var (dx, dy) = (pith.At.X - x, pith.At.Y - y);
            var away = double.Hypot(dx, dy);
            off.Add(away / pith.Along(dx / away, dy / away));
        }

        Assert.InRange(off.Count(z => z < 2), 17, 20);
    }

    [Fact]
    public void A_third_of_the_wood_gone_astray_does_not_move_it()
    {
        var lines = Lines(new(50, 40), 0.05, 3).Select((line, k) => k % 3 == 0 ? line with { Nx = 0, Ny = 1 } : line);
        var pith = Found([.. lines]);

        Assert.Equal(50, pith.At.X, 2.0);
        Assert.Equal(40, pith.At.Y, 2.0);
    }

    [Fact]
    public void Parallel_lines_and_noise_have_no_pith()
    {
        var random = new Random(7);
        var lines = Lines(new(50, 40), 0, 1);

        Assert.False(PithFinder.Find([.. lines.Select(line => line with { Nx = 1, Ny = 0 })], Plan).Has(out _, out _));
        Assert.False(
            PithFinder
                .Find(
                    [
                        .. lines.Select(line =>
                        {
                            var (sin, cos) = Math.SinCos(random.NextDouble() * Math.PI);
                            return line with { Nx = cos, Ny = sin };
                        }),
                    ],
                    Plan
                )
                .Has(out _, out _)
        );
    }

    private static Pith Found(IReadOnlyList<RingLine> lines) =>
        PithFinder
            .Find(lines, Plan)
            .Match(pith => pith, fault => throw new InvalidOperationException(fault.ToString()));

    // One patch every 6 mm, its normal astray by a normal angle.
    private static List<RingLine> Lines(PointMm pith, double spread, int seed)
    {
        var random = new Random(seed);
        var lines = new List<RingLine>();
        for (var y = 3.0; y < Plan.HeightMm; y += 6)
        for (var x = 3.0; x < Plan.WidthMm; x += 6)
        {
            var astray = spread * (Enumerable.Range(0, 12).Sum(_ => random.NextDouble()) - 6);
            var (sin, cos) = Math.SinCos(Math.Atan2(pith.Y - y, pith.X - x) + astray);
            lines.Add(new(new(x, y), cos, sin, 0.6));
        }
        return lines;
    }
}
