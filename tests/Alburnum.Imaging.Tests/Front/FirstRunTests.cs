using Alburnum.Imaging.Front;

namespace Alburnum.Imaging.Tests.Front;

public class FirstRunTests
{
    // Treated to row 10, a bay to row 16, treated again to row 30.
    private static readonly float[] WithBay =
    [
        .. Enumerable.Range(0, 40).Select(j => j is < 10 or (>= 16 and < 30) ? 4f : -4f),
    ];

    [Fact]
    public void A_column_ends_at_its_first_bay_though_more_of_it_is_treated_farther_in()
    {
        Assert.Equal(30, Best(WithBay));
        Assert.Equal(10, Best(FirstRun.Weigh(WithBay, 40, [40], runRows: 2, returnCost: 8)));
    }

    [Fact]
    public void A_speck_cheaper_than_a_return_is_no_bay()
    {
        var speck = Enumerable.Range(0, 40).Select(j => j < 30 && j != 10 ? 4f : -4f).ToArray();
        Assert.Equal(30, Best(FirstRun.Weigh(speck, 40, [40], runRows: 2, returnCost: 8)));
    }

    [Fact]
    public void At_a_boundless_cost_of_return_the_evidence_stays_as_it_is() =>
        Assert.Equal(WithBay, FirstRun.Weigh(WithBay, 40, [40], runRows: 0, returnCost: float.PositiveInfinity));

    private static int Best(float[] evidence) =>
        Enumerable.Range(0, evidence.Length + 1).MaxBy(d => evidence.Take(d).Sum());
}
