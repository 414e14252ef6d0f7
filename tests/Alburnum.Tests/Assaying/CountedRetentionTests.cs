using Alburnum.Assaying;
using Alburnum.Timber;
using CsCheck;

namespace Alburnum.Tests.Assaying;

public sealed class CountedRetentionTests
{
    private static readonly Provenance Invented = new(Standing.FromMemory, "invented", "", "", "");

    // Round numbers, so that factors can be seen: an oxide of X weighs 1.25 times its X.
    private static readonly Substances Substances = new(
        new Dictionary<string, Fact<double>>(StringComparer.Ordinal)
        {
            ["O"] = new(16, Invented),
            ["H"] = new(1, Invented),
            ["Cu"] = new(64, Invented),
            ["Cr"] = new(52, Invented),
            ["B"] = new(11, Invented),
            ["Na"] = new(23, Invented),
            ["Cl"] = new(35, Invented),
            ["C"] = new(12, Invented),
            // A group of one letter more than an element.
            ["Dda"] = new(300, Invented),
        },
        [
            new(["boric acid", "Borsäure"], "H3BO3"),
            new(["chloride quat", "CQ"], "DdaCl"),
            new(["carbonate quat"], "Dda2CO3"),
            new(["mixed quat"], null),
        ],
        [new(["quat", "total quat"], ["chloride quat", "mixed quat"], "which one the figure is of")],
        []
    );

    private static readonly ProductFormula Quat = new(
        "invented quat",
        "invented copper quat",
        [
            new(Find("CuO"), 0.6) { Least = 0.55, Most = 0.65 },
            new(Find("chloride quat"), 0.4) { Least = 0.35, Most = 0.45 },
        ],
        null
    );

    private static readonly ProductFormula Product = new(
        "invented",
        "invented product",
        [new(Find("CuO"), 0.2), new(Find("CrO3"), 0.5)],
        null
    );

    private static readonly ZoneDensity Density = new StatedZoneDensity(new(400, 20));

    [Theory]
    [InlineData("Cu", "CuO", 1.25)]
    [InlineData("CuO", "Cu", 0.8)]
    [InlineData("Cr", "CrO3", 100.0 / 52)]
    [InlineData("B", "boric acid", 62.0 / 11)]
    [InlineData("Na2B8O13·4H2O", "boric acid", 8 * 62.0 / 414)]
    public void A_substance_counts_as_another_by_the_element_they_share(string from, string to, double factor) =>
        Assert.Equal(factor, Substances.Between(Find(from), Find(to))!.Factor, 12);

    [Theory]
    [InlineData("Cu", "H3BO3")]
    [InlineData("CuO", "CrO3")]
    [InlineData("NaCl", "Na")]
    public void Substances_without_an_element_of_their_own_in_common_count_as_nothing(string from, string to) =>
        Assert.True(Substances.Find(from) is not { } measured || Substances.Between(measured, Find(to)) is null);

    [Theory]
    [InlineData("Xx")]
    [InlineData("copper")]
    [InlineData("Cu(OH)2")]
    [InlineData("")]
    public void A_name_that_is_neither_known_nor_a_formula_is_no_substance(string name) =>
        Assert.Null(Substances.Find(name));

    [Fact]
    public void Salts_of_one_group_count_as_each_other_by_the_group()
    {
        // 2·335 of the chloride for 2·300 + 12 + 3·16 of the carbonate.
        Assert.Equal(670.0 / 660, Substances.Between(Find("carbonate quat"), Find("CQ"))!.Factor, 12);
        Assert.Equal(335, Substances.MolarMass(Find("CQ")));
    }

    [Fact]
    public void A_mixture_without_a_formula_counts_only_as_itself()
    {
        var mixed = Find("mixed quat");

        Assert.Null(Substances.MolarMass(mixed));
        Assert.Null(Substances.Between(mixed, Find("CQ")));
        Assert.Equal(1, Substances.Between(mixed, mixed)!.Factor);
        Fault(CountingFault.SharesNothing, new() { Product = Quat }, MgPerKg("mixed quat", 1, 0));
    }

    [Theory]
    [InlineData("Borsäure (boric acid)", "boric acid")]
    [InlineData("boric acid (H3BO3)", "boric acid")]
    [InlineData("B as H3BO3", "H3BO3")]
    [InlineData("Cu, calculated as CuO", "CuO")]
    [InlineData("Cu (Cu) as CuO", "CuO")]
    [InlineData("B (als Borsäure)", "boric acid")]
    [InlineData("B beräknat som boric acid", "boric acid")]
    [InlineData("total quat (as CQ)", "chloride quat")]
    [InlineData("quat (mixed quat)", "mixed quat")]
    public void A_substance_is_known_as_laboratories_write_it(string written, string name) =>
        Assert.Equal(name, Find(written).Name);

    [Theory]
    [InlineData("quat", "\"chloride quat\" or \"mixed quat\"; what decides: which one the figure is of")]
    [InlineData("quat as Cu", "\"chloride quat\" or \"mixed quat\"")]
    [InlineData(
        "Cu (CuO)",
        "\"Cu\" or \"CuO\"; what decides: whether the figure is of Cu, or of that expressed as CuO"
    )]
    [InlineData("chlorid quat", "did you mean \"chloride quat\"?")]
    [InlineData("Cu as B", "a substance")]
    public void A_name_that_leaves_open_what_is_meant_is_asked_about(string written, string asked)
    {
        Assert.Null(Substances.Find(written));
        Assert.Contains(asked, Substances.LookUp(written).Expected("a substance"), StringComparison.Ordinal);
    }

    [Fact]
    public void Per_cent_and_milligrams_in_a_kilogram_of_one_sample_are_added_up()
    {
        var counted = Counted(
            new() { CountedAs = [Find("Cu"), Find("CQ")] },
            new ReportedContent(Find("Cu"), ContentUnit.PercentByMass, new(0.5, 0.01), false),
            MgPerKg("CQ", 1000, 100)
        );

        Assert.Equal(new(6000, Math.Sqrt(2) * 100), counted.MgPerKg);
    }

    [Fact]
    public void A_share_within_the_limits_of_the_formula_is_as_the_formula_has_it()
    {
        var basis = new AssayBasis { Product = Quat };
        IReadOnlyList<PartOffFormula> Off(double copper, double quat) =>
            Counted(basis, MgPerKg("CuO", copper, 1), MgPerKg("CQ", quat, 1)).PartsOffFormula;

        Assert.Empty(Off(6000, 4000));
        Assert.Empty(Off(5510, 4490));
        Assert.Empty(Off(6490, 3510));
        Assert.Equal(
            [(0.6, 0.55, 0.65), (0.4, 0.35, 0.45)],
            Off(5400, 4600).Select(part => (part.Expected, part.Least, part.Most))
        );
        Assert.NotEmpty(Off(6600, 3400));
    }

    [Fact]
    public void Parts_without_a_figure_are_named()
    {
        var basis = new AssayBasis { Product = Quat };

        var copper = Counted(basis, MgPerKg("Cu", 4800, 0));
        Assert.Equal(10_000, copper.MgPerKg!.Value.Value, 6);
        Assert.Equal(["chloride quat"], copper.NotAnalysed.Select(part => part.Name));
        Assert.Empty(Counted(basis, MgPerKg("Cu", 4800, 0), MgPerKg("CQ", 4000, 0)).NotAnalysed);
        Assert.Empty(Counted(new(), MgPerKg("Cu", 4800, 0)).NotAnalysed);
    }

    [Fact]
    public void There_and_back_is_the_same_substance() =>
        Gen.Select(Gen.Int[0, 9], Gen.Int[1, 9], Gen.Int[0, 9], Gen.Int[1, 9])
            .Sample(
                (oxygen, copper, oxygen2, copper2) =>
                {
                    var (from, to) = (Find($"Cu{copper}O{oxygen}"), Find($"Cu{copper2}O{oxygen2}"));
                    Assert.Equal(1, Substances.Between(from, to)!.Factor * Substances.Between(to, from)!.Factor, 1e-12);
                }
            );

    [Fact]
    public void A_content_by_mass_becomes_one_by_volume_with_the_density_of_the_zone()
    {
        var counted = Counted(new() { CountedAs = [Find("CuO")], Density = Density }, MgPerKg("Cu", 8000, 400));

        Assert.Equal(10_000, counted.MgPerKg!.Value.Value, 9);
        Assert.Equal(4, counted.KgPerM3!.Value.Value, 12);
        Assert.Equal((0.2, 0.2), (counted.LaboratoryKgPerM3, counted.DensityKgPerM3));
        Assert.Equal(Math.Sqrt(0.08), counted.KgPerM3.Value.StandardUncertainty, 12);
    }

    [Theory]
    [InlineData(ContentUnit.MgPerKg, false, true)]
    [InlineData(ContentUnit.KgPerM3, true, false)]
    public void A_density_without_its_uncertainty_leaves_that_of_what_rests_on_it_unknown(
        ContentUnit unit,
        bool isVolumeKnown,
        bool isMassKnown
    )
    {
        var bare = new AssayBasis { Density = new StatedZoneDensity(new(400, 0)) { IsUncertaintyKnown = false } };
        var counted = Counted(bare, new ReportedContent(Find("Cu"), unit, new(10, 1), IsBelowDetection: false));

        Assert.Equal((isVolumeKnown, isMassKnown), (counted.IsVolumeUncertaintyKnown, counted.IsMassUncertaintyKnown));
        Assert.True(counted.IsLaboratoryUncertaintyKnown);
    }

    [Fact]
    public void Every_unit_says_the_same() =>
        Gen.Select(Gen.Double[1, 1e5], Gen.Double[0.01, 1000], Gen.Double[80, 1400], Gen.Double[1, 100])
            .Sample(
                (mgPerKg, u, density, depthMm) =>
                {
                    var basis = new AssayBasis
                    {
                        Density = new StatedZoneDensity(new(density, 0)),
                        ZoneDepthMm = depthMm,
                    };
                    var byMass = Counted(basis, MgPerKg("Cu", mgPerKg, u));
                    (ContentUnit, Estimate)[] others =
                    [
                        (ContentUnit.PercentByMass, new(mgPerKg / 1e4, u / 1e4)),
                        (ContentUnit.KgPerM3, byMass.KgPerM3!.Value),
                        (ContentUnit.GPerM2, byMass.GPerM2!.Value),
                    ];
                    foreach (var (unit, content) in others)
                    {
                        var again = Counted(basis, new ReportedContent(Find("Cu"), unit, content, false));
                        Near(byMass.MgPerKg!.Value, again.MgPerKg!.Value);
                        Near(byMass.KgPerM3.Value, again.KgPerM3!.Value);
                        Near(byMass.GPerM2.Value, again.GPerM2!.Value);
                    }
                }
            );

    [Fact]
    public void Elements_of_a_product_add_up_to_it_by_the_shares_that_were_measured()
    {
        var basis = new AssayBasis { Product = Product };

        // 2000 of CuO alone is a fifth of the product; with 5000 of CrO3 it is seven tenths.
        Assert.Equal(10_000, Counted(basis, MgPerKg("Cu", 1600, 0)).MgPerKg!.Value.Value, 6);
        Assert.Equal(10_000, Counted(basis, MgPerKg("Cu", 1600, 0), MgPerKg("Cr", 2600, 0)).MgPerKg!.Value.Value, 6);
    }

    [Fact]
    public void Below_detection_stays_a_limit()
    {
        var counted = Counted(
            new() { CountedAs = [Find("CuO")], Density = Density },
            new ReportedContent(Find("Cu"), ContentUnit.MgPerKg, new(8, 0), true)
        );

        Assert.True(counted.IsBelowDetection);
        Assert.Equal(10, counted.MgPerKg!.Value.Value, 12);
    }

    [Fact]
    public void A_part_below_detection_is_anything_up_to_its_limit()
    {
        var counted = Counted(
            new() { CountedAs = [Find("Cu"), Find("Cr")] },
            MgPerKg("Cu", 1000, 0),
            new ReportedContent(Find("Cr"), ContentUnit.MgPerKg, new(120, 0), true)
        );

        Assert.False(counted.IsBelowDetection);
        Assert.Equal(1060, counted.MgPerKg!.Value.Value, 9);
        Assert.Equal(120 / Math.Sqrt(12), counted.MgPerKg.Value.StandardUncertainty, 9);
    }

    [Fact]
    public void Without_density_or_depth_a_unit_is_not_known()
    {
        var byMass = Counted(new(), MgPerKg("Cu", 1000, 10));
        var byArea = Counted(new(), new ReportedContent(Find("Cu"), ContentUnit.GPerM2, new(20, 1), false));

        Assert.Null(byMass.KgPerM3);
        Assert.Null(byMass.GPerM2);
        Assert.Null(byArea.KgPerM3);
        Assert.Null(byArea.MgPerKg);
    }

    [Fact]
    public void What_cannot_be_counted_says_why()
    {
        Fault(CountingFault.NothingToCountAs, new(), MgPerKg("Cu", 1, 0), MgPerKg("Cr", 1, 0));
        Fault(CountingFault.SharesNothing, new() { CountedAs = [Find("H3BO3")] }, MgPerKg("Cu", 1, 0));
        Fault(
            CountingFault.FitsSeveral,
            new() { CountedAs = [Find("CuO"), Find("Cu2O")] },
            MgPerKg("Cu", 1, 0),
            MgPerKg("Cr", 1, 0)
        );
        Fault(CountingFault.FitsSeveral, new() { CountedAs = [Find("CuCrO4")] }, MgPerKg("CuCr2O4", 1, 0));
        Fault(CountingFault.CountedTwice, new() { Product = Product }, MgPerKg("Cu", 1, 0), MgPerKg("CuO", 1, 0));
        Fault(CountingFault.NotMeasured, new() { CountedAs = [Find("Cu"), Find("Cr")] }, MgPerKg("Cu", 1, 0));
        Fault(
            CountingFault.UnitsDiffer,
            new() { Product = Product },
            MgPerKg("Cu", 1, 0),
            new ReportedContent(Find("Cr"), ContentUnit.KgPerM3, new(1, 0), false)
        );
    }

    [Fact]
    public void A_substance_that_is_counted_itself_counts_as_itself_though_another_shares_its_element()
    {
        var counted = Counted(
            new() { CountedAs = [Find("CuO"), Find("Cu2O")] },
            MgPerKg("CuO", 1000, 0),
            MgPerKg("Cu2O", 500, 0)
        );

        Assert.Equal(1500, counted.MgPerKg!.Value.Value, 9);
    }

    [Fact]
    public void Parts_that_do_not_stand_as_the_formula_has_them_are_told()
    {
        var basis = new AssayBasis { Product = Product };

        // The formula has two parts of CuO to five of CrO3.
        Assert.Empty(Counted(basis, MgPerKg("CuO", 2000, 20), MgPerKg("CrO3", 5000, 50)).PartsOffFormula);
        Assert.Empty(Counted(basis, MgPerKg("CuO", 2000, 200), MgPerKg("CrO3", 6000, 600)).PartsOffFormula);
        var off = Counted(basis, MgPerKg("CuO", 4000, 40), MgPerKg("CrO3", 5000, 50)).PartsOffFormula;

        Assert.Equal(["CuO", "CrO3"], off.Select(part => part.Compound.Formula));
        Assert.Equal(4.0 / 9, off[0].Found.Value, 9);
        Assert.Equal(2.0 / 7, off[0].Expected, 9);
        // 4000/9000 with 1 % of each: √2·0.01·f(1 − f).
        Assert.Equal(Math.Sqrt(2) * 0.01 * 20 / 81, off[0].Found.StandardUncertainty, 9);
    }

    [Fact]
    public void A_part_that_was_not_found_is_held_against_the_formula_by_the_greatest_share_that_it_may_have()
    {
        var basis = new AssayBasis { Product = Product };
        PartOffFormula? Copper(double limit) =>
            Counted(
                basis,
                new ReportedContent(Find("CuO"), ContentUnit.MgPerKg, new(limit, 0), true),
                MgPerKg("CrO3", 5000, 50)
            )
                .PartsOffFormula.FirstOrDefault(part => part.Compound.Formula == "CuO");

        // The formula has two parts of CuO to five of CrO3: 2000 beside 5000.
        var off = Copper(1900)!;
        Assert.Equal((true, 19.0 / 69), (off.IsAtMost, off.Found.Value));
        Assert.Equal(19.0 / 69 * 50 / 6900, off.Found.StandardUncertainty, 12);
        Assert.Null(Copper(2000));
        // Much more may be there, or nothing: no telling.
        Assert.Null(Copper(9000));
        Assert.NotNull(Copper(5));
    }

    [Fact]
    public void Without_stated_uncertainties_only_what_is_far_off_the_formula_is_told()
    {
        var basis = new AssayBasis { Product = Product };
        IEnumerable<(string, bool)> Off(double copper) =>
            Counted(
                basis,
                new ReportedContent(Find("CuO"), ContentUnit.MgPerKg, new(copper, 0), false)
                {
                    IsUncertaintyKnown = false,
                },
                MgPerKg("CrO3", 5000, 50)
            )
                .PartsOffFormula.Select(part => (part.Compound.Formula, part.IsGross));

        Assert.Empty(Off(2500));
        // 5/10 where the formula has 2/7.
        Assert.Equal([("CuO", true)], Off(5000));
        Assert.Equal([("CuO", true)], Off(500));
    }

    [Fact]
    public void Sub_samples_leave_their_scatter_little_known() =>
        Assert.Equal(2, Counted(new(), MgPerKg("Cu", 1000, 10) with { DegreesOfFreedom = 2 }).DegreesOfFreedom, 9);

    [Fact]
    public void A_usual_density_lies_in_the_middle_between_the_two_volumes_and_carries_its_spread()
    {
        var density = Usual(new(null, 560, null));

        Assert.Equal(500, density.InVolumeAt12KgPerM3, 9);
        Assert.True(density.InGreenVolumeKgPerM3 < 500);
        var width = 500 - density.InGreenVolumeKgPerM3;
        Assert.Equal(500 - width / 2, density.KgPerM3.Value, 9);
        Assert.Equal(width / 2 / Math.Sqrt(3), density.VolumeKgPerM3, 9);
        Assert.Equal(0.1 * density.KgPerM3.Value, density.SpreadKgPerM3, 9);
        Assert.False(density.IsSpreadByEnds);
        Assert.True(density.KgPerM3.StandardUncertainty > density.SpreadKgPerM3);
    }

    [Fact]
    public void Ends_of_a_density_far_apart_say_more_than_the_usual_variation()
    {
        // Rectangular about its middle: half of 400 over √3.
        var middle = Usual(new(400, null, 800));
        Assert.True(middle.IsSpreadByEnds);
        Assert.Equal(200 / Math.Sqrt(3) / 600, middle.SpreadKgPerM3 / middle.KgPerM3.Value, 9);

        // Seen from a mean that is not the middle it spreads further.
        var aside = Usual(new(400, 500, 800));
        Assert.Equal(Math.Sqrt(200 * 200 / 3.0 + 100 * 100) / 500, aside.SpreadKgPerM3 / aside.KgPerM3.Value, 9);
        Assert.False(Usual(new(480, 500, 520)).IsSpreadByEnds);
    }

    private static UsualZoneDensity Usual(DensityRange range) =>
        UsualZoneDensity.Of(
            new Species(
                "invented pine",
                ["Pinus inventa"],
                WoodType.Softwood,
                null,
                null,
                null,
                null,
                new Fact<DensityRange>(range, Invented),
                ""
            ),
            new(0.1, Invented)
        )!;

    private static Compound Find(string name) => Substances.Find(name)!;

    private static ReportedContent MgPerKg(string substance, double value, double u) =>
        new(Find(substance), ContentUnit.MgPerKg, new(value, u), false);

    private static CountedRetention Counted(AssayBasis basis, params ReportedContent[] contents) =>
        Assert.IsType<CountedRetention>(CountedRetention.Of(contents, basis, Substances));

    private static void Fault(CountingFault fault, AssayBasis basis, params ReportedContent[] contents) =>
        Assert.Equal(new NotCounted(fault), CountedRetention.Of(contents, basis, Substances));

    private static void Near(Estimate expected, Estimate found)
    {
        Assert.Equal(1, found.Value / expected.Value, 1e-9);
        Assert.Equal(1, found.StandardUncertainty / expected.StandardUncertainty, 1e-9);
    }
}
