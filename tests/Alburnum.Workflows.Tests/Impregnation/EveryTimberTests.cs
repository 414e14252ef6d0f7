using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Workflows.Tests.Impregnation;

/// <summary>Every schedule shipped with every timber of which enough is known.</summary>
public sealed class EveryTimberTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    private static readonly Section[] Sections =
    [
        new RectangularSection(75, 75),
        new RectangularSection(150, 25),
        new RoundSection(120),
        new HalfRoundSection(120),
    ];

    // Answers are drawn straight between runs of the solver: laws hold to this share.
    private const double Drawn = 1e-4;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string> Schedules =>
        [.. Facts.Impregnation.Schedules.Select(schedule => schedule.Value.Name)];

    private static IEnumerable<Species> Known =>
        Facts.Species.All.Where(species => Predict.Knows(new() { Species = species, Section = Sections[0] }, Facts));

    [Theory]
    [MemberData(nameof(Schedules))]
    public void No_depth_uptake_retention_or_strength_leaves_its_bounds(string schedule)
    {
        (Species Species, int Index)[] timbers = [.. Known.Select((species, i) => (species, i))];
        Assert.NotEmpty(timbers);
        Parallel.ForEach(
            timbers,
            new ParallelOptions { CancellationToken = Stop },
            timber =>
            {
                var treating = new TreatingRequest
                {
                    Species = timber.Species,
                    Section = Sections[timber.Index % Sections.Length],
                    Schedule = schedule,
                    Incising = timber.Index % 5 == 0 ? TreatingRequest.UsualIncising : null,
                    MoisturePercent = new[] { 12, 25, 60 }[timber.Index % 3],
                    StrengthPercent = 2,
                    // The time to a depth is a search of its own over schedules: a few timbers do.
                    DepthMm = timber.Index % 12 == 0 ? 6 : null,
                };
                // Dense wood holds no more water than its cavities.
                if (timber.Species.Density!.Value.TypicalKgPerM3 > 650)
                    treating = treating with { MoisturePercent = 20 };
                var prediction = Predict.Run(
                    new()
                    {
                        Treating = treating,
                        Pieces = 100,
                        Seed = 1,
                        Cells = null,
                    },
                    Facts,
                    null,
                    Stop
                );
                var (quick, question) = (prediction.Quick, prediction.Asked.Prediction);
                var voids = 1000 * question.VoidFraction * (1 - question.WaterShare);
                var said =
                    $"{timber.Species.Name}, {treating.Section.Label}, {treating.MoisturePercent} %, {schedule}: least {quick.LeastMm}, mean {quick.MeanMm}, uptake {quick.UptakeLPerM3} of {voids}, zone {quick.ZoneLPerM3}";

                // A half-round piece of a disc this size has ways of up to half its thickness; a plank's narrow faces, half its width.
                var longest = quick.Places.Max(place => place.WayMm);
                Assert.True(quick.LeastMm.Low >= 0 && quick.LeastMm.High <= longest + 1e-9, said);
                Assert.True(quick.MeanMm.Low >= quick.LeastMm.Low && quick.MeanMm.High <= longest + 1e-9, said);
                Assert.True(quick.UptakeLPerM3.High <= voids * (1 + 1e-9), said);
                Assert.True(quick.ZoneLPerM3.Low >= 0 && quick.ZoneLPerM3.High <= 1000 * question.VoidFraction, said);
                Assert.True(prediction.RetentionKgPerM3!.Value.High <= 20 * question.VoidFraction * 1.01, said);
                Assert.InRange(quick.CoreShare.Value, 0, 1);
                Assert.InRange(prediction.EndDepthMm.High, 0, 1000);
                IsWhatCame(prediction.Product, question, said);
            }
        );
    }

    // Walls that take up more keep more, and nearer to the face; no zone holds more than the piece, and the piece no more than came into its voids.
    private static void IsWhatCame(IReadOnlyList<ExpectedProduct> product, PredictionQuestion question, string said)
    {
        var full = 1000 * question.VoidFraction;
        said = string.Join(
            "; ",
            product
                .Select(each => $"{each.Basis}: kept {each.Quick.KeptLPerM3}, zone {each.Quick.ZoneLPerM3}")
                .Prepend($"{said}, full {full}")
        );
        var zone = question.ZoneDepthMm is { } mm ? SectionBorder.Share(question.Section, mm) : 0;
        foreach (var quick in product.Select(each => each.Quick))
        {
            Assert.True(quick.KeptLPerM3.Low >= 0 && quick.KeptLPerM3.High <= full * (1 + Drawn), said);
            Assert.True(quick.ZoneLPerM3.Middle * zone <= quick.KeptLPerM3.Middle * (1 + Drawn), said);
        }
        foreach (var (less, more) in product.Zip(product.Skip(1), (less, more) => (less.Quick, more.Quick)))
        {
            Assert.True(more.KeptLPerM3.Middle >= less.KeptLPerM3.Middle * (1 - Drawn), said);
            Assert.True(more.ZoneLPerM3.Middle >= less.ZoneLPerM3.Middle * (1 - Drawn), said);
        }
    }

    [Theory]
    [MemberData(nameof(Schedules))]
    public void A_charge_is_planned_or_refused_in_words(string schedule) =>
        Parallel.ForEach(
            Known.Where((_, i) => i % 9 == 0),
            new ParallelOptions { CancellationToken = Stop },
            species =>
            {
                ChargeOrder order = new()
                {
                    Name = "posts",
                    Treatment = new()
                    {
                        File = "posts.yaml",
                        Species = species,
                        MoisturePercent = 20,
                        Schedule = schedule,
                        DepthMm = 6,
                    },
                    Pieces = [new(Sections[0], 1800, 10)],
                    DryingCelsius = 20,
                    DryingHumidity = 0.65,
                    RetentionKgPerM3 = 6,
                    SolutionDensityKgPerM3 = 1005,
                };
                try
                {
                    var plan = PlanCharge.Run(order, Facts, Stop).Plan;
                    Assert.InRange(plan.StrengthPercent.Value, 0.5, 50);
                    Assert.True(plan.SolutionL.Value > 0, species.Name);
                }
                catch (InputRefusedException refused)
                {
                    Assert.NotEmpty(refused.Problems[0].ToString());
                }
            }
        );

    [Fact]
    public void Wetter_timber_is_reached_by_no_more_cores()
    {
        var spruce = new TreatingRequest
        {
            Species = Facts.Species.Get("Norway spruce"),
            Section = Sections[0],
            Incising = TreatingRequest.UsualIncising,
            DepthMm = 6,
        };
        List<QuickPrediction> drier =
        [
            .. new[] { 12, 20, 28, 32, 40, 60, 100 }.Select(moisture =>
                Predict
                    .Run(
                        new()
                        {
                            Treating = spruce with { MoisturePercent = moisture },
                            Pieces = 2000,
                            Seed = 1,
                        },
                        Facts,
                        null,
                        Stop
                    )
                    .Quick
            ),
        ];

        double[] cores = [.. drier.Select(each => each.CoreShare.Value)];
        Assert.Equal(cores.OrderDescending(), cores);
        // A core at a cut passes however wet the wood; between the cuts fewer pieces do.
        double[] pieces = [.. drier.Select(each => each.PieceShare.Value)];
        Assert.True(pieces[^1] < 0.8 * pieces[0], string.Join(", ", pieces));
    }
}
