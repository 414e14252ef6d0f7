using Alburnum.Assaying;
using Alburnum.Records.Assays;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Assays;

public sealed class ContentTextTests
{
    private static readonly Substances Substances = new FactLibrary(Repository.At("data")).Substances;

    [Theory]
    [InlineData("1850 ± 60 (k=1) mg/kg Cu", ContentUnit.MgPerKg, 1850, 60, "Cu")]
    [InlineData("1850 +- 120 (k = 2) ppm copper", ContentUnit.MgPerKg, 1850, 60, "Cu")]
    [InlineData("1.85±0.06 (k=1) g/kg Cu", ContentUnit.MgPerKg, 1850, 60, "Cu")]
    [InlineData("0.19 ± 0.01 (k=1) % m/m CuO", ContentUnit.PercentByMass, 0.19, 0.01, "CuO")]
    [InlineData("3.2 ± 0.4 (k=2) kg/m3 boric acid", ContentUnit.KgPerM3, 3.2, 0.2, "H3BO3")]
    [InlineData("1850 ± 6 % (k=2) mg/kg Cu", ContentUnit.MgPerKg, 1850, 55.5, "Cu")]
    [InlineData("1.85 ± 6% (k=2) g/kg Cu", ContentUnit.MgPerKg, 1850, 55.5, "Cu")]
    [InlineData("1.9 ± 5 % (k=2) % CuO", ContentUnit.PercentByMass, 1.9, 0.0475, "CuO")]
    [InlineData("0,18 ± 0,01 (k=1) % m/m Cu", ContentUnit.PercentByMass, 0.18, 0.01, "Cu")]
    [InlineData("0,180 ± 0,010 (k=2,0) % m/m Cu", ContentUnit.PercentByMass, 0.18, 0.005, "Cu")]
    [InlineData("1850 ± 60 (k=1) mg/kg TS Kupfer", ContentUnit.MgPerKg, 1850, 60, "Cu")]
    [InlineData("1850 ± 60 (k=1) mg/kg dry copper (Cu)", ContentUnit.MgPerKg, 1850, 60, "Cu")]
    [InlineData("0,19 ± 0,01 (k=1) Gew.-% Kupfer als CuO", ContentUnit.PercentByMass, 0.19, 0.01, "CuO")]
    [InlineData("0.19 ± 0.01 (k=1) % (m/m) CuO", ContentUnit.PercentByMass, 0.19, 0.01, "CuO")]
    [InlineData("0.19 ± 0.01 (k=1) wt% CuO", ContentUnit.PercentByMass, 0.19, 0.01, "CuO")]
    [InlineData("60 ± 5 (k=1) mg/kg quat (as DDAC)", ContentUnit.MgPerKg, 60, 5, "DdaCl")]
    [InlineData("12 ± 1 (k=1) g/m² permethrin", ContentUnit.GPerM2, 12, 1, "C21H20Cl2O3")]
    public void A_figure_is_read_with_its_unit_and_substance(
        string text,
        ContentUnit unit,
        double value,
        double u,
        string formula
    )
    {
        var content = ContentText.Read(text, Substances)!.Content;

        Assert.Equal((unit, formula, false), (content.Unit, content.Measured.Formula, content.IsBelowDetection));
        Assert.Equal(value, content.Content.Value, 9);
        Assert.Equal(u, content.Content.StandardUncertainty, 9);
    }

    [Theory]
    [InlineData("Didecyldimethylammoniumchlorid", "DDAC")]
    [InlineData("didecyl dimethyl ammonium chloride", "DDAC")]
    [InlineData("C22H48ClN", "DDAC")]
    [InlineData("DDACarbonate", "DDA carbonate")]
    [InlineData("benzalkonium chloride", "BAC")]
    [InlineData("ADBAC", "BAC")]
    [InlineData("Tebuconazol", "tebuconazole")]
    [InlineData("tebukonazol", "tebuconazole")]
    [InlineData("propikonatsoli", "propiconazole")]
    [InlineData("Borsyra", "boric acid")]
    [InlineData("kobberoksid", "copper oxide")]
    [InlineData("Kupfer(II)-oxid", "copper oxide")]
    [InlineData("3-iodo-2-propynyl butylcarbamate", "IPBC")]
    [InlineData("copper naphthenate as Cu", "Cu")]
    public void A_substance_is_known_by_the_names_of_several_languages(string written, string name) =>
        Assert.Equal(name, Substances.Find(written)?.Name);

    [Fact]
    public void What_ships_of_a_product_is_the_whole_of_it_and_within_its_limits() =>
        Assert.All(
            Substances.Products,
            product =>
            {
                Assert.Equal(1, product.Parts.Sum(part => part.Share), 1e-9);
                Assert.All(product.Parts, part => Assert.InRange(part.Share, part.Least, part.Most));
            }
        );

    [Fact]
    public void Pounds_in_a_cubic_foot_are_turned_into_kilograms_in_a_cubic_metre() =>
        Assert.Equal(6.407, ContentText.Read("0.40 ± 0.01 (k=1) pcf CuO", Substances)!.Content.Content.Value, 3);

    [Fact]
    public void Sub_samples_are_averaged_and_their_scatter_is_the_uncertainty_of_the_mean()
    {
        var read = ContentText.Read("1.0; 1.2; 1.4 % CuO", Substances)!;

        Assert.Equal(3, read.SubSamples);
        Assert.Equal(1.2, read.Content.Content.Value, 9);
        Assert.Equal(0.2 / Math.Sqrt(3), read.Content.Content.StandardUncertainty, 9);
    }

    [Fact]
    public void A_figure_without_uncertainty_is_read_as_such()
    {
        var content = ContentText.Read("1850 mg/kg Cu", Substances)!.Content;

        Assert.Equal((1850, false), (content.Content.Value, content.IsUncertaintyKnown));
        Assert.True(ContentText.Read("1850; 1900 mg/kg Cu", Substances)!.Content.IsUncertaintyKnown);
        Assert.True(ContentText.Read("< 5 mg/kg Cu", Substances)!.Content.IsUncertaintyKnown);
    }

    [Fact]
    public void Below_detection_is_a_limit_and_no_value()
    {
        var content = ContentText.Read("< 5 mg/kg As", Substances)!.Content;

        Assert.Equal((true, new Estimate(5, 0)), (content.IsBelowDetection, content.Content));
    }

    [Fact]
    public void The_scatter_of_sub_samples_has_one_degree_of_freedom_less_than_they_are() =>
        Assert.Equal(2, ContentText.Read("1.0; 1.2; 1.4 % CuO", Substances)!.Content.DegreesOfFreedom, 9);

    [Theory]
    [InlineData("1.9 ± 0.1 % CuO", "the coverage factor k of the ±")]
    [InlineData("1850 ± 6 % mg/kg Cu", "the coverage factor k of the ±")]
    [InlineData("n.d.", "the limit of detection, as the laboratory states it")]
    [InlineData("nd Cu", "the limit of detection, as the laboratory states it")]
    [InlineData("n.d. mg/kg Cu", "the limit of detection, as the laboratory states it")]
    [InlineData("1,850 ± 120 (k=2) mg/kg Cu", "no comma before three digits")]
    [InlineData("18500 ± 1,120 (k=2) mg/kg Cu", "no comma before three digits")]
    [InlineData("1850 ± 60 mg/kg Cu", "the coverage factor k of the ±")]
    [InlineData("1850; 1900 ± 60 mg/kg Cu", "the coverage factor k of the ±")]
    [InlineData("1850 ± 0 (k=2) mg/kg Cu", "an uncertainty above 0")]
    [InlineData("1850 ± 0 mg/kg Cu", "an uncertainty above 0")]
    [InlineData("5 ± 1 (k=1) mg/kg kryptonite", "a substance by its formula")]
    [InlineData("5 ± 1 (k=1) mg/kg quat", "the one that is meant: \"DDAC\" or \"DDA carbonate\" or \"BAC\"")]
    [InlineData("5 ± 1 (k=1) mg/kg azoles", "the one that is meant: \"tebuconazole\" or \"propiconazole\"")]
    [InlineData("5 ± 1 (k=1) mg/kg copper naphthenate", "the one that is meant: \"copper\"; what decides:")]
    [InlineData("1850 ± 60 (k=1) mg/kg", "content with its uncertainty")]
    [InlineData("1850 ± 60 (k=1) Cu", "content with its uncertainty")]
    [InlineData("< 5 ± 1 (k=1) mg/kg Cu", "content with its uncertainty")]
    [InlineData("< 0 mg/kg Cu", "content with its uncertainty")]
    [InlineData("< 5; 6 mg/kg Cu", "content with its uncertainty")]
    [InlineData("101 ± 1 (k=1) % Cu", "content with its uncertainty")]
    [InlineData("-5 ± 1 (k=1) mg/kg Cu", "content with its uncertainty")]
    [InlineData("5 ± 1 (k=9) mg/kg Cu", "content with its uncertainty")]
    [InlineData("", "content with its uncertainty")]
    public void What_lacks_a_part_is_no_figure_and_the_part_is_named(string text, string expected)
    {
        Assert.Null(ContentText.Read(text, Substances));
        Assert.StartsWith(expected, ContentText.Expected(text, Substances), StringComparison.Ordinal);
    }
}
