using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;
using Alburnum.Timber;

namespace Alburnum.Imaging.Tests;

/// <summary>Every shape that may be photographed, drawn with a depth that is known.</summary>
public class ShapeTests
{
    [Theory]
    [InlineData(100, 100)]
    [InlineData(150, 38)]
    [InlineData(38, 150)]
    [InlineData(47, 47)]
    public void A_sawn_section_of_any_proportions(double widthMm, double heightMm)
    {
        var reading = DrawnReading.Of(
            new()
            {
                WidthMm = widthMm,
                HeightMm = heightMm,
                DepthMm = _ => 6,
            }
        );

        var profile = DrawnReading.Profile(reading);
        Assert.Equal(6, profile.Statistics.MeanMm.Value, 0.1);
        Assert.Equal(6, profile.Statistics.MinimumMm.Value, 0.25);
        Assert.Equal(
            1 - ((widthMm - 12) * (heightMm - 12) / (widthMm * heightMm)),
            profile.TreatedShare.Value,
            tolerance: 0.01
        );
        // Faces run from corner to corner as displayed.
        Assert.Equal([1, 2, 3, 4], profile.Faces.Select(f => f.Number));
        Assert.Equal(widthMm, profile.Faces[0].StepMm * profile.Faces[0].PositionsMm.Count, 0.01);
        Assert.Equal(heightMm, profile.Faces[1].StepMm * profile.Faces[1].PositionsMm.Count, 0.01);
    }

    [Fact]
    public void A_size_written_the_other_way_round_is_turned()
    {
        var drawn = new PlainSection
        {
            WidthMm = 120,
            HeightMm = 60,
            DepthMm = _ => 6,
        };
        var reading = DrawnReading.Of(
            drawn,
            DrawnReading.Request(drawn) with
            {
                Section = new RectangularSection(60, 120),
            }
        );

        Assert.Equal(6, DrawnReading.Profile(reading).Statistics.MeanMm.Value, 0.1);
    }

    [Theory]
    [InlineData((int)DrawnOutline.Round, 1)]
    [InlineData((int)DrawnOutline.Half, 2)]
    [InlineData((int)DrawnOutline.Quarter, 3)]
    public void A_round_and_parts_of_it(int kind, int faces)
    {
        var reading = DrawnReading.Of(
            new()
            {
                Kind = (DrawnOutline)kind,
                WidthMm = 140,
                DepthMm = _ => 7,
            }
        );

        var profile = DrawnReading.Profile(reading);
        Assert.Equal(faces, profile.Faces.Count);
        Assert.Equal(7, profile.Statistics.MeanMm.Value, 0.15);
        Assert.Equal(7, profile.Statistics.MedianMm.Value, 0.15);
    }

    [Fact]
    public void A_round_is_read_clockwise_from_its_first_rim_point()
    {
        // Deeper on the right-hand quarter, which a walk from the top meets a quarter of the way round.
        var drawn = new PlainSection
        {
            Kind = DrawnOutline.Round,
            WidthMm = 120,
            TurnDegrees = 0,
            DepthMm = along => Math.Abs(along) < Math.PI / 4 * 60 ? 12 : 6,
        };
        var reading = DrawnReading.Of(drawn);

        var face = Assert.Single(DrawnReading.Profile(reading).Faces);
        var rim = DrawnReading.Read(reading).Outline.PointsPx;
        Assert.Equal(rim.Min(p => p.Y), rim[0].Y, 1e-9);
        double At(double share) => face.DepthMm[(int)(share * face.DepthMm.Count)];
        Assert.Equal(12, At(0.25), 0.3);
        Assert.Equal(6, At(0.5), 0.3);
        Assert.Equal(6, At(0.75), 0.3);
    }

    [Fact]
    public void A_core_is_read_from_its_outer_end()
    {
        var reading = DrawnReading.Of(
            new()
            {
                Kind = DrawnOutline.Core,
                WidthMm = 10,
                HeightMm = 60,
                PxPerMm = 16,
                DepthMm = _ => 22,
            }
        );

        var face = Assert.Single(DrawnReading.Profile(reading).Faces);
        Assert.Equal(22, DrawnReading.Profile(reading).Statistics.MeanMm.Value, 0.3);
        Assert.Equal(10, face.StepMm * face.PositionsMm.Count, 0.01);
    }

    [Fact]
    public void A_known_length_overrules_the_nominal_size()
    {
        // Sawn 10 % over: the nominal size alone would read every depth a tenth too small.
        var drawn = new PlainSection
        {
            WidthMm = 110,
            HeightMm = 82.5,
            DepthMm = _ => 11,
        };
        var request = DrawnReading.Request(drawn) with { Section = new RectangularSection(100, 75) };
        var scaled = DrawnReading.Of(
            drawn,
            request with
            {
                ScaleBar = new(drawn.Place(20, 40), drawn.Place(70, 40), 50),
            }
        );

        Assert.Equal(10, DrawnReading.Profile(DrawnReading.Of(drawn, request)).Statistics.MeanMm.Value, 0.1);
        Assert.Equal(11, DrawnReading.Profile(scaled).Statistics.MeanMm.Value, 0.1);
        var section = Assert.IsType<RectangularSection>(DrawnReading.Read(scaled).Scale.Section);
        Assert.Equal(110, section.WidthMm, 0.3);
        Assert.Equal(82.5, section.HeightMm, 0.3);
    }

    [Fact]
    public void A_measured_size_overrules_the_nominal_one()
    {
        // Planed: the nominal size would read every depth a tenth too great.
        var drawn = new PlainSection
        {
            WidthMm = 90,
            HeightMm = 67.5,
            DepthMm = _ => 9,
        };
        var nominal = DrawnReading.Request(drawn) with { Section = new RectangularSection(100, 75) };
        var measured = nominal with { MeasuredSize = new RectangularSection(90, 67.5) };

        Assert.Equal(10, DrawnReading.Profile(DrawnReading.Of(drawn, nominal)).Statistics.MeanMm.Value, 0.1);
        var read = DrawnReading.Read(DrawnReading.Of(drawn, measured));
        Assert.Equal(9, read.Profile.Statistics.MeanMm.Value, 0.1);
        Assert.Equal((ScaleBasis.MeasuredSize, measured.MeasuredSize), (read.Scale.Basis, read.Scale.Section));
    }

    [Fact]
    public void A_nominal_size_adds_its_usual_deviation_to_the_uncertainty_and_a_measured_one_does_not()
    {
        var drawn = new PlainSection { DepthMm = _ => 20 };
        var nominal = DrawnReading.Read(DrawnReading.Of(drawn));
        var measured = DrawnReading.Read(
            DrawnReading.Of(
                drawn,
                DrawnReading.Request(drawn) with
                {
                    MeasuredSize = new RectangularSection(drawn.WidthMm, drawn.HeightMm),
                }
            )
        );
        double Of(Read read, string cause) =>
            read.Budget.MeanMm.Components.Single(component => component.Cause.Key == cause).Contribution;

        Assert.Equal(ScaleBasis.NominalSize, nominal.Scale.Basis);
        // 1.5 mm on a thickness of 75 mm, against 0.3 mm; of the mean of all positions, with the corners, where the front lies less deep.
        Assert.Equal(1.5 / 0.3, Of(nominal, "nominal-size") / Of(measured, "known-size"), 0.01);
        Assert.InRange(Of(nominal, "nominal-size") / nominal.Profile.Statistics.MeanMm.Value, 0.9 * 1.5 / 75, 1.5 / 75);
    }

    [Fact]
    public void A_known_length_far_from_the_nominal_size_is_not_believed()
    {
        var drawn = new PlainSection();
        var reading = DrawnReading.Of(
            drawn,
            DrawnReading.Request(drawn) with
            {
                ScaleBar = new(drawn.Place(20, 40), drawn.Place(70, 40), 500),
            }
        );

        var ended = DrawnReading.Ended(reading);
        Assert.Equal((ReadingStage.Flattening, new KnownLengthDisagrees(4)), (ended.Stage, ended.Fault));
    }
}
