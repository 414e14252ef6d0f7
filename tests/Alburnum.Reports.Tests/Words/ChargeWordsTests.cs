using Alburnum.Impregnation.Charging;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Tests.Words;

public sealed class ChargeWordsTests
{
    [Fact]
    public void Every_finding_has_a_sentence_with_its_amount()
    {
        var said = ChargeWords.Current.Say([
            new TankAndWeightAgree(),
            new TankLostMore(190.4),
            new TimberGainedMore(110),
            new NotWeighed(),
            new KeptMoreThanAtPeak(),
            new SolutionLostStrength(10),
            new SolutionGainedStrength(7),
        ]);

        Assert.Equal(7, said.Distinct(StringComparer.Ordinal).Count());
        Assert.StartsWith("The tank lost 190 L more than the timber gained", said[1], StringComparison.Ordinal);
        Assert.StartsWith("The timber gained 110 L more than the tank lost", said[2], StringComparison.Ordinal);
        Assert.StartsWith("The solution lost 10 % of its strength", said[5], StringComparison.Ordinal);
    }

    [Fact]
    public void Five_cautions_go_with_every_charge() =>
        Assert.Equal(5, ChargeWords.Current.Cautions.Distinct(StringComparer.Ordinal).Count());
}
