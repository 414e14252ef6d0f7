using Alburnum.Imaging.Outline;

namespace Alburnum.Imaging.Tests.Outline;

public class PatternSearchTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(5, -3)]
    [InlineData(-40, 17)]
    public void A_single_hill_is_climbed_to_its_top(double x, double y)
    {
        var (top, score) = Climb((x, y), p => -((p.X - 3) * (p.X - 3)) - (2 * (p.Y + 1) * (p.Y + 1)));

        Assert.Equal(3, top.X, 0.06);
        Assert.Equal(-1, top.Y, 0.06);
        Assert.Equal(0, score, 0.02);
    }

    [Fact]
    public void The_score_never_falls()
    {
        var random = new Random(3);
        for (var n = 0; n < 50; n++)
        {
            (double X, double Y) start = (random.NextDouble() * 10, random.NextDouble() * 10);
            double Score((double X, double Y) p) => Math.Sin(3 * p.X) + Math.Cos((2 * p.Y) + p.X);

            Assert.True(Climb(start, Score).Score >= Score(start));
        }
    }

    [Fact]
    public void A_forbidden_place_is_not_entered()
    {
        var (top, _) = Climb((0, 0), p => p.X > 1.5 ? double.NegativeInfinity : p.X - (p.Y * p.Y));

        Assert.InRange(top.X, 1, 1.5);
    }

    private static ((double X, double Y) Place, double Score) Climb(
        (double X, double Y) start,
        Func<(double X, double Y), double> score
    ) =>
        PatternSearch.Climb(
            start,
            score,
            (p, measure, by) => measure == 0 ? (p.X + by, p.Y) : (p.X, p.Y + by),
            measures: 2,
            firstStep: 16,
            lastStep: 0.05
        );
}
