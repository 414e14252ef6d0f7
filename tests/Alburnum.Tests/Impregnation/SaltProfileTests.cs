using Alburnum.Impregnation.Diffusing;

namespace Alburnum.Tests.Impregnation;

public class SaltProfileTests
{
    private const double D = 1e-11;
    private static readonly int[] Steps = [50, 100, 200];

    [Fact]
    public void Nothing_is_lost_in_store_and_in_the_end_it_is_even()
    {
        var start = SaltProfile.Border(25, 5, 8);
        var late = start.After(D, 20_000, isFaceWet: false);

        Assert.Equal(40, start.Held, 1e-9);
        Assert.Equal(40, late.Held, 1e-9);
        Assert.All(late.Loading, loading => Assert.Equal(8.0 / 5, loading, 0.01));
    }

    [Theory]
    [InlineData(0.05)]
    [InlineData(0.2)]
    [InlineData(0.6)]
    public void A_piece_loaded_throughout_washes_out_as_Crank_s_sheet(double timeNumber)
    {
        // D·t/a² with a = 25 mm.
        var days = timeNumber * 25e-3 * 25e-3 / D / 86400;
        var after = SaltProfile.Border(25, 25, 1).After(D, days, isFaceWet: true, steps: 2000);

        Assert.Equal(CrankSheet.Uptake(timeNumber), after.WashedOut / 25, 0.002);
        Assert.Equal(25, after.Held + after.WashedOut, 1e-9);
    }

    [Fact]
    public void Shorter_steps_come_closer_at_first_order()
    {
        var days = 0.2 * 25e-3 * 25e-3 / D / 86400;
        var found = Steps
            .Select(steps => SaltProfile.Border(25, 25, 1).After(D, days, isFaceWet: true, steps).WashedOut)
            .ToArray();

        Assert.InRange(Math.Log2((found[1] - found[0]) / (found[2] - found[1])), 0.8, 1.2);
    }

    [Fact]
    public void The_law_is_read_between_its_rows_and_says_nothing_outside_them()
    {
        var law = new BoronLaw([(20, 1e-12), (30, 1e-11)], 1.4, 3, new Provenance(Standing.FromMemory, "", "", "", ""));

        Assert.Equal(Math.Sqrt(1e-12 * 1e-11), law.M2PerS(25, 20), 1e-18);
        Assert.Equal(1.4e-12, law.M2PerS(20, 30), 1e-18);
        Assert.Throws<ArgumentOutOfRangeException>(() => law.M2PerS(12, 20));
    }
}
