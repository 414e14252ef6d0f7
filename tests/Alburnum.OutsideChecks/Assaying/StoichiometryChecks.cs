using Alburnum.Assaying;
using Alburnum.Records.Assays;
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

    [Theory]
    [Published("Encyclopaedia articles on the substances", "molar mass in the table of properties")]
    [InlineData("DDAC", 362.08)]
    [InlineData("C22H48ClN", 362.08)]
    [InlineData("tebuconazole", 307.82)]
    [InlineData("propiconazole", 342.22)]
    [InlineData("basic copper carbonate", 221.116)]
    public void Molar_masses_of_what_copper_preservatives_hold(string name, double gPerMol) =>
        Assert.Equal(gPerMol, Substances.MolarMass(Substances.Find(name)!)!.Value, 0.01);

    [Theory]
    [WorkedOut(
        "two molar masses of the chloride as printed in an encyclopaedia, 362.08 g/mol, over that of the carbonate: less two of chlorine, plus one of CO3; the hydrogen carbonate has HCO3 for the chlorine"
    )]
    [InlineData("DDA carbonate", 724.16 / (724.16 - 2 * 35.4527 + 60.0089))]
    [InlineData("DDA bicarbonate", 362.08 / (362.08 - 35.4527 + 61.0168))]
    public void Salts_of_the_didecyldimethylammonium_ion_are_counted_as_its_chloride(string from, double factor) =>
        Assert.Equal(factor, Factor(from, "DDAC"), 1e-5);

    [Fact]
    [WorkedOut("two of copper, 63.546, over the molar mass printed in an encyclopaedia, 221.116 g/mol")]
    public void Basic_copper_carbonate_holds_57_48_per_cent_of_copper() =>
        Assert.Equal(2 * 63.546 / 221.116, Factor("basic copper carbonate", "Cu"), 1e-5);

    [Theory]
    [WorkedOut("by hand: copper times 1.25178 and the quat as DDAC, over a million, times the density of the zone")]
    [InlineData("acq-d", "5000 mg/kg Cu", "3100 mg/kg DDAC", 4.0245)]
    [InlineData("acq-c", "0.5 % m/m Cu", "3100 mg/kg BAC", 4.0245)]
    [InlineData("acq-d", "5000 mg/kg Cu", "3053.3 mg/kg DDA carbonate", 4.0245)]
    [InlineData("ca-b", "5000 mg/kg Cu", "200 mg/kg tebuconazole", 2.236)]
    public void Figures_of_a_report_make_the_retention_of_a_product(
        string product,
        string copper,
        string organic,
        double kgPerM3
    )
    {
        var counted = CountedRetention.Of(
            [ContentText.Read(copper, Substances)!.Content, ContentText.Read(organic, Substances)!.Content],
            new()
            {
                Product = Substances.Products.Single(each => each.Key == product),
                Density = new StatedZoneDensity(new(430, 20)),
            },
            Substances
        );

        Assert.Equal(kgPerM3, Assert.IsType<CountedRetention>(counted).KgPerM3!.Value.Value, 1e-3);
    }

    [Theory]
    [Transcription]
    [Published(
        "Wood Handbook (FPL-GTR-190), 2010",
        "chapter 15, actives of ACQ and of copper azole, in whole per cent"
    )]
    [InlineData("acq-b", "CuO", 67)]
    [InlineData("acq-c", "BAC", 33)]
    [InlineData("acq-d", "CuO", 67)]
    [InlineData("acq-d", "DDAC", 33)]
    [InlineData("ca-b", "Cu", 96)]
    [InlineData("ca-b", "tebuconazole", 4)]
    [InlineData("ca-c", "Cu", 96)]
    [InlineData("ca-c", "tebuconazole", 2)]
    [InlineData("ca-c", "propiconazole", 2)]
    public void Shares_of_products_are_those_of_the_handbook(string product, string part, int percent) =>
        Assert.Equal(percent, Math.Round(100 * Part(product, part).Share, 0, MidpointRounding.AwayFromZero));

    [Theory]
    [Transcription]
    [Published(
        "United States Environmental Protection Agency, alkaline copper quaternary",
        "limits of the two active ingredients (epa.gov/oppad001/reregistration/cca/acq.htm)"
    )]
    [InlineData("CuO", 0.62, 0.71)]
    [InlineData("DDAC", 0.29, 0.38)]
    public void Limits_of_ACQ_are_those_of_the_agency(string part, double least, double most) =>
        Assert.Equal((least, most), (Part("acq-d", part).Least, Part("acq-d", part).Most));

    private static ProductPart Part(string product, string part) =>
        Substances
            .Products.Single(each => each.Key == product)
            .Parts.Single(each => each.Compound == Substances.Find(part));

    private static double Factor(string from, string to) =>
        Substances.Between(Substances.Find(from)!, Substances.Find(to)!)!.Factor;
}
