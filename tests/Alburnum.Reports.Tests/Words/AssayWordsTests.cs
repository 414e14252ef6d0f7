using Alburnum.Assaying;
using Alburnum.Reports.Words;
using Alburnum.Timber;

namespace Alburnum.Reports.Tests.Words;

public sealed class AssayWordsTests
{
    private static readonly Provenance Invented = new(Standing.CommonPractice, "Invented", "", "", "");

    [Theory]
    [InlineData(480, 520, "how trees differ (43 kg/m³, 10 % of it: Invented, common practice)")]
    [InlineData(300, 700, "how trees differ (100 kg/m³: any density from 300 to 700 kg/m³, with even chance)")]
    public void A_usual_density_says_what_its_uncertainty_allows_for(double low, double high, string says)
    {
        var species = new Species(
            "invented pine",
            ["Pinus inventa"],
            WoodType.Softwood,
            null,
            null,
            null,
            null,
            new Fact<DensityRange>(new(low, 500, high), Invented),
            ""
        );
        var basis = new AssayBasis { Density = UsualZoneDensity.Of(species, new(0.1, Invented)) };

        Assert.Contains(says, string.Join(' ', AssayWords.Current.Conversion(basis)), StringComparison.Ordinal);
    }
}
