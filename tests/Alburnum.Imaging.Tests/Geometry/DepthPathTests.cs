using Alburnum.Imaging.Geometry;
using CsCheck;

namespace Alburnum.Imaging.Tests.Geometry;

public class DepthPathTests
{
    [Fact]
    public void The_path_found_is_as_good_as_the_best_of_all_paths()
    {
        const int Rows = 4;
        Gen.Float[-2, 2]
            .Array[5 * Rows]
            .Sample(
                evidence =>
                {
                    int[] reach = [Rows, Rows, 3, Rows, Rows];
                    var found = DepthPath.Find(evidence, Rows, reach, closed: false, new SlopeCost(1, 0.7f, 1.1f));
                    var least = double.MaxValue;
                    for (var code = 0; code < 3125; code++)
                    {
                        int[] path = [code % 5, code / 5 % 5, code / 25 % 5, code / 125 % 5, code / 625];
                        least = Math.Min(least, Cost(path));
                    }
                    Assert.Equal(least, Cost(found), 1e-4);

                    double Cost(int[] path)
                    {
                        double cost = 0;
                        for (var i = 0; i < path.Length; i++)
                        {
                            for (var j = 0; j < Math.Min(path[i], reach[i]); j++)
                                cost -= evidence[(i * Rows) + j];
                            if (i > 0)
                                cost += Math.Min(1.1, 0.7 * Math.Max(0, Math.Abs(path[i] - path[i - 1]) - 1));
                        }
                        return cost;
                    }
                },
                iter: 60
            );
    }

    [Fact]
    public void A_narrow_streak_does_not_move_the_front_and_a_wide_patch_does()
    {
        const int Columns = 60;
        const int Rows = 30;
        float[] Evidence(int from, int to)
        {
            var evidence = new float[Columns * Rows];
            for (var i = 0; i < Columns; i++)
            for (var j = 0; j < Rows; j++)
                evidence[(i * Rows) + j] = j < (i >= from && i < to ? 25 : 10) ? 2 : -2;
            return evidence;
        }
        var reach = Enumerable.Repeat(Rows, Columns).ToArray();

        var streak = DepthPath.Find(Evidence(30, 33), Rows, reach, closed: false, new SlopeCost(1, 9));
        var patch = DepthPath.Find(Evidence(20, 40), Rows, reach, closed: false, new SlopeCost(1, 9));

        // The free slope alone lets it rise by one row a column, from both sides.
        Assert.True(streak[31] <= 13, $"{streak[31]}");
        Assert.Equal(25, patch[30]);
    }

    [Fact]
    public void A_closed_face_meets_itself()
    {
        const int Columns = 40;
        const int Rows = 20;
        var evidence = new float[Columns * Rows];
        for (var i = 0; i < Columns; i++)
        for (var j = 0; j < Rows; j++)
            evidence[(i * Rows) + j] = j < 8 + (4 * Math.Cos(2 * Math.PI * i / Columns)) ? 1 : -1;
        var reach = Enumerable.Repeat(Rows, Columns).ToArray();
        var path = DepthPath.Find(evidence, Rows, reach, closed: true, new SlopeCost(1, 4));

        Assert.True(Math.Abs(path[0] - path[^1]) <= 1, $"{path[0]} and {path[^1]}");
        Assert.Equal(12, path[0]);
        Assert.Equal(4, path[Columns / 2]);
    }
}
