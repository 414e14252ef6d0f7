using Alburnum.Records.Sweeps;
using Alburnum.Tests.Shared;
using CsCheck;

namespace Alburnum.Records.Tests.Sweeps;

public sealed class SweepTableTests : IDisposable
{
    private const string Question = "spruce, minutes and moisture";
    private static readonly string[] Whys = ["no", "a, b", "say \"so\"", "  1,5 "];
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private string Path => _folder.At("map/sweep.csv");

    [Fact]
    public void What_was_added_is_read_again_with_commas_and_quotes_in_it() =>
        Gen.Select(Gen.Int[0, 99], Gen.Double[0, 1], Gen.Int[0, 3].Select(i => Whys[i]))
            .Array[1, 5]
            .Sample(
                rows =>
                {
                    if (File.Exists(Path))
                        File.Delete(Path);
                    SweptPoint[] points =
                    [
                        .. rows.SelectMany(row =>
                            new SweptPoint[]
                            {
                                new PredictedPoint(row.Item1, 0, 30, 20, Measures(Math.Round(row.Item2, 6))),
                                new ImpossiblePoint(row.Item1, 1, 30, 200, row.Item3.Trim()),
                            }
                        ),
                    ];
                    var table = SweepTable.Open(Path, Question);
                    foreach (var point in points)
                        table.Add(point);

                    Assert.Equal(points, SweepTable.Open(Path, Question).Points);
                },
                iter: 50,
                threads: 1
            );

    [Fact]
    public void A_last_line_cut_short_anywhere_is_left_out()
    {
        var table = SweepTable.Open(Path, Question);
        table.Add(new PredictedPoint(0, 0, 30, 20, Measures(0.25)));
        var first = File.ReadAllText(Path);
        table.Add(new PredictedPoint(1, 0, 60, 20, Measures(0.5)));
        var whole = File.ReadAllText(Path);

        for (var length = first.Length; length < whole.Length; length++)
        {
            File.WriteAllText(Path, whole[..length]);

            Assert.Single(SweepTable.Open(Path, Question).Points);
            Assert.Equal(first, File.ReadAllText(Path));
        }
    }

    [Fact]
    public void The_table_of_another_question_is_refused_and_kept()
    {
        SweepTable.Open(Path, Question).Add(new ImpossiblePoint(0, 0, 30, 200, "too wet"));
        var before = File.ReadAllText(Path);

        Assert.Throws<InputRefusedException>(() => SweepTable.Open(Path, "another"));
        Assert.Equal(before, File.ReadAllText(Path));
    }

    [Fact]
    public void A_cell_that_is_no_number_is_refused_with_its_line()
    {
        SweepTable.Open(Path, Question);
        File.AppendAllText(Path, "0,0,30,much,1,1,1,1,1,1,\n");

        var problem = Assert.Single(
            Assert.Throws<InputRefusedException>(() => SweepTable.Open(Path, Question)).Problems
        );

        Assert.Equal((3, "y"), (problem.Line, problem.Field));
    }

    private static SweptMeasures Measures(double share) =>
        new()
        {
            PieceShare = share,
            CoreShare = Math.Round(1 - share, 6),
            MeanDepthMm = 3.25,
            LeastDepthMm = 1,
            UptakeLPerM3 = 46,
            ZoneLPerM3 = 480,
        };
}
