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

    [Theory]
    [WorkedOut(
        "molar mass over the element's part, by hand from the formula and the atomic masses of IUPAC's table of 1995"
    )]
    [InlineData("Cu", "CuO", 1.25178)]
    [InlineData("Cr", "CrO3", 1.92311)]
    [InlineData("As", "As2O5", 1.53387)]
    [InlineData("B", "H3BO3", 5.71945)]
    [InlineData("B", "B2O3", 3.21988)]
    [InlineData("B", "DOT", 4.76969)]
    [InlineData("Zn", "ZnO", 1.24468)]
    public void Factors_from_elements_to_what_retentions_count(string from, string to, double factor) =>
        Assert.Equal(factor, Factor(from, to), 1e-5);

    private static double Factor(string from, string to) =>
        Substances.Between(Substances.Find(from)!, Substances.Find(to)!)!.Factor;
}
