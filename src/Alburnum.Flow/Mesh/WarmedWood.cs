using Alburnum.Impregnation;
using Alburnum.Impregnation.Heating;

namespace Alburnum.Flow.Mesh;

/// <summary>The cells of a piece of wood as heat sees them.</summary>
/// <remarks>Heat is conducted through area over distance as liquid is: the mesh of <see cref="Unit"/>, cut like that of the wood, holds both.</remarks>
public sealed record WarmedWood
{
    private const double UnitM2 = 1e-10;

    /// <summary>Takes the mesh of a piece of <see cref="Unit"/>.</summary>
    /// <param name="unit">The mesh, cell for cell that of the wood.</param>
    /// <param name="warming">What warms it.</param>
    public WarmedWood(FlowMesh unit, Warming warming) => (Mesh, Warming) = (unit, warming);

    /// <summary>A wood that lets liquid through as it conducts heat, in proportion: the same in all directions across the grain.</summary>
    public static WoodFlow Unit { get; } = new(new Permeability(UnitM2, UnitM2, WoodHeat.AlongToAcross * UnitM2), 0.9);

    /// <summary>The mesh of <see cref="Unit"/>.</summary>
    internal FlowMesh Mesh { get; init; }

    /// <summary>What warms it.</summary>
    public Warming Warming { get; }

    /// <summary>Volume of a cell with its walls, m³.</summary>
    internal double VolumeM3(int cell) => Mesh.VoidM3[cell] / Unit.VoidFraction;

    /// <summary>Area over distance of a connection, m; along the grain as much more as wood conducts better there.</summary>
    internal double ShapeM(int connection) => Mesh.ConductanceM3[connection] / UnitM2;

    /// <summary>Area over distance from a face to the middle of its cell, m.</summary>
    internal double FaceShapeM(int face) => Mesh.FaceConductanceM3[face] / UnitM2;
}
