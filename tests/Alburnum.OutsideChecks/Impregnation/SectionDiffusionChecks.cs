using Alburnum.Impregnation.Diffusing;
using Alburnum.Timber;

namespace Alburnum.OutsideChecks.Impregnation;

/// <summary>Salt spreading in whole sections against series of Bessel functions and against differences in two dimensions.</summary>
[IndependentProgram(
    "mpmath 1.3.0",
    "tests/Alburnum.OutsideChecks/reference/diffusion_sections.py, output stored beside it"
)]
[Computed]
public sealed class SectionDiffusionChecks
{
    private const double Alike = 0.01;

    public static TheoryData<double[]> RoundSealed => ReferenceTable.Rows("diffusion_sections.csv", "round-sealed");

    public static TheoryData<double[]> RoundWet => ReferenceTable.Rows("diffusion_sections.csv", "round-wet");

    public static TheoryData<double[]> Sawn => ReferenceTable.Rows("diffusion_sections.csv", "sawn");

    [Theory]
    [MemberData(nameof(RoundSealed))]
    public void Salt_in_a_round_kept_from_drying_spreads_as_the_series_says(double[] row)
    {
        var later = SaltSection.After(new RoundSection(2 * row[0]), row[1], 1, new(row[2], row[3]), null);

        Assert.Equal(row[4], later.FromFace.Loading[0], Alike);
        Assert.Equal(row[5], later.FromFace.Loading[^1], Alike);
        Assert.Equal(SectionBorder.Share(new RoundSection(2 * row[0]), row[1]), later.Mean, 1e-3);
    }

    [Theory]
    [MemberData(nameof(RoundWet))]
    public void Salt_in_a_wet_round_washes_out_as_the_series_says(double[] row)
    {
        var round = new RoundSection(2 * row[0]);
        var (start, wet) = (
            SaltSection.After(round, row[1], 1, new(row[2], 0), null),
            SaltSection.After(round, row[1], 1, new(row[2], 0), new(row[2], row[3]))
        );

        Assert.Equal(row[4], wet.Mean / start.Mean, Alike);
    }

    [Theory]
    [MemberData(nameof(Sawn))]
    public void Salt_in_a_sawn_section_spreads_and_washes_out_as_two_dimensions_say(double[] row)
    {
        var section = new RectangularSection(2 * row[1], 2 * row[0]);
        var stored = new SaltSpell(row[3], row[4]);
        var (dry, wet) = (
            SaltSection.After(section, row[2], 1, stored, null),
            SaltSection.After(section, row[2], 1, stored, new(row[3], row[5]))
        );

        Assert.Equal(row[6], dry.FromFace.Loading[0], Alike);
        Assert.Equal(row[7], dry.FromFace.Loading[^1], Alike);
        Assert.Equal(row[8], wet.FromFace.Loading[^1], Alike);
        Assert.Equal(row[9], wet.Mean / dry.Mean, Alike);
    }
}
