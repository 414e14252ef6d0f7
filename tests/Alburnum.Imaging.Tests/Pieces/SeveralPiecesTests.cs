using Alburnum.DrawnSections;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Accuracy;
using Alburnum.Timber;

namespace Alburnum.Imaging.Tests.Pieces;

/// <summary>Several cut ends on one photograph. Limits as they were set before any of these seeds was drawn; the reader does not keep all of them yet.</summary>
public sealed class SeveralPiecesTests(ITestOutputHelper output)
{
    private const double Megapixels = 3;

    /// <summary>No corner or rim point that is believed is farther from the truth, mm.</summary>
    private const double MostOutlineMm = 1;

    /// <summary>No mean depth is farther from that of the piece alone, its true outline given on the same photograph, mm.</summary>
    private const double MostFromAloneMm = 0.3;

    /// <summary>Grounds without the colours of wood.</summary>
    private static readonly Ground[] Plain = [Ground.GreyCard, Ground.WhiteCard, Ground.DarkCloth, Ground.Concrete];

    [Theory]
    [InlineData(false, 0.85)]
    [InlineData(true, 0.6)]
    public void On_plain_ground_most_pieces_are_read_each_under_its_own_number_and_none_wrongly(
        bool isRound,
        double leastShare
    )
    {
        var (read, all) = (0, 0);
        foreach (var bench in Benches(9701, 6, isRound, BenchTrouble.None, Plain))
        {
            if (Readings(bench, bench.Sections) is not { } readings)
            {
                all += bench.Sections;
                continue;
            }
            Assert.Equal(Enumerable.Range(1, bench.Sections), readings.Select(reading => reading.Piece!.Number));
            all += readings.Count;
            read += readings.Where((reading, k) => IsRight(bench, k, reading)).Count();
        }

        output.WriteLine($"{read} of {all}");
        Assert.InRange((double)read / all, leastShare, 1);
    }

    [Theory]
    [InlineData(BenchTrouble.Touching)]
    [InlineData(BenchTrouble.HalfOut)]
    [InlineData(BenchTrouble.Offcut)]
    [InlineData(BenchTrouble.Tool)]
    public void Whatever_is_amiss_on_the_bench_no_piece_is_read_wrongly(BenchTrouble trouble)
    {
        foreach (var isRound in new[] { false, true })
        foreach (var bench in Benches(9801, 2, isRound, trouble, Plain))
        foreach (var (k, reading) in (Readings(bench, bench.Sections) ?? []).Index())
            IsRight(bench, k, reading);
    }

    [Fact]
    public void Another_number_of_pieces_than_was_said_is_refused_with_both_numbers()
    {
        var bench = BenchScenes.Of(9201, isRound: false, Ground.GreyCard, BenchTrouble.None, Megapixels);

        var refused = Assert.Throws<InputRefusedException>(() => Read(bench, bench.Sections + 1));

        var problem = Assert.Single(refused.Problems);
        Assert.Equal("pieces", problem.Field);
        Assert.StartsWith($"{bench.Sections} things", problem.Found, StringComparison.Ordinal);
        Assert.StartsWith($"{bench.Sections + 1}, ", problem.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Ends_that_touch_are_not_told_apart_but_said()
    {
        var bench = BenchScenes.Of(9203, isRound: false, Ground.GreyCard, BenchTrouble.Touching, Megapixels);

        var refused = Assert.Throws<InputRefusedException>(() => Read(bench, bench.Sections));

        Assert.Contains("touch", Assert.Single(refused.Problems).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Labels_go_to_the_pieces_in_reading_order()
    {
        var bench = BenchScenes.Of(9201, isRound: false, Ground.GreyCard, BenchTrouble.None, Megapixels);
        string[] labels = [.. Enumerable.Range(1, bench.Sections).Select(k => $"K{k}")];

        var readings = Read(bench, bench.Sections, labels);

        Assert.Equal(labels, readings.Select(reading => reading.Piece!.Name));
        Assert.All(bench.Truths().Zip(readings), pair => Assert.True(Holds(pair.First, pair.Second.Piece!.MiddlePx)));
    }

    [Fact]
    public void A_cutting_shows_the_same_places_however_the_file_is_turned()
    {
        var bench = BenchScenes.Of(9201, isRound: false, Ground.GreyCard, BenchTrouble.None, Megapixels);
        var upright = Read(bench, bench.Sections);
        var turned = Read(bench with { Orientation = 6, Name = bench.Name + "-turned" }, bench.Sections);

        Assert.All(
            upright.Zip(turned),
            pair =>
                Assert.InRange(
                    pair.First.Piece!.MiddlePx.DistanceTo(pair.Second.Piece!.MiddlePx),
                    0,
                    0.01 * upright[0].WidthPx
                )
        );
        Assert.Equal(upright.Count(each => each.Outcome is Read), turned.Count(each => each.Outcome is Read));
    }

    private static IEnumerable<BenchScene> Benches(
        int from,
        int count,
        bool isRound,
        BenchTrouble trouble,
        IReadOnlyList<Ground> grounds
    ) =>
        Enumerable
            .Range(from, count)
            .Select(seed => BenchScenes.Of(seed, isRound, grounds[seed % grounds.Count], trouble, Megapixels));

    // Null where the count is asked about.
    private IReadOnlyList<SectionReading>? Readings(BenchScene bench, int count)
    {
        try
        {
            return Read(bench, count);
        }
        catch (InputRefusedException refused)
        {
            output.WriteLine(refused.Problems[0].ToString());
            return null;
        }
    }

    private static IReadOnlyList<SectionReading> Read(
        BenchScene bench,
        int count,
        IReadOnlyList<string>? labels = null
    ) =>
        SectionReader.ReadEach(
            bench.Name + ".jpg",
            TestPhotographs.Of(bench),
            new(count, labels),
            Asked(bench),
            TestContext.Current.CancellationToken
        );

    private static ReadingRequest Asked(BenchScene bench) =>
        new()
        {
            Section = bench.Pieces[0].Scene.Shape.SizesMm is [var widthMm, var heightMm]
                ? new RectangularSection(widthMm, heightMm)
                : new RoundSection(bench.Pieces[0].Scene.Shape.SizesMm[0]),
            Candidates = KnownIndicators.All,
        };

    // The mean depth of a piece whose outline is given as it is; not a number where none is read.
    private static double Alone(BenchScene bench, SectionTruth truth) =>
        SectionReader
            .Read(
                bench.Name + ".jpg",
                TestPhotographs.Of(bench),
                Asked(bench) with
                {
                    OutlinePx = [.. truth.OutlinePx.Select(p => new PointPx(p.X, p.Y))],
                    OutlineIsExact = true,
                },
                TestContext.Current.CancellationToken
            )
            .Outcome
            is Read read
            ? read.Profile.Statistics.MeanMm.Value
            : double.NaN;

    // Whether a piece was read; where it was, it must be the one of that number, its outline and its depth right.
    private bool IsRight(BenchScene bench, int k, SectionReading reading)
    {
        var truth = bench.Truths()[k];
        Assert.True(Holds(truth, reading.Piece!.MiddlePx), $"{bench.Name} #{k + 1} is another piece.");
        if (reading.Outcome is not Read read)
        {
            output.WriteLine($"{bench.Name} #{k + 1}: {(reading.Outcome as NotDetermined)?.Fault}");
            return false;
        }
        var outlineMm = OutlineErrorMm(bench.Pieces[k].Scene, truth, read.Outline.PointsPx);
        var aloneMm = Alone(bench, truth);
        var fromAloneMm = read.Profile.Statistics.MeanMm.Value - aloneMm;
        output.WriteLine(
            $"{bench.Name} #{k + 1}: outline {outlineMm:0.00} mm, mean {aloneMm - truth.Depth!.MeanMm:0.00} mm alone, {fromAloneMm:0.00} mm from it"
        );
        Assert.True(outlineMm < MostOutlineMm, $"{bench.Name} #{k + 1}: outline {outlineMm:0.00} mm off.");
        Assert.False(
            Math.Abs(fromAloneMm) > MostFromAloneMm,
            $"{bench.Name} #{k + 1}: mean depth {fromAloneMm:0.00} mm from that of the piece alone."
        );
        return true;
    }

    private static bool Holds(SectionTruth truth, PointPx at) =>
        Polygon.Holds([.. truth.OutlinePx.Select(p => new PointPx(p.X, p.Y))], at);

    // Greatest distance of a point found from the corner, or the rim, that is meant.
    private static double OutlineErrorMm(SectionScene scene, SectionTruth truth, IReadOnlyList<PointPx> found)
    {
        double FromMm(PointPx a, Point b) => double.Hypot(a.X - b.X, a.Y - b.Y) / truth.PixelsPerMm;
        if (truth.Shape != "round")
            return Enumerable
                .Range(0, 4)
                .Min(first => Enumerable.Range(0, 4).Max(k => FromMm(found[k], truth.OutlinePx[(k + first) % 4])));
        const int Parts = 720;
        var face = scene.Shape.Faces[0];
        Point[] rim =
        [
            .. Enumerable.Range(0, Parts).Select(k => scene.Lens.Project(face.At(face.LengthMm * k / Parts))),
        ];
        return found.Max(p => rim.Min(q => FromMm(p, q)));
    }
}
