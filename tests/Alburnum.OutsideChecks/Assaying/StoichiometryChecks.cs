using Alburnum.Assaying;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;

namespace Alburnum.OutsideChecks.Assaying;

[Computed]
public sealed class StoichiometryChecks
{
    private static readonly Substances Substances = new FactLibrary(Repository.At("data")).Substances;

    [Fact]
    [Published("Worked example of moles and grams of boron in boric acid", "1 g of boric acid holds 0.175 g of boron")]
    public void A_gram_of_boric_acid_holds_0_175_g_of_boron() => Assert.Equal(0.175, Factor("boric acid", "B"), 3);

    // Later atomic masses than those in the data: the factors must not feel the difference.
    [Theory]
    [FromMemory("IUPAC, standard atomic weights 2021", "abridged to five figures, factors worked out apart")]
    [InlineData("Cu", "CuO", 1.25177)]
    [InlineData("Cr", "CrO3", 1.92309)]
    [InlineData("As", "As2O5", 1.53386)]
    [InlineData("B", "H3BO3", 5.71989)]
    [InlineData("B", "B2O3", 3.22003)]
    [InlineData("B", "DOT", 4.76968)]
    [InlineData("Zn", "ZnO", 1.24471)]
    public void Factors_from_elements_to_what_retentions_count(string from, string to, double factor) =>
        Assert.Equal(factor, Factor(from, to), factor * 2e-4);

    private static double Factor(string from, string to) =>
        Substances.Between(Substances.Find(from)!, Substances.Find(to)!)!.Factor;
}
