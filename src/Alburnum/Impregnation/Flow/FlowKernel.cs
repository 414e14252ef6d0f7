namespace Alburnum.Impregnation.Flow;

/// <summary>The hot loop: what is out of balance in every cell at the end of a step, and how that changes with the unknowns.</summary>
/// <remarks>
/// Unknowns per cell: air pressure (Pa) and saturation. Balances per cell, both in m³: liquid volume, and air volume brought
/// to the reference pressure. Each phase is taken from the side it comes from (upwind). Derivatives are exact.
/// A plain twin lives in the tests.
/// </remarks>
internal sealed class FlowKernel
{
    /// <summary>Pressure at which air volumes are counted, Pa.</summary>
    public const double ReferencePa = 101325;

    private readonly FlowMesh _mesh;
    private readonly FluidPair _fluids;
    private readonly CellTerms[] _terms;

    public FlowKernel(FlowMesh mesh, FluidPair fluids)
    {
        _mesh = mesh;
        _fluids = fluids;
        _terms = new CellTerms[mesh.CellCount];
        Matrix = new BlockMatrix(mesh);
        Residual = new double[2 * mesh.CellCount];
    }

    public BlockMatrix Matrix { get; }

    /// <summary>Out of balance, m³: liquid, then air, cell by cell.</summary>
    public double[] Residual { get; }

    /// <summary>Liquid that entered through the faces in the last assembled step, m³.</summary>
    public double LiquidInM3 { get; private set; }

    /// <summary>Air that entered through the faces in the last assembled step, m³ at the reference pressure.</summary>
    public double AirInM3 { get; private set; }

    /// <summary>Fills <see cref="Matrix"/> and <see cref="Residual"/>.</summary>
    /// <param name="state">Air pressure (Pa) and saturation, cell by cell.</param>
    /// <param name="before">Liquid and air held before the step, m³, cell by cell.</param>
    /// <param name="seconds">Length of the step, s.</param>
    /// <param name="vesselPa">Pressure in the vessel at the end of the step, Pa.</param>
    /// <param name="contact">What touches the wood.</param>
    public void Assemble(double[] state, double[] before, double seconds, double vesselPa, Contact contact)
    {
        CellTerms(state);
        Storage(state, before);
        Connections(seconds);
        Faces(state, seconds, vesselPa, contact);
    }

    private void CellTerms(double[] state)
    {
        var relative = _fluids.Relative;
        var capillary = _fluids.Capillary;
        var liquid = 1000 / _fluids.LiquidMPaS;
        var air = 1000 / _fluids.AirMPaS;
        for (var i = 0; i < _terms.Length; i++)
        {
            var p = state[2 * i];
            var s = state[2 * i + 1];
            ref var t = ref _terms[i];
            t.AirPa = p;
            t.LiquidPa = p - 1000 * capillary.KPa(s);
            t.PullSlope = 1000 * capillary.SlopeKPa(s);
            t.Liquid = liquid * relative.Liquid(s);
            t.LiquidSlope = liquid * relative.LiquidSlope(s);
            t.Air = air * relative.Air(s);
            t.AirSlope = air * relative.AirSlope(s);
        }
    }

    private void Storage(double[] state, double[] before)
    {
        var voids = _mesh.VoidM3;
        Array.Clear(Matrix.Value);
        for (var i = 0; i < _terms.Length; i++)
        {
            var p = state[2 * i] / ReferencePa;
            var s = state[2 * i + 1];
            var v = voids[i];
            Residual[2 * i] = v * s - before[2 * i];
            Residual[2 * i + 1] = v * (1 - s) * p - before[2 * i + 1];
            var block = Matrix.Value.AsSpan(4 * Matrix.RowStart[i], 4);
            block[1] = v;
            block[2] = v * (1 - s) / ReferencePa;
            block[3] = -v * p;
        }
    }

    private void Connections(double seconds)
    {
        var first = _mesh.First;
        var second = _mesh.Second;
        var conductance = _mesh.ConductanceM3;
        var (value, rowStart, residual) = (Matrix.Value, Matrix.RowStart, Residual);
        for (var c = 0; c < first.Length; c++)
        {
            var i = first[c];
            var j = second[c];
            var t = conductance[c] * seconds;
            ref readonly var a = ref _terms[i];
            ref readonly var b = ref _terms[j];

            var liquidDrop = a.LiquidPa - b.LiquidPa;
            var liquidFromFirst = liquidDrop >= 0;
            var liquidT = t * (liquidFromFirst ? a.Liquid : b.Liquid);
            var liquidFlow = liquidT * liquidDrop;
            var liquidByS1 = (liquidFromFirst ? t * a.LiquidSlope * liquidDrop : 0) - liquidT * a.PullSlope;
            var liquidByS2 = (liquidFromFirst ? 0 : t * b.LiquidSlope * liquidDrop) + liquidT * b.PullSlope;

            var airDrop = a.AirPa - b.AirPa;
            var airFromFirst = airDrop >= 0;
            ref readonly var from = ref airFromFirst ? ref a : ref b;
            var airT = t * from.Air / ReferencePa;
            var airFlow = airT * from.AirPa * airDrop;
            var byPressure = airT * airDrop;
            var bySaturation = t * from.AirSlope / ReferencePa * from.AirPa * airDrop;
            var airByP1 = airT * from.AirPa + (airFromFirst ? byPressure : 0);
            var airByP2 = -airT * from.AirPa + (airFromFirst ? 0 : byPressure);
            var airByS1 = airFromFirst ? bySaturation : 0;
            var airByS2 = airFromFirst ? 0 : bySaturation;

            residual[2 * i] += liquidFlow;
            residual[2 * i + 1] += airFlow;
            residual[2 * j] -= liquidFlow;
            residual[2 * j + 1] -= airFlow;
            Add(value, rowStart[i], liquidT, liquidByS1, airByP1, airByS1);
            Add(value, Matrix.FirstToSecond[c], -liquidT, liquidByS2, airByP2, airByS2);
            Add(value, rowStart[j], liquidT, -liquidByS2, -airByP2, -airByS2);
            Add(value, Matrix.SecondToFirst[c], -liquidT, -liquidByS1, -airByP1, -airByS1);
        }
    }

    private void Faces(double[] state, double seconds, double vesselPa, Contact contact)
    {
        var cells = _mesh.FaceCell;
        var conductance = _mesh.FaceConductanceM3;
        var solution = contact == Contact.Liquid ? 1000 / _fluids.LiquidMPaS : 0;
        var openAir = contact == Contact.Air ? 1000 / _fluids.AirMPaS : 0;
        double liquidIn = 0,
            airIn = 0;
        for (var f = 0; f < cells.Length; f++)
        {
            var i = cells[f];
            var t = conductance[f] * seconds;
            ref readonly var a = ref _terms[i];

            var liquidDrop = vesselPa - a.LiquidPa;
            var liquidT = t * (liquidDrop >= 0 ? solution : a.Liquid);
            var liquidFlow = liquidT * liquidDrop;
            var liquidByS = (liquidDrop >= 0 ? 0 : t * a.LiquidSlope * liquidDrop) + liquidT * a.PullSlope;

            var airDrop = vesselPa - a.AirPa;
            var entering = airDrop >= 0;
            var airT = t * (entering ? openAir : a.Air) / ReferencePa;
            var fromPa = entering ? vesselPa : a.AirPa;
            var airFlow = airT * fromPa * airDrop;
            var airByP = -airT * fromPa + (entering ? 0 : airT * airDrop);
            var airByS = entering ? 0 : t * a.AirSlope / ReferencePa * a.AirPa * airDrop;

            liquidIn += liquidFlow;
            airIn += airFlow;
            Residual[2 * i] -= liquidFlow;
            Residual[2 * i + 1] -= airFlow;
            Add(Matrix.Value, Matrix.RowStart[i], liquidT, -liquidByS, -airByP, -airByS);
        }
        LiquidInM3 = liquidIn;
        AirInM3 = airIn;
    }

    private static void Add(double[] value, int at, double lp, double ls, double ap, double asat)
    {
        var block = value.AsSpan(4 * at, 4);
        block[0] += lp;
        block[1] += ls;
        block[2] += ap;
        block[3] += asat;
    }
}

/// <summary>What one cell brings to its connections: pressures, mobilities (1/(Pa·s)) and their slopes by saturation.</summary>
internal struct CellTerms
{
    public double AirPa;
    public double LiquidPa;
    public double PullSlope;
    public double Liquid;
    public double LiquidSlope;
    public double Air;
    public double AirSlope;
}
