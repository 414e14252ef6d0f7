using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Alburnum.Flow.LinearAlgebra;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.Equations;

/// <summary>The hot loop: what is out of balance in every cell at the end of a step, and how that changes with the unknowns.</summary>
/// <remarks>
/// Unknowns per cell: air pressure (Pa) and saturation. Balances per cell, both in m³: liquid volume, and air volume brought
/// to the reference pressure. A plain twin lives in the tests.
/// </remarks>
internal sealed class FlowKernel<T>
    where T : unmanaged
{
    private readonly FlowMesh _mesh;
    private readonly FluidPair _fluids;
    private readonly CellTerms[] _terms;

    // Connections before these write in the first half of the cells only, those after in the second.
    private readonly (int First, int End) _across;

    /// <summary>Working arrays for a mesh.</summary>
    public FlowKernel(FlowMesh mesh, FluidPair fluids)
    {
        _mesh = mesh;
        _fluids = fluids;
        _terms = new CellTerms[mesh.CellCount];
        Matrix = new BlockMatrix<T>(new BlockLayout(mesh));
        Residual = new double[2 * mesh.CellCount];
        _across = Across(mesh);
    }

    public BlockMatrix<T> Matrix { get; }

    /// <summary>Out of balance, m³: liquid, then air, cell by cell.</summary>
    public double[] Residual { get; }

    /// <summary>Liquid that entered through the faces in the last assembled step, m³.</summary>
    public double LiquidInM3 { get; private set; }

    /// <summary>Air that entered through the faces in the last assembled step, m³ at the reference pressure.</summary>
    public double AirInM3 { get; private set; }

    /// <summary>What each cell brings to its connections in the state last taken.</summary>
    public CellTerms[] Terms => _terms;

    /// <summary>Takes a state: air pressure (Pa) and saturation, cell by cell.</summary>
    public void Take(double[] state) =>
        Halves.Run(
            _terms.Length,
            (first, end) =>
            {
                for (var i = first; i < end; i++)
                    _terms[i] = new CellTerms(state[2 * i], state[2 * i + 1], _fluids);
            }
        );

    /// <summary>Fills <see cref="Matrix"/> and <see cref="Residual"/>.</summary>
    /// <param name="state">Air pressure (Pa) and saturation, cell by cell; <see cref="Terms"/> are of this state.</param>
    /// <param name="step">What is held before the step, how long it is, and what is in the vessel at its end.</param>
    public void Assemble(double[] state, FlowStep step)
    {
        Halves.Run(_terms.Length, (first, end) => Storage(state, step.Before, first, end));
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

    private static (int First, int End) Across(FlowMesh mesh)
    {
        var middle = Halves.Middle(mesh.CellCount);
        var (first, end) = (0, mesh.First.Length);
        while (first < end && mesh.Second[first] < middle)
            first++;
        while (end > first && mesh.First[end - 1] >= middle)
            end--;
        return (first, end);
    }

    private void Storage(double[] state, double[] before, int first, int end)
    {
        var voids = _mesh.VoidM3;
        var rowStart = Matrix.Blocks.Rows.RowStart;
        ref var value = ref MemoryMarshal.GetArrayDataReference(Matrix.Value);
        for (var i = first; i < end; i++)
        {
            var p = state[2 * i] / FlowTerms.ReferencePa;
            var s = state[2 * i + 1];
            var v = voids[i];
            Residual[2 * i] = v * s - before[2 * i];
            Residual[2 * i + 1] = v * (1 - s) * p - before[2 * i + 1];
            Quad.Store(Quad.Of<T>(0, v, v * (1 - s) / FlowTerms.ReferencePa, -v * p), ref value, rowStart[i]);
        }
    }

    private void Connections(double seconds, int from, int end)
    {
        var first = _mesh.First;
        var second = _mesh.Second;
        var conductance = _mesh.ConductanceM3;
        var (rowStart, residual) = (Matrix.Blocks.Rows.RowStart, Residual);
        var (there, back) = (Matrix.Blocks.FirstToSecond, Matrix.Blocks.SecondToFirst);
        ref var value = ref MemoryMarshal.GetArrayDataReference(Matrix.Value);
        for (var c = from; c < end; c++)
        {
            var i = first[c];
            var j = second[c];
            var x = new Crossing(_terms[i], _terms[j], conductance[c] * seconds);
            residual[2 * i] += x.Liquid;
            residual[2 * i + 1] += x.Air;
            residual[2 * j] -= x.Liquid;
            residual[2 * j + 1] -= x.Air;
            var byFirst = Quad.Of<T>(x.LiquidByP, x.LiquidByS1, x.AirByP1, x.AirByS1);
            var bySecond = Quad.Of<T>(-x.LiquidByP, x.LiquidByS2, x.AirByP2, x.AirByS2);
            Add(ref value, rowStart[i], byFirst);
            Quad.Store(bySecond, ref value, there[c]);
            Add(ref value, rowStart[j], -bySecond);
            Quad.Store(-byFirst, ref value, back[c]);
        }
    }

    private void Faces(double seconds, VesselTerms vessel)
    {
        var cells = _mesh.FaceCell;
        var conductance = _mesh.FaceConductanceM3;
        ref var value = ref MemoryMarshal.GetArrayDataReference(Matrix.Value);
        double liquidOut = 0,
            airOut = 0;
        for (var f = 0; f < cells.Length; f++)
        {
            var i = cells[f];
            var x = new Crossing(_terms[i], vessel, conductance[f] * seconds);
            liquidOut += x.Liquid;
            airOut += x.Air;
            Residual[2 * i] += x.Liquid;
            Residual[2 * i + 1] += x.Air;
            Add(ref value, Matrix.Blocks.Rows.RowStart[i], Quad.Of<T>(x.LiquidByP, x.LiquidByS1, x.AirByP1, x.AirByS1));
        }
        LiquidInM3 = -liquidOut;
        AirInM3 = -airOut;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Add(ref T value, int at, Vector256<T> block) =>
        Quad.Store(Quad.Load(ref value, at) + block, ref value, at);
}
