using System.Collections.Concurrent;
using Alburnum.Records.Facts;
using Alburnum.Records.Sweeps;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Workflows.Tests.Impregnation;

public sealed class SweepPredictionsTests : IDisposable
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private string Path => _folder.At("sweep/sweep.csv");

    private static SweepRequest Spruce { get; } =
        new()
        {
            Treating = new()
            {
                Species = Facts.Species.Get("Norway spruce"),
                Section = new RectangularSection(100, 100),
                DepthMm = 2,
            },
            Across = SweptInput.Even(Input("minutes"), 30, 240, 3),
            Up = SweptInput.Even(Input("moisture"), 20, 200, 3),
            Pieces = 100,
            Seed = 1,
        };

    private static SweepInput Input(string name) => SweepInput.All.Single(input => input.Name == name);

    private async Task<IReadOnlyList<SweptPoint>> Swept(SweepRequest request, IProgress<WorkDone>? progress = null) =>
        await SweepPredictions.RunAsync(
            request,
            SweepPredictions.Open(Path, request, Facts),
            Facts,
            progress,
            TestContext.Current.CancellationToken
        );

    [Fact]
    public async Task Every_point_comes_once_row_by_row_and_what_cannot_be_says_why()
    {
        var points = await Swept(Spruce);

        Assert.Equal(
            from row in Enumerable.Range(0, 3)
            from column in Enumerable.Range(0, 3)
            select (column, row),
            points.Select(point => (point.Column, point.Row))
        );
        Assert.Equal(Spruce.Points, points.Count);
        Assert.All(
            points.Where(point => point.Up == 200),
            point =>
                Assert.Contains(
                    "well below saturation",
                    Assert.IsType<ImpossiblePoint>(point).Why,
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public async Task A_longer_pressure_period_is_no_worse()
    {
        var points = await Swept(Spruce);

        foreach (var row in points.OfType<PredictedPoint>().GroupBy(point => point.Row))
        {
            var shares = row.Select(point => point.Measures.CoreShare).ToList();
            Assert.Equal(shares.Order(), shares);
        }
    }

    [Fact]
    public async Task A_point_is_what_predict_says_there()
    {
        var point = Assert.IsType<PredictedPoint>((await Swept(Spruce))[1]);
        var asked = Spruce.Treating with { PressureMinutes = point.Across, MoisturePercent = point.Up };
        var quick = Predict
            .Run(
                new()
                {
                    Treating = asked,
                    Pieces = Spruce.Pieces,
                    Seed = Spruce.Seed,
                },
                Facts,
                null,
                TestContext.Current.CancellationToken
            )
            .Quick;

        Assert.Equal(quick.CoreShare.Value, point.Measures.CoreShare);
        Assert.Equal(quick.MeanMm.Middle, point.Measures.MeanDepthMm);
        Assert.Equal(quick.ZoneLPerM3.Middle, point.Measures.ZoneLPerM3);
    }

    [Fact]
    public async Task A_sweep_that_was_stopped_does_only_what_is_missing()
    {
        var token = TestContext.Current.CancellationToken;
        await Swept(Spruce);
        var whole = await File.ReadAllTextAsync(Path, token);
        var lines = whole.Split('\n');
        await File.WriteAllTextAsync(Path, string.Join('\n', lines.Take(6)) + "\n" + lines[6][..9], token);
        var finished = new Finished();

        var points = await Swept(Spruce, finished);

        Assert.Equal(Spruce.Points - 4, finished.Items.Count);
        Assert.Equal(Spruce.Points, points.Count);
        Assert.Equal(
            lines.Order(StringComparer.Ordinal),
            (await File.ReadAllTextAsync(Path, token)).Split('\n').Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task The_table_of_another_sweep_is_refused()
    {
        await Swept(Spruce);

        foreach (
            var other in new[]
            {
                Spruce with
                {
                    Seed = 2,
                },
                Spruce with
                {
                    Pieces = 200,
                },
                Spruce with
                {
                    Up = SweptInput.Even(Input("moisture"), 20, 190, 3),
                },
                Spruce with
                {
                    Treating = Spruce.Treating with { Celsius = 30 },
                },
                Spruce with
                {
                    Treating = Spruce.Treating with { OwnSchedules = Facts.Impregnation.Schedules },
                },
            }
        )
            Assert.Contains(
                "the table of another sweep",
                Assert.Throws<InputRefusedException>(() => SweepPredictions.Open(Path, other, Facts)).Message,
                StringComparison.Ordinal
            );
    }

    [Fact]
    public void What_no_value_of_the_inputs_makes_possible_is_refused_before_anything_is_written()
    {
        var request = Spruce with { Treating = Spruce.Treating with { Schedule = "no such" } };

        Assert.Throws<InputRefusedException>(() => SweepPredictions.Open(Path, request, Facts));
        Assert.False(File.Exists(Path));
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(2001)]
    public void A_size_that_no_piece_has_is_refused(double mm) =>
        Assert.Throws<InputRefusedException>(() => Input("size").With(Spruce.Treating, mm));

    [Fact]
    public void A_size_keeps_the_shape()
    {
        var size = Input("size");

        Assert.Equal(new RectangularSection(75, 75), size.With(Spruce.Treating, 75).Section);
        Assert.Equal(
            new HalfRoundSection(75),
            size.With(Spruce.Treating with { Section = new HalfRoundSection(120) }, 75).Section
        );
    }

    private sealed class Finished : IProgress<WorkDone>
    {
        public ConcurrentBag<FinishedItem> Items { get; } = [];

        public void Report(WorkDone value) => Items.Add(value.Item!);
    }
}
