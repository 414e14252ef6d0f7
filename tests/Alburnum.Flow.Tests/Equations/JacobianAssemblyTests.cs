using Alburnum.Flow.Equations;
using Alburnum.Flow.LinearAlgebra;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Partitioning;
using Alburnum.Impregnation;
using CsCheck;

namespace Alburnum.Flow.Tests.Equations;

public class JacobianAssemblyTests
{
    private static readonly Gen<(double P, double S)[]> States = Gen.Select(
        Gen.Double[2e4, 2e6],
        Gen.Double[0.02, 0.93],
        (p, s) => (p, s)
    ).Array[6];

    private static readonly Gen<Contact> Contacts = Gen.Bool.Select(wet => wet ? Contact.Liquid : Contact.Air);

    [Fact]
    public void The_assembly_agrees_with_a_plain_twin_written_from_the_equations()
    {
        Gen.Select(States, States, Gen.Double[5e3, 2e6], Contacts)
            .Sample(
                (now, before, vessel, contact) =>
                {
                    var mesh = Ring();
                    var fluids = FluidPair.Of(TreatingLiquid.Water());
                    var assembly = new JacobianAssembly<double>(mesh, fluids, TwoWayPartition.Usual);
                    var held = Held(mesh, before);
                    Assemble(assembly, Flat(now), held, Vessel(vessel, contact, fluids));
                    var plain = PlainBalances.Of(mesh, fluids, Warmed(now), held, 60, vessel, contact);

                    for (var i = 0; i < plain.Length; i++)
                        Assert.Equal(plain[i], assembly.Residual[i], 1e-12 * (1 + Math.Abs(plain[i])));
                },
                iter: 300
            );
    }

    [Fact]
    public void The_derivatives_are_those_of_the_balances()
    {
        Gen.Select(States, Gen.Double[5e3, 2e6], Contacts)
            .Sample(
                (now, vessel, contact) =>
                {
                    var mesh = Ring();
                    var fluids = FluidPair.Of(TreatingLiquid.Water());
                    var assembly = new JacobianAssembly<double>(mesh, fluids, TwoWayPartition.Usual);
                    var held = Held(mesh, now);
                    var state = Flat(now);
                    Assemble(assembly, state, held, Vessel(vessel, contact, fluids));
                    var exact = Dense(assembly.Jacobian);
                    for (var unknown = 0; unknown < state.Length; unknown++)
                    {
                        var step = unknown % 2 == 0 ? 1e-6 * state[unknown] : 1e-7;
                        var up = Residual(unknown, step);
                        var down = Residual(unknown, -step);
                        for (var row = 0; row < state.Length; row++)
                        {
                            var slope = (up[row] - down[row]) / (2 * step);
                            var scale = Enumerable
                                .Range(0, state.Length)
                                .Max(c => Math.Abs(exact[row, c]) * (c % 2 == 0 ? 1e6 : 1));
                            var unit = unknown % 2 == 0 ? 1e6 : 1;
                            // An upwind switch within the step shows as a small kink.
                            Assert.Equal(exact[row, unknown] * unit, slope * unit, 2e-3 * scale);
                        }
                    }

                    double[] Residual(int unknown, double by)
                    {
                        var moved = (double[])state.Clone();
                        moved[unknown] += by;
                        var twin = new JacobianAssembly<double>(mesh, fluids, TwoWayPartition.Usual);
                        Assemble(twin, moved, held, Vessel(vessel, contact, fluids));
                        return twin.Residual;
                    }
                },
                iter: 60
            );
    }

    private static void Assemble(
        JacobianAssembly<double> assembly,
        double[] state,
        double[] held,
        VesselBoundary vessel
    )
    {
        assembly.Take(state, Warmth);
        assembly.Assemble(state, new TimeStep(held, 60, vessel, Warmth));
    }

    // Each cell as warm as it likes.
    private static readonly CellWarmth[] Warmth =
    [
        new(1, 1),
        new(1.4, 0.95),
        new(0.7, 1.05),
        new(2.5, 0.8),
        new(1, 1),
        new(1.1, 0.98),
    ];

    private static VesselBoundary Vessel(double pa, Contact contact, FluidPair fluids) =>
        VesselBoundary.Of(pa, contact, fluids, new CellWarmth(1.2, 0.97));

    private static WarmCell[] Warmed((double P, double S)[] state) =>
        [.. state.Zip(Warmth, (cell, warmth) => new WarmCell(cell.P, cell.S, warmth))];

    // Six cells in a ring with a short cut, two of them at the surface.
    private static FlowMesh Ring() =>
        new(
            [1e-6, 2e-6, 1e-6, 3e-6, 1e-6, 2e-6],
            [(0, 1, 1e-15), (1, 2, 3e-15), (2, 3, 1e-16), (3, 4, 2e-15), (4, 5, 1e-15), (0, 5, 1e-15), (1, 4, 5e-16)],
            [(0, 2e-15), (3, 1e-15)]
        );

    private static double[] Flat((double P, double S)[] state) =>
        [.. state.SelectMany(cell => new[] { cell.P, cell.S })];

    private static double[] Held(FlowMesh mesh, (double P, double S)[] state)
    {
        var voids = mesh.VoidM3.ToArray();
        return
        [
            .. state.SelectMany(
                (cell, i) => new[] { voids[i] * cell.S, voids[i] * (1 - cell.S) * cell.P / StandardAir.Pa }
            ),
        ];
    }

    private static double[,] Dense(BlockCsrMatrix<double> matrix)
    {
        var dense = new double[2 * matrix.Rows, 2 * matrix.Rows];
        for (var i = 0; i < matrix.Rows; i++)
        {
            for (var k = matrix.Pattern.Csr.RowStart[i]; k < matrix.Pattern.Csr.RowStart[i + 1]; k++)
            {
                for (var part = 0; part < 4; part++)
                    dense[2 * i + part / 2, 2 * matrix.Pattern.Csr.Column[k] + part % 2] += matrix.Value[4 * k + part];
            }
        }
        return dense;
    }
}

/// <summary>One cell: air pressure, Pa, saturation, and warmth.</summary>
internal readonly record struct WarmCell(double P, double S, CellWarmth Warmth);

/// <summary>The balances of liquid and air, written cell by cell as in docs/science/flow.md, with no thought of speed.</summary>
internal static class PlainBalances
{
    public static double[] Of(
        FlowMesh mesh,
        FluidPair fluids,
        WarmCell[] now,
        double[] held,
        double seconds,
        double vesselPa,
        Contact contact
    )
    {
        var balance = new double[held.Length];
        for (var i = 0; i < now.Length; i++)
        {
            balance[2 * i] = mesh.VoidM3[i] * now[i].S - held[2 * i];
            balance[2 * i + 1] =
                mesh.VoidM3[i] * (1 - now[i].S) * now[i].P * now[i].Warmth.AirTimes / StandardAir.Pa - held[2 * i + 1];
            for (var c = 0; c < mesh.First.Length; c++)
            {
                var other =
                    mesh.First[c] == i ? mesh.Second[c]
                    : mesh.Second[c] == i ? mesh.First[c]
                    : -1;
                if (other < 0)
                    continue;
                balance[2 * i] += seconds * mesh.ConductanceM3[c] * LiquidFlow(now[i], now[other]);
                balance[2 * i + 1] += seconds * mesh.ConductanceM3[c] * AirFlow(now[i], now[other]);
            }
            for (var f = 0; f < mesh.FaceCell.Length; f++)
            {
                if (mesh.FaceCell[f] != i)
                    continue;
                var t = seconds * mesh.FaceConductanceM3[f];
                var liquidOut = LiquidPa(now[i]) - vesselPa;
                if (liquidOut > 0 || contact == Contact.Liquid)
                    balance[2 * i] +=
                        t
                        * liquidOut
                        * 1000
                        / fluids.LiquidMPaS
                        * (liquidOut > 0 ? fluids.Relative.At(now[i].S).Liquid * now[i].Warmth.FlowsTimes : 1.2);
                var airOut = now[i].P - vesselPa;
                if (airOut > 0)
                    balance[2 * i + 1] +=
                        t
                        * airOut
                        * 1000
                        / fluids.AirMPaS
                        * fluids.Relative.At(now[i].S).Air
                        * now[i].P
                        * now[i].Warmth.AirTimes
                        / StandardAir.Pa;
                else if (contact == Contact.Air)
                    balance[2 * i + 1] += t * airOut * 1000 / fluids.AirMPaS * 0.97 * vesselPa / StandardAir.Pa;
            }
        }
        return balance;

        double LiquidPa(WarmCell cell) => cell.P - 1000 * fluids.Capillary.At(cell.S).KPa;

        double LiquidFlow(WarmCell from, WarmCell to)
        {
            var drop = LiquidPa(from) - LiquidPa(to);
            var source = drop > 0 ? from : to;
            return drop * fluids.Relative.At(source.S).Liquid * source.Warmth.FlowsTimes * 1000 / fluids.LiquidMPaS;
        }

        double AirFlow(WarmCell from, WarmCell to)
        {
            var drop = from.P - to.P;
            var source = drop > 0 ? from : to;
            return drop
                * fluids.Relative.At(source.S).Air
                * source.P
                * source.Warmth.AirTimes
                / StandardAir.Pa
                * 1000
                / fluids.AirMPaS;
        }
    }
}
