using Alburnum.Impregnation.Incising;

namespace Alburnum.Tests.Impregnation.Incising;

public class IncisedReachTests
{
    private static readonly double[] Rows = [12, 8, 6, 4, 3];

    [Fact]
    public void A_denser_pattern_never_reaches_less()
    {
        foreach (var across in new[] { 0.5, 1, 1.5, 2, 3 })
        {
            var reach = Rows.Select(rows =>
                    new IncisedReach(new IncisingPattern(10, 9, 1.2, 27, rows), 6000).UnbrokenMm(across)
                )
                .ToArray();
            Assert.Equal(reach.Order(), reach);
        }
    }
}
