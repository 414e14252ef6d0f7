using Alburnum.Impregnation.Diffusing;

namespace Alburnum.OutsideChecks.Impregnation;

/// <summary>Salt spreading in layers against the same by Fourier series.</summary>
[IndependentProgram("mpmath 1.2.1", "tests/Alburnum.OutsideChecks/reference/diffusion.py, output stored beside it")]
[Computed]
public sealed class DiffusionChecks
{
    private const int Layers = 1000;
    private const int Steps = 2000;

    public static TheoryData<double[]> Sealed => ReferenceTable.Rows("diffusion.csv", "sealed");
    public static TheoryData<double[]> Wet => ReferenceTable.Rows("diffusion.csv", "wet");

    [Theory]
    [MemberData(nameof(Sealed))]
    public void Salt_in_a_sheet_kept_from_drying_spreads_as_the_series_says(double[] row)
    {
        var later = SaltProfile
            .Border(row[0], row[1], 1, layers: Layers)
            .After(row[2], row[3], isFaceWet: false, Steps);

        Assert.Equal(row[4], later.Loading[0], 2e-3);
        Assert.Equal(row[5], later.Loading[^1], 2e-3);
        Assert.Equal(row[6], later.DepthMm(0.1), 0.005 * row[0]);
        Assert.Equal(row[1], later.Held, 1e-9 * row[1]);
    }

    [Theory]
    [MemberData(nameof(Wet))]
    public void Salt_in_a_sheet_with_wet_faces_washes_out_as_the_series_says(double[] row)
    {
        var later = SaltProfile.Border(row[0], row[1], 1, layers: Layers).After(row[2], row[3], isFaceWet: true, Steps);

        Assert.Equal(row[4], later.Held / row[1], 2e-3);
        Assert.Equal(row[1], later.Held + later.WashedOut, 1e-9 * row[1]);
    }
}
