using Alburnum.Flow.Equations;
using Alburnum.Flow.LinearAlgebra;
using Alburnum.Flow.Mesh;

namespace Alburnum.Flow.Stepping;

/// <summary>
/// Nonlinear Gauss–Seidel on the active cells: single cells are brought into balance, each with its neighbours held, over and over along the
/// front. Newton's method for the whole moves pressures well, but sends a front too far or not far enough.
/// </summary>
/// <remarks>
/// For each active cell i: Newton's method on F_i(p_i, S_i) = 0 with all other unknowns held, the 2 × 2 Jacobian solved by Cramer's rule.
/// Nothing of the equations changes; the next iteration for the whole starts closer. A front that crosses ten cells in a step is carried on
/// cell by cell in one sweep, where the whole would need an iteration for each. Ortega and Rheinboldt, Iterative Solution of Nonlinear
/// Equations in Several Variables (1970), 7.4; that only active cells are swept is our own choice.
/// </remarks>
internal sealed class NonlinearGaussSeidel
{
    // A saturation that the last iteration moved by more than this bends the equations.
    private const double Bend = 0.02;

    // Cells closer to balance than this, as a share of their voids, are left to the next iteration for the whole.
    private const double Enough = 3e-3;
    private const int Sweeps = 6;
    private const int Tries = 4;
    private const double GreatestLeap = 0.5;
    private readonly FlowMesh _mesh;
    private readonly FluidPair _fluids;
    private readonly CsrPattern _csr;
    private readonly CellMobility[] _mobility;
    private readonly double[] _conductance;
    private readonly double[] _face;
    private readonly bool[] _active;
    private readonly List<int> _cells = [];

    /// <summary>Relaxes on a mesh.</summary>
    /// <param name="mesh">The mesh.</param>
    /// <param name="fluids">Liquid and air.</param>
    /// <param name="pattern">The pattern of the mesh's Jacobian.</param>
    /// <param name="mobility">Phase pressures and mobilities of the cells; kept up with the state.</param>
    public NonlinearGaussSeidel(FlowMesh mesh, FluidPair fluids, BlockCsrPattern pattern, CellMobility[] mobility)
    {
        (_mesh, _fluids, _csr, _mobility) = (mesh, fluids, pattern.Csr, mobility);
        _active = new bool[mesh.CellCount];
        _conductance = new double[pattern.Csr.Column.Length];
        for (var c = 0; c < mesh.First.Length; c++)
            _conductance[pattern.FirstToSecond[c]] = _conductance[pattern.SecondToFirst[c]] = mesh.ConductanceM3[c];
        _face = new double[mesh.CellCount];
        for (var f = 0; f < mesh.FaceCell.Length; f++)
            _face[mesh.FaceCell[f]] += mesh.FaceConductanceM3[f];
    }

    /// <summary>Relaxes the cells whose saturation was moved, and those that touch them.</summary>
    /// <param name="state">Air pressure (Pa) and saturation, cell by cell; changed in place.</param>
    /// <param name="moved">What was taken from the state before, laid out alike.</param>
    /// <param name="step">The step.</param>
    public void Relax(double[] state, double[] moved, TimeStep step)
    {
        Choose(moved);
        for (var sweep = 0; sweep < Sweeps; sweep++)
        {
            var atRest = true;
            for (var q = 0; q < _cells.Count; q++)
                atRest &= Settle(_cells[sweep % 2 == 0 ? q : _cells.Count - 1 - q], state, step) == CellOutcome.AtRest;
            if (atRest)
                return;
        }
    }

    private void Choose(double[] moved)
    {
        Array.Clear(_active);
        _cells.Clear();
        for (var i = 0; i < _active.Length; i++)
        {
            if (Math.Abs(moved[2 * i + 1]) < Bend)
                continue;
            for (var k = _csr.RowStart[i]; k < _csr.RowStart[i + 1]; k++)
                _active[_csr.Column[k]] = true;
        }
        for (var i = 0; i < _active.Length; i++)
            if (_active[i])
                _cells.Add(i);
    }

    private CellOutcome Settle(int i, double[] state, TimeStep step)
    {
        for (var attempt = 0; attempt < Tries; attempt++)
        {
            var (p, s, v) = (state[2 * i], state[2 * i + 1], _mesh.VoidM3[i]);
            ref readonly var own = ref _mobility[i];
            var times = step.Warmth[i].AirTimes;
            var pressure = times * p / StandardAir.Pa;
            var balance = new Balance
            {
                Liquid = v * s - step.Before[2 * i],
                Air = v * (1 - s) * pressure - step.Before[2 * i + 1],
                LiquidByS = v,
                AirByP = v * (1 - s) * times / StandardAir.Pa,
                AirByS = -v * pressure,
            };
            var end = _csr.RowStart[i + 1];
            for (var k = _csr.RowStart[i] + 1; k < end; k++)
                balance.Add(new UpwindFlux(own, _mobility[_csr.Column[k]], _conductance[k] * step.Seconds));
            if (_face[i] > 0)
                balance.Add(new UpwindFlux(own, step.Vessel, _face[i] * step.Seconds));
            if (Math.Max(Math.Abs(balance.Liquid), Math.Abs(balance.Air) / Math.Max(1, pressure)) < Enough * v)
                return attempt == 0 ? CellOutcome.AtRest : CellOutcome.Settled;
            var determinant = balance.LiquidByP * balance.AirByS - balance.LiquidByS * balance.AirByP;
            if (determinant == 0)
                return CellOutcome.Singular;
            var byP = (balance.AirByS * balance.Liquid - balance.LiquidByS * balance.Air) / determinant;
            var byS = (balance.LiquidByP * balance.Air - balance.AirByP * balance.Liquid) / determinant;
            state[2 * i] = Math.Clamp(p - byP, p / 4, 4 * p + StandardAir.Pa);
            state[2 * i + 1] = Math.Clamp(s - Math.Clamp(byS, -GreatestLeap, GreatestLeap), 0, 1);
            _mobility[i] = new CellMobility(state[2 * i], state[2 * i + 1], _fluids, step.Warmth[i]);
        }
        return CellOutcome.Unsettled;
    }

    private enum CellOutcome
    {
        // In balance as it stood.
        AtRest,

        // Brought into balance.
        Settled,

        // Moved, and not in balance yet.
        Unsettled,

        // Its Jacobian has no inverse: left to the iteration for the whole.
        Singular,
    }

    // A cell's liquid and air out of balance, m³, and how they change with its own pressure and saturation.
    private struct Balance
    {
        public double Liquid;
        public double Air;
        public double LiquidByP;
        public double LiquidByS;
        public double AirByP;
        public double AirByS;

        public void Add(in UpwindFlux x)
        {
            Liquid += x.Liquid;
            Air += x.Air;
            LiquidByP += x.LiquidByP;
            LiquidByS += x.LiquidByS1;
            AirByP += x.AirByP1;
            AirByS += x.AirByS1;
        }
    }
}
