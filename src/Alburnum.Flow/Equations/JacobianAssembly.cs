using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Alburnum.Flow.LinearAlgebra;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.Equations;

/// <summary>Assembles the residual F of the balances at the end of a step, and its Jacobian J = ∂F/∂(p, S). The hot loop of the equations.</summary>
/// <remarks>
/// Unknowns per cell: air pressure p (Pa) and saturation S. Balances per cell, both in m³, over a step Δt from what was held before:
/// F_liquid = V·S − before + Δt·Σ flux; F_air = V·(1 − S)·p/p₀ − before + Δt·Σ flux, air brought to the reference pressure p₀.
/// Fully implicit (backward Euler), as in Aziz and Settari, Petroleum Reservoir Simulation (1979). A plain twin lives in the tests.
/// </remarks>
internal sealed class JacobianAssembly<T>
    where T : unmanaged, IBinaryFloatingPointIeee754<T>
{
    private readonly FlowMesh _mesh;
    private readonly FluidPair _fluids;
    private readonly CellMobility[] _mobility;
    private readonly TwoWayPartition _partition;

    // Connections before these write in the first half of the cells only, those after in the second.
    private readonly (int First, int End) _across;

    /// <summary>Working arrays for a mesh.</summary>
    public JacobianAssembly(FlowMesh mesh, FluidPair fluids, TwoWayPartition partition)
    {
        (_mesh, _fluids, _partition) = (mesh, fluids, partition);
        _mobility = new CellMobility[mesh.CellCount];
        Jacobian = new BlockCsrMatrix<T>(new BlockCsrPattern(mesh.CellCount, mesh.First, mesh.Second, partition));
        Residual = new double[2 * mesh.CellCount];
        TotalVolumeWeight = new T[2 * mesh.CellCount];
        _across = Across(mesh, partition);
        Flows = new StepFlows(mesh);
    }

    /// <summary>J: per block liquid by pressure, liquid by saturation, air by pressure, air by saturation.</summary>
    public BlockCsrMatrix<T> Jacobian { get; }

    /// <summary>F, out of balance, m³: liquid, then air, cell by cell.</summary>
    public double[] Residual { get; }

    /// <summary>What a cell's two balances count in its balance of total volume, the pressure equation: liquid by the air whose room it takes, so that storing one for the other drops out.</summary>
    public T[] TotalVolumeWeight { get; }

    /// <summary>What flowed in the last assembled step.</summary>
    public StepFlows Flows { get; }

    /// <summary>Phase pressures and mobilities of each cell in the state last taken.</summary>
    public CellMobility[] Mobility => _mobility;

    /// <summary>Takes a state: air pressure (Pa), saturation and warmth, cell by cell.</summary>
    public void Take(double[] state, CellWarmth[] warmth) =>
        _partition.Run(
            _mobility.Length,
            (first, end) =>
            {
                for (var i = first; i < end; i++)
                    _mobility[i] = new CellMobility(state[2 * i], state[2 * i + 1], _fluids, warmth[i]);
            }
        );

    /// <summary>Fills <see cref="Jacobian"/>, <see cref="Residual"/> and <see cref="TotalVolumeWeight"/>.</summary>
    /// <param name="state">Air pressure (Pa) and saturation, cell by cell; <see cref="Mobility"/> is of this state.</param>
    /// <param name="step">The step.</param>
    public void Assemble(double[] state, TimeStep step)
    {
        _partition.Run(_mobility.Length, (first, end) => Storage(state, step, first, end));
        if (_across.First == _mesh.First.Length)
        {
            Connections(step.Seconds, 0, _across.First);
        }
        else
        {
            Parallel.Invoke(
                () => Connections(step.Seconds, 0, _across.First),
                () => Connections(step.Seconds, _across.End, _mesh.First.Length)
            );
            Connections(step.Seconds, _across.First, _across.End);
        }
        Faces(step.Seconds, step.Vessel);
    }

    private static (int First, int End) Across(FlowMesh mesh, TwoWayPartition partition)
    {
        var split = partition.Split(mesh.CellCount);
        var (first, end) = (0, mesh.First.Length);
        while (first < end && mesh.Second[first] < split)
            first++;
        while (end > first && mesh.First[end - 1] >= split)
            end--;
        return (first, end);
    }

    private void Storage(double[] state, TimeStep step, int first, int end)
    {
        var (before, warmth) = (step.Before, step.Warmth);
        var voids = _mesh.VoidM3;
        var rowStart = Jacobian.Pattern.Csr.RowStart;
        ref var value = ref MemoryMarshal.GetArrayDataReference(Jacobian.Value);
        for (var i = first; i < end; i++)
        {
            var times = warmth[i].AirTimes;
            var p = times * state[2 * i] / StandardAir.Pa;
            var s = state[2 * i + 1];
            var v = voids[i];
            TotalVolumeWeight[2 * i] = T.CreateTruncating(p / (1 + p));
            TotalVolumeWeight[2 * i + 1] = T.CreateTruncating(1 / (1 + p));
            Residual[2 * i] = v * s - before[2 * i];
            Residual[2 * i + 1] = v * (1 - s) * p - before[2 * i + 1];
            Block2x2.Store(Block2x2.Of<T>(0, v, v * (1 - s) * times / StandardAir.Pa, -v * p), ref value, rowStart[i]);
        }
    }

    private void Connections(double seconds, int from, int end)
    {
        var first = _mesh.First;
        var second = _mesh.Second;
        var conductance = _mesh.ConductanceM3;
        var (liquid, air) = (Flows.Liquid, Flows.Air);
        var (rowStart, residual) = (Jacobian.Pattern.Csr.RowStart, Residual);
        var (there, back) = (Jacobian.Pattern.FirstToSecond, Jacobian.Pattern.SecondToFirst);
        ref var value = ref MemoryMarshal.GetArrayDataReference(Jacobian.Value);
        for (var c = from; c < end; c++)
        {
            var i = first[c];
            var j = second[c];
            var x = new UpwindFlux(_mobility[i], _mobility[j], conductance[c] * seconds);
            (liquid[c], air[c]) = (x.Liquid, x.Air);
            residual[2 * i] += x.Liquid;
            residual[2 * i + 1] += x.Air;
            residual[2 * j] -= x.Liquid;
            residual[2 * j + 1] -= x.Air;
            var byFirst = Block2x2.Of<T>(x.LiquidByP, x.LiquidByS1, x.AirByP1, x.AirByS1);
            var bySecond = Block2x2.Of<T>(-x.LiquidByP, x.LiquidByS2, x.AirByP2, x.AirByS2);
            Add(ref value, rowStart[i], byFirst);
            Block2x2.Store(bySecond, ref value, there[c]);
            Add(ref value, rowStart[j], -bySecond);
            Block2x2.Store(-byFirst, ref value, back[c]);
        }
    }

    private void Faces(double seconds, VesselBoundary vessel)
    {
        var cells = _mesh.FaceCell;
        var conductance = _mesh.FaceConductanceM3;
        ref var value = ref MemoryMarshal.GetArrayDataReference(Jacobian.Value);
        for (var f = 0; f < cells.Length; f++)
        {
            var i = cells[f];
            var x = new UpwindFlux(_mobility[i], vessel, conductance[f] * seconds);
            (Flows.FaceLiquid[f], Flows.FaceAir[f]) = (x.Liquid, x.Air);
            Residual[2 * i] += x.Liquid;
            Residual[2 * i + 1] += x.Air;
            Add(
                ref value,
                Jacobian.Pattern.Csr.RowStart[i],
                Block2x2.Of<T>(x.LiquidByP, x.LiquidByS1, x.AirByP1, x.AirByS1)
            );
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Add(ref T value, int at, Vector256<T> block) =>
        Block2x2.Store(Block2x2.Load(ref value, at) + block, ref value, at);
}
