using Alburnum.Impregnation;
using Alburnum.Impregnation.Sawing;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;
using CsCheck;

namespace Alburnum.Workflows.Tests.Impregnation;

public sealed class SawLogTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));
    private static readonly SawingRequest Pine = new()
    {
        Treating = new()
        {
            Species = Facts.Species.Get("Scots pine"),
            Section = new RectangularSection(75, 75),
            LogDiameterMm = 240,
            SapwoodMm = 60,
            IsWholeSapwood = true,
        },
        Pattern = CuttingPattern.Quartered,
        KerfMm = 3,
        Pieces = 100,
        Seed = 1,
    };

    private static PredictedLog Of(SawingRequest request) =>
        SawLog.Run(request, Facts, null, TestContext.Current.CancellationToken);

    private static InputProblem Problem(SawingRequest request) =>
        Assert.Single(Assert.Throws<InputRefusedException>(() => Of(request)).Problems);

    [Fact]
    public void A_log_cut_in_four_gives_four_like_pieces_with_heartwood_on_two_faces()
    {
        var log = Of(Pine);

        Assert.Equal(4, log.Pieces.Count);
        Assert.All(log.Pieces, piece => Assert.Equal(2, piece.Piece.FacesWithHeartwood.Count()));
        Assert.All(log.Pieces, piece => Assert.Same(log.Pieces[0].Quick, piece.Quick));
    }

    [Fact]
    public void Wider_sapwood_shows_no_more_heartwood() =>
        Gen.Select(Gen.Double[5, 80], Gen.Double[1, 30])
            .Sample(
                (sapwood, more) =>
                {
                    double Heartwood(double mm) =>
                        Of(Pine with { Treating = Pine.Treating with { SapwoodMm = mm } })
                            .Pieces.Sum(piece => piece.Piece.HeartwoodShare);

                    return Heartwood(sapwood + more) <= Heartwood(sapwood);
                },
                iter: 10
            );

    [Fact]
    public void Shares_of_the_log_lie_between_those_of_its_pieces()
    {
        var log = Of(Pine with { Pattern = CuttingPattern.Grid });

        Assert.InRange(
            log.CoreShare!.Value,
            log.Pieces.Min(piece => piece.Quick.CoreShare.Value),
            log.Pieces.Max(piece => piece.Quick.CoreShare.Value)
        );
    }

    [Fact]
    public void Only_a_width_of_sapwood_that_nobody_measured_is_assumed()
    {
        Assert.Empty(Of(Pine).Assumptions);
        Assert.IsType<SapwoodAsUsual>(
            Assert.Single(Of(Pine with { Treating = Pine.Treating with { SapwoodMm = null } }).Assumptions)
        );
    }

    [Fact]
    public void A_log_without_a_diameter_a_round_piece_and_sapwood_that_nobody_knows_are_refused()
    {
        Assert.Equal(
            "--log-diameter",
            Problem(Pine with { Treating = Pine.Treating with { LogDiameterMm = null } }).File
        );
        Assert.Equal(
            "SECTION",
            Problem(Pine with { Treating = Pine.Treating with { Section = new RoundSection(75) } }).File
        );
        Assert.Equal(
            "--sapwood",
            Problem(
                Pine with
                {
                    Treating = Pine.Treating with { Species = Facts.Species.Get("Norway spruce"), SapwoodMm = null },
                }
            ).File
        );
    }
}
