using Alburnum.Impregnation;
using Alburnum.Impregnation.Sorbing;

namespace Alburnum.Tests.Impregnation.Sorbing;

/// <summary>What walls take beside the cavities of one wood.</summary>
public class SorptionTests
{
    [Fact]
    public void A_coefficient_counts_the_same_at_every_strength()
    {
        // 500 kg of wood take the product of 1000 L, and 0.5 m³ of cavities hold 500.
        Assert.Equal(2, new Sorption(2, null).In(10, 500, 0.5).AtFull, 1e-12);
        Assert.Equal(2, new Sorption(2, null).In(40, 500, 0.5).AtFull, 1e-12);
    }

    [Fact]
    public void A_limit_counts_less_the_stronger_the_solution()
    {
        // 500 kg of wood take 5 kg; 0.5 m³ of solution hold 10 and 20.
        Assert.Equal(0.5, new Sorption(null, 10).In(20, 500, 0.5).AtFull, 1e-12);
        Assert.Equal(0.25, new Sorption(null, 10).In(40, 500, 0.5).AtFull, 1e-12);
    }

    [Fact]
    public void With_both_the_walls_follow_Langmuir()
    {
        var walls = new Sorption(2, 10).In(20, 500, 0.5);

        // q = 2·20/(1 + 2·20/10) = 8 g/kg; 4 kg in the walls over 10 in the liquid.
        Assert.Equal(0.4, walls.AtFull, 1e-12);
        Assert.Equal(4, walls.Bend, 1e-12);
        Assert.Equal(walls.AtFull, walls.At(1), 1e-12);
        // q at half the strength: 20/3 g/kg.
        Assert.Equal(10 / 3.0 / 10, walls.At(0.5), 1e-12);
        Assert.Equal(0.3, walls.StrengthAtSlope(walls.SlopeAt(0.3)), 1e-9);
    }

    [Fact]
    public void Neither_is_refused() => Assert.Throws<ArgumentException>(() => new Sorption(null, null));

    [Fact]
    public void A_schedule_broken_off_ends_at_the_pressure_it_had()
    {
        var broken = new Schedule(
            "ramp",
            [new Stage("up", Contact.Liquid, 10, 100, 1100), new Stage("hold", Contact.Liquid, 60, 1100, 1100)]
        ).Until(4);

        Assert.Equal(4, broken.Minutes, 1e-12);
        Assert.Equal(500, broken.Stages[^1].ToKPa, 1e-9);
    }
}
