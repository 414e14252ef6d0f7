using Alburnum.DrawnSections;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Accuracy;

namespace Alburnum.Imaging.Tests.Cards;

/// <summary>What the card beside a section says of its size.</summary>
public sealed class CardScaleTests
{
    private const double Megapixels = 1.5;

    /// <summary>Greatest deviation of a size, in standard uncertainties, among a dozen photographs.</summary>
    private const double Most = 3;

    [Theory]
    [InlineData(Stratum.Easy)]
    [InlineData(Stratum.Ordinary)]
    public void A_section_named_a_little_too_large_is_measured_by_the_card(Stratum stratum)
    {
        for (var seed = 8001; seed <= 8006; seed++)
        {
            var photograph = Beside(stratum, seed, belowMm: 0);
            var asked = photograph.AskedWithCorners();
            var read = Read(photograph, asked with { Section = asked.Section.Scaled(1.01) });
            var share = SizeShare(read);

            Assert.Equal(ScaleBasis.Card, read.Scale.Basis);
            Assert.InRange(share, 0, 0.015);
            Assert.InRange(
                read.Scale.Section.SizesMm.Max() / asked.Section.SizesMm.Max(),
                1 - (Most * share),
                1 + (Most * share)
            );
        }
    }

    [Fact]
    public void A_card_far_below_the_face_is_never_believed_and_said_where_the_nominal_size_is_sure_enough()
    {
        const double BelowMm = 40;
        var said = 0;
        for (var seed = 8001; seed <= 8006; seed++)
        {
            var photograph = Beside(Stratum.Easy, seed, BelowMm);
            var asked = photograph.AskedWithCorners();
            var read = Read(photograph, asked);
            var finding = read.Quality.Findings.OfType<CardDisagrees>().SingleOrDefault();
            // A nominal 60 mm is known to 2.5 %: less than a tenth is not told from it.
            var isPlain =
                BelowMm / photograph.Scene.Lens.DistanceMm
                > (Most * double.Hypot(1.5 / asked.Section.SizesMm.Min(), 0.012)) + 0.02;

            Assert.Equal(ScaleBasis.NominalSize, read.Scale.Basis);
            Assert.True(finding is not null || !isPlain);
            if (finding is null)
                continue;
            said++;
            Assert.Equal(QualityGrade.Poor, read.Quality.Grade);
            // What lies farther off looks smaller: beside it the section seems larger than it is.
            Assert.True(finding.Shown.SizesMm.Max() > finding.Kept.SizesMm.Max());
        }
        Assert.InRange(said, 3, 6);
    }

    [Theory]
    [InlineData(8001)]
    [InlineData(8002)]
    [InlineData(8003)]
    public void A_section_named_wrongly_or_measured_wrongly_is_said(int seed)
    {
        var photograph = Beside(Stratum.Easy, seed, belowMm: 0);
        var asked = photograph.AskedWithCorners();
        var wrong = asked.Section.Scaled(1.15);

        foreach (var request in new[] { asked with { Section = wrong }, asked with { MeasuredSize = wrong } })
        {
            var read = Read(photograph, request);
            var said = Assert.Single(read.Quality.Findings.OfType<CardDisagrees>());

            Assert.Equal(wrong.Label, said.Kept.Label);
            Assert.Equal(asked.Section.SizesMm.Max(), said.Shown.SizesMm.Max(), 0.02 * asked.Section.SizesMm.Max());
            Assert.Equal(QualityGrade.Poor, read.Quality.Grade);
        }
    }

    [Fact]
    public void A_card_is_never_taken_for_the_section()
    {
        for (var seed = 8001; seed <= 8006; seed++)
        {
            var photograph = Beside(Stratum.Ordinary, seed, belowMm: 0);
            if (photograph.Read(photograph.Asked()).Outcome is not Read read)
                continue;
            var middle = photograph.Scene.Lens.Project(photograph.Scene.Card!.Centre);
            var (x, y) = (read.Outline.PointsPx.Average(p => p.X), read.Outline.PointsPx.Average(p => p.Y));
            Assert.True(double.Hypot(x - middle.X, y - middle.Y) > 32 * read.Scale.PixelsPerMm);
        }
    }

    private static TestPhotograph Beside(Stratum stratum, int seed, double belowMm) =>
        TestPhotographs.Of(CardScenes.Of(stratum, seed, belowMm, Megapixels));

    private static Read Read(TestPhotograph photograph, ReadingRequest request) =>
        photograph.Read(request).Outcome as Read
        ?? throw new Xunit.Sdk.XunitException($"{photograph.Truth.Name} was not read.");

    private static double SizeShare(Read read) =>
        read.Budget.MeanMm.Components.Single(component => component.Cause.Key == "card-size").Contribution
        / read.Profile.Statistics.MeanMm.Value;
}
