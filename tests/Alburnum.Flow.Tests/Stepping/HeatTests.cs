using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Heating;

namespace Alburnum.Flow.Tests.Stepping;

public class HeatTests
{
    private const double Seconds = 3600;
    private static readonly WoodHeat Wood = new(450, 15);

    private static FlowProblem Column(
        double[] edgesMm,
        double permeabilityM2,
        FluidPair fluids,
        (double Wood, double Solution) celsius
    )
    {
        var unit = WarmedWood.Unit;
        return new(
            LineMesh.Flat(edgesMm, permeabilityM2, 0.6),
            fluids,
            new double[edgesMm.Length - 1],
            Heat: new(
                LineMesh.Flat(edgesMm, unit.Permeability.RadialM2, unit.VoidFraction),
                new Warming(Wood, celsius.Wood, celsius.Solution)
            )
        );
    }

    [Fact]
    public void A_slab_between_two_hot_faces_warms_as_the_series_says()
    {
        // No liquid comes in: conduction alone. Half the slab, closed at its middle.
        const double half = 0.04;
        const double hot = 110;
        var edges = GradedEdges.FromOneEnd(1000 * half, 80, 3);
        var steam = new Schedule("steam", [new Stage("steam", Contact.Air, Seconds / 60, 101.325, 101.325, hot)]);
        var run = Flows.Run(Column(edges, 1e-17, Flows.Sharp(), (10, 20)), steam, StepControl.Usual);

        var diffusivity = Wood.ConductivityWPerMK(0) / Wood.WallsJPerM3K;
        for (var i = 0; i < 80; i++)
        {
            var x = (edges[i] + edges[i + 1]) / 2000;
            Assert.Equal(hot - (hot - 10) * Left(x / (2 * half)), run.Celsius![i], 0.3);
        }

        // Carslaw and Jaeger: (4/π) Σ sin((2n+1)πx/a)·exp(−(2n+1)²π²αt/a²)/(2n+1), x from one face, a the thickness.
        double Left(double place)
        {
            double sum = 0;
            for (var n = 1; n < 400; n += 2)
            {
                var decay = Math.Pow(n * Math.PI / (2 * half), 2) * diffusivity * Seconds;
                sum += 4 / Math.PI * Math.Sin(n * Math.PI * place) * Math.Exp(-decay) / n;
            }
            return sum;
        }
    }

    [Theory]
    [InlineData(1e-19)]
    [InlineData(1e-17)]
    [InlineData(1e-18)]
    public void Before_wood_is_full_hot_solution_brings_more_into_it_when_cold_than_cold_does_and_less_than_when_hot(
        double permeabilityM2
    )
    {
        double Taken(double woodCelsius, double solutionCelsius)
        {
            var liquid = TreatingLiquid.Water(solutionCelsius);
            var edges = GradedEdges.FromOneEnd(50, 60, 3);
            var run = Flows.Run(
                Column(edges, permeabilityM2, FluidPair.Of(liquid), (woodCelsius, solutionCelsius)),
                Flows.Hold(1300, 30),
                StepControl.Usual
            );
            Assert.All(run.Celsius!, celsius => Assert.InRange(celsius, woodCelsius - 1e-9, solutionCelsius + 1e-9));
            return run.Moments[^1].GainedM3;
        }

        var (cold, warmed, hot) = (Taken(10, 10), Taken(10, 70), Taken(70, 70));
        Assert.True(cold < warmed && warmed < hot, $"{cold}, {warmed}, {hot}");
    }

    [Fact]
    public void Hot_wood_put_into_a_cold_bath_draws_it_in_as_its_air_shrinks()
    {
        double Taken(double? firstCelsius)
        {
            var edges = GradedEdges.FromOneEnd(30, 60, 3);
            var baths = new Schedule(
                "baths",
                [
                    new Stage("first bath", Contact.Liquid, 240, 101.325, 101.325, firstCelsius),
                    new Stage("second bath", Contact.Liquid, 240, 101.325, 101.325),
                ]
            );
            // Nothing is drawn in by capillarity.
            var run = Flows.Run(Column(edges, 1e-15, Flows.Sharp(), (20, 20)), baths, StepControl.Usual);
            return run.Moments[^1].GainedM3 / (0.03 * 0.6);
        }

        Assert.Equal(0, Taken(null), 1e-6);
        // Air that all became hot and cold again would leave so much of its room to the bath, but for what the steps leave open.
        Assert.InRange(Taken(80), 0.1, 1 - 293.15 / 353.15 + 0.003);
    }
}
