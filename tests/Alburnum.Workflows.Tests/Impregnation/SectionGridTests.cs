using Alburnum.Flow.Pieces;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.Workflows.Tests.Impregnation;

/// <summary>What the command's own number of cells leaves open, against four times as many, in refractory wood of large section; and what the sheet says of it.</summary>
public sealed class SectionGridTests
{
    // The command's default.
    private const int Cells = 60;
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    [Theory]
    [InlineData("Norway spruce", "full cell", 200, 200)]
    [InlineData("Norway spruce", "full cell", 300, 300)]
    [InlineData("Norway spruce", "double vacuum", 300, 300)]
    [InlineData("Norway spruce", "full cell", 300, 60)]
    [InlineData("European oak", "full cell", 200, 200)]
    [InlineData("European oak", "full cell", 300, 300)]
    [InlineData("European oak", "double vacuum", 300, 300)]
    public void A_shallow_front_in_a_large_section_stands_within_a_twentieth_or_0_02_mm_of_its_limit_and_the_sheet_says_how_far(
        string species,
        string schedule,
        double widthMm,
        double heightMm
    )
    {
        var question = Heartwood(species, schedule, new RectangularSection(widthMm, heightMm));
        var found = SectionRun.WithCoarser(question, Cells, cancellation: TestContext.Current.CancellationToken);
        var limit = SectionRun.Of(question, 4 * Cells, cancellation: TestContext.Current.CancellationToken);

        var (depth, truth) = (found.MeanDepthMm(), limit.MeanDepthMm());
        Assert.Equal(truth, depth, Math.Max(0.05 * truth, 0.02));
        // To the tenth of a millimetre that is printed, rounded up.
        Assert.InRange(
            Math.Abs(depth - truth),
            0,
            Math.Ceiling(10 * found.GridError(run => run.MeanDepthMm())!.Value) / 10
        );
        Assert.InRange(
            Math.Abs(found.NetLPerM3 - limit.NetLPerM3),
            0,
            Math.Ceiling(found.GridError(run => run.NetLPerM3)!.Value)
        );
    }

    private static PredictionQuestion Heartwood(string name, string schedule, Section section)
    {
        var law = Facts.Impregnation.Of(Facts.Species.Get(name), isHeartwood: true);
        return new()
        {
            Section = section,
            Log = new LogGeometry(0, 0, 1000, 1001),
            Sapwood = law,
            Heartwood = law,
            VoidFraction = 0.6,
            Liquid = TreatingLiquid.Water(),
            Schedule = Facts.Impregnation.Schedules.Single(row => row.Value.Name == schedule).Value,
            Incising = null,
            Rule = new NoDepth(),
            ZoneDepthMm = null,
        };
    }
}
