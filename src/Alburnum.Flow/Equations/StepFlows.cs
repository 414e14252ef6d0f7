using Alburnum.Flow.Mesh;

namespace Alburnum.Flow.Equations;

/// <summary>What flowed in a step, m³ (air at the reference pressure): from the first to the second cell of each connection, and out through each face.</summary>
internal sealed class StepFlows(FlowMesh mesh)
{
    /// <summary>Liquid through each connection.</summary>
    public double[] Liquid { get; } = new double[mesh.First.Length];

    /// <summary>Air through each connection.</summary>
    public double[] Air { get; } = new double[mesh.First.Length];

    /// <summary>Liquid out through each face.</summary>
    public double[] FaceLiquid { get; } = new double[mesh.FaceCell.Length];

    /// <summary>Air out through each face.</summary>
    public double[] FaceAir { get; } = new double[mesh.FaceCell.Length];

    /// <summary>Becomes a multiple of itself and others.</summary>
    /// <param name="own">How many times what it was.</param>
    /// <param name="times">How many times the others.</param>
    /// <param name="others">Flows on the same mesh.</param>
    public void Mix(double own, double times, StepFlows others)
    {
        Mix(Liquid, others.Liquid);
        Mix(Air, others.Air);
        Mix(FaceLiquid, others.FaceLiquid);
        Mix(FaceAir, others.FaceAir);

        void Mix(double[] to, double[] from)
        {
            for (var i = 0; i < to.Length; i++)
                to[i] = own * to[i] + times * from[i];
        }
    }

    /// <summary>Carries what flowed from cell to cell.</summary>
    /// <param name="held">Liquid and air held, m³, cell by cell; changed in place.</param>
    public void Carry(double[] held)
    {
        for (var c = 0; c < Liquid.Length; c++)
        {
            var (i, j) = (2 * mesh.First[c], 2 * mesh.Second[c]);
            held[i] -= Liquid[c];
            held[i + 1] -= Air[c];
            held[j] += Liquid[c];
            held[j + 1] += Air[c];
        }
        for (var f = 0; f < FaceLiquid.Length; f++)
        {
            var i = 2 * mesh.FaceCell[f];
            held[i] -= FaceLiquid[f];
            held[i + 1] -= FaceAir[f];
        }
    }
}
