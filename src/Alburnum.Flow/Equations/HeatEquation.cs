using Alburnum.Flow.LinearAlgebra;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Partitioning;
using Alburnum.Impregnation.Heating;

namespace Alburnum.Flow.Equations;

/// <summary>The balance of heat: conducted from cell to cell, and carried by the liquid.</summary>
/// <remarks>
/// Per cell C·dT/dt = Σ G·(T there − T) + ρc·Σ q in·(T upstream − T): C is the heat that walls and liquid hold, G = λ·area/distance, q what flows in.
/// Solved by SDIRK2 (two stages, L-stable, of second order; Alexander, SIAM J. Numer. Anal. 14, 1977). Each temperature stays between those that
/// were there and that outside. Left out: vapour, and what compressed air and swelling walls give off.
/// </remarks>
internal sealed class HeatEquation
{
    // 1 − 1/√2, for which the method is L-stable and of second order.
    private static readonly double Gamma = 1 - Math.Sqrt(0.5);
    private const double LinearTolerance = 1e-8;
    private const int Restart = 12;
    private const int MostIterations = 120;
    private readonly FlowMesh _mesh;
    private readonly WarmedWood _heat;

    // The temperature is the first unknown of each block; the second stands alone.
    private readonly BlockCsrMatrix<double> _matrix;
    private readonly ILinearSolver _linear;
    private readonly double[] _capacity;
    private readonly double[] _conductivity;
    private readonly double[] _outside;
    private readonly double[] _right;
    private readonly double[] _solved;

    /// <summary>Working arrays for a mesh.</summary>
    public HeatEquation(FlowMesh mesh, WarmedWood heat, TwoWayPartition partition)
    {
        (_mesh, _heat) = (mesh, heat);
        var cells = mesh.CellCount;
        _matrix = new BlockCsrMatrix<double>(new BlockCsrPattern(cells, mesh.First, mesh.Second, partition));
        var weight = new double[2 * cells];
        for (var i = 0; i < cells; i++)
            weight[2 * i] = 1;
        _linear = mesh.IsLine
            ? new BlockThomas(_matrix)
            : new Gmres<double>(
                _matrix,
                new CprPreconditioner<double>(_matrix, weight),
                Restart,
                LinearTolerance,
                MostIterations
            );
        (_capacity, _conductivity, _outside) = (new double[cells], new double[cells], new double[cells]);
        (_right, _solved) = (new double[2 * cells], new double[2 * cells]);
    }

    /// <summary>Solves a step.</summary>
    /// <param name="celsius">Temperature before it, °C, cell by cell; afterwards that after it.</param>
    /// <param name="liquid">What is held, m³, liquid and air cell by cell; and what flows, in so many seconds.</param>
    /// <param name="seconds">Length of the step, s.</param>
    /// <param name="outsideCelsius">Temperature kept at the faces, °C; null where nothing there brings heat.</param>
    /// <exception cref="InvalidOperationException">The equations could not be solved.</exception>
    public void Solve(
        double[] celsius,
        (double[] Held, StepFlows Flows, double Seconds) liquid,
        double seconds,
        double? outsideCelsius
    )
    {
        var h = Gamma * seconds;
        Storage(liquid.Held, h);
        Connections(liquid.Flows.Liquid, WoodHeat.LiquidJPerM3K / liquid.Seconds);
        Faces(liquid.Flows.FaceLiquid, WoodHeat.LiquidJPerM3K / liquid.Seconds, outsideCelsius);
        var (least, most) = (celsius.Min(), celsius.Max());
        (least, most) = (Math.Min(least, outsideCelsius ?? least), Math.Max(most, outsideCelsius ?? most));
        Stage();
        for (var i = 0; i < celsius.Length; i++)
            celsius[i] += (1 - Gamma) / Gamma * (_solved[2 * i] - celsius[i]);
        Stage();
        for (var i = 0; i < celsius.Length; i++)
            celsius[i] = Math.Clamp(_solved[2 * i], least, most);

        void Stage()
        {
            for (var i = 0; i < celsius.Length; i++)
                _right[2 * i] = _capacity[i] / h * celsius[i] + _outside[i];
            if (_linear.Solve(_right, _solved).Ending != LinearEnding.Converged)
                throw new InvalidOperationException("The balance of heat could not be solved.");
        }
    }

    private void Storage(double[] held, double h)
    {
        Array.Clear(_matrix.Value);
        for (var i = 0; i < _capacity.Length; i++)
        {
            var (volume, liquid) = (_heat.VolumeM3(i), Math.Max(0, held[2 * i]));
            var wood = _heat.Warming.Wood;
            _capacity[i] = wood.WallsJPerM3K * volume + WoodHeat.LiquidJPerM3K * liquid;
            _conductivity[i] = wood.ConductivityWPerMK(1000 * liquid / volume);
            _outside[i] = 0;
            var at = 4 * _matrix.Pattern.Csr.RowStart[i];
            (_matrix.Value[at], _matrix.Value[at + 3]) = (_capacity[i] / h, 1);
        }
    }

    private void Connections(double[] flows, double perM3)
    {
        var (pattern, value) = (_matrix.Pattern, _matrix.Value);
        for (var c = 0; c < flows.Length; c++)
        {
            var (i, j) = (_mesh.First[c], _mesh.Second[c]);
            var conducted = _heat.ShapeM(c) * (_conductivity[i] + _conductivity[j]) / 2;
            var (intoFirst, intoSecond) = (
                conducted + perM3 * Math.Max(0, -flows[c]),
                conducted + perM3 * Math.Max(0, flows[c])
            );
            value[4 * pattern.Csr.RowStart[i]] += intoFirst;
            value[4 * pattern.FirstToSecond[c]] = -intoFirst;
            value[4 * pattern.Csr.RowStart[j]] += intoSecond;
            value[4 * pattern.SecondToFirst[c]] = -intoSecond;
        }
    }

    private void Faces(double[] flows, double perM3, double? outsideCelsius)
    {
        if (outsideCelsius is not { } outside)
            return;
        for (var f = 0; f < flows.Length; f++)
        {
            var i = _mesh.FaceCell[f];
            var into = _heat.FaceShapeM(f) * _conductivity[i] + perM3 * Math.Max(0, -flows[f]);
            _matrix.Value[4 * _matrix.Pattern.Csr.RowStart[i]] += into;
            _outside[i] += into * outside;
        }
    }
}
