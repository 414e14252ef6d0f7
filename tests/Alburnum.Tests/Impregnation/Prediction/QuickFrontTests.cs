using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Tests.Shared.ClosedForms;

namespace Alburnum.Tests.Impregnation.Prediction;

/// <summary>The quick model against its closed form; Alburnum.Flow.Tests holds it against the flow solver.</summary>
public class QuickFrontTests
{
    private const double Voids = 0.6;

    private static readonly Schedule FullCell = new(
        "full cell",
        [
            new Stage("initial vacuum", Contact.Air, 30, 15, 15),
            new Stage("pressure", Contact.Liquid, 60, 1300, 1300),
            new Stage("final vacuum", Contact.Air, 15, 20, 20),
        ]
    );

    [Fact]
    public void Under_constant_pressure_from_a_vacuum_it_is_the_closed_form()
    {
        // Two hours at 0.1 kPa first, so that next to no air is left ahead; without surface tension, no capillary pull.
        var liquid = new TreatingLiquid("test", 1.002, 1000, 0);
        var schedule = new Schedule(
            "hold",
            [new Stage("vacuum", Contact.Air, 1e5, 0.1, 0.1), new Stage("pressure", Contact.Liquid, 120, 1200, 1200)]
        );
        var depth = new QuickFront(schedule, liquid, isRound: false).DepthMm(1e-17, Voids, 50);

        Assert.Equal(PlaneFront.DepthMm(1e-17, 1200, 120, 1.002, Voids), depth, 0.01 * depth);
    }

    [Fact]
    public void Permeability_is_found_again_from_the_depth()
    {
        var front = new QuickFront(FullCell, TreatingLiquid.Water(), isRound: false);
        foreach (var k in new[] { 1e-20, 3e-19, 2e-18, 4e-17 })
            Assert.Equal(k, front.PermeabilityM2(front.DepthMm(k, Voids, 50), Voids, 50), 1e-3 * k);
    }
}
