using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Workflows.Tests.Impregnation;

public sealed class DesignIncisingTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));
    private static readonly IncisingRequest Spruce = new()
    {
        Treating = new()
        {
            Species = Facts.Species.Get("Norway spruce"),
            Section = new RectangularSection(100, 100),
            DepthMm = 6,
        },
        CoreShare = 0.7,
        ToothLengthMm = 9,
        Pieces = 200,
        Seed = 1,
    };

    private static IncisingDesign Of(IncisingRequest request) =>
        DesignIncising.Run(request, Facts, null, TestContext.Current.CancellationToken);

    [Theory]
    [InlineData(0.3)]
    [InlineData(0.7)]
    [InlineData(0.9)]
    public void What_is_chosen_is_enough_and_nothing_tried_within_the_code_is_lighter(double share)
    {
        var design = Of(Spruce with { CoreShare = share });
        var chosen = Assert.IsType<Alburnum.Impregnation.Prediction.IncisingTrial>(design.Search.Chosen);

        Assert.True(chosen.Quick.CoreShare.Value >= share);
        Assert.DoesNotContain(
            design.Search.Best,
            trial =>
                trial.Pattern is { } pattern
                && trial.Quick.CoreShare.Value >= share
                && design.Penalty.Beyond(pattern).Count == 0
                && pattern.CutOutCm3PerM2 < chosen.Pattern!.CutOutCm3PerM2
        );
    }

    [Fact]
    public void What_is_usual_and_what_pieces_would_do_are_those_that_a_prediction_of_the_same_pattern_gives()
    {
        var design = Of(Spruce);

        Assert.Equal(design.Search.Best.Count, design.Usual.Count);
        Assert.All(
            design.Search.Best.Zip(design.Usual),
            each => Assert.Equal(Predicted(each.First.Pattern is not null).Usual!.Verdict, each.Second.Verdict)
        );
        Assert.Equal(
            Predicted(isIncised: false).Quick.PieceShare.Value,
            design.Search.Best.Single(trial => trial.Pattern is null).Quick.PieceShare.Value,
            6
        );
    }

    private static TreatingPrediction Predicted(bool isIncised) =>
        Predict.Run(
            new()
            {
                Treating = Spruce.Treating with { Incising = isIncised ? TreatingRequest.UsualIncising : null },
                Pieces = Spruce.Pieces,
                Seed = Spruce.Seed,
            },
            Facts,
            null,
            TestContext.Current.CancellationToken
        );

    [Fact]
    public void Wood_that_takes_enough_is_left_as_it_is_and_nothing_is_checked()
    {
        var design = Of(
            Spruce with
            {
                Treating = Spruce.Treating with
                {
                    Species = Facts.Species.Get("Scots pine"),
                    All = WoodThroughout.Sapwood,
                },
                Boxes = 8,
            }
        );

        Assert.Null(design.Search.Chosen!.Pattern);
        Assert.Null(design.Check);
    }

    [Fact]
    public void The_flow_solver_checks_the_pattern_where_it_is_asked_to()
    {
        var check = Of(Spruce with { Boxes = 8 }).Check;

        Assert.NotNull(check);
        Assert.IsType<Completed>(check.Ending);
        Assert.InRange(check.Solved.UnbrokenMm, 0.1, check.Solved.MeanMm);
        Assert.Equal(check.Solved.MeanMm, check.Taken.MeanMm, 0.15 * check.Solved.MeanMm);
        Assert.Null(Of(Spruce).Check);
    }

    [Fact]
    public void Without_a_required_depth_there_is_nothing_to_cut_for() =>
        Assert.Equal(
            "--depth",
            Assert
                .Single(
                    Assert
                        .Throws<InputRefusedException>(() =>
                            Of(Spruce with { Treating = Spruce.Treating with { DepthMm = null } })
                        )
                        .Problems
                )
                .File
        );
}
