namespace Alburnum.Impregnation;

/// <summary>Permeability of one kind of wood to liquid along its three directions, m².</summary>
public sealed record Permeability
{
    /// <summary>Checks the three values.</summary>
    /// <param name="radialM2">Radial, m². 1e-25 to 1e-9.</param>
    /// <param name="tangentialM2">Tangential, m². 1e-25 to 1e-9.</param>
    /// <param name="longitudinalM2">Along the grain, m². 1e-25 to 1e-9.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside the range: a negative permeability is impossible.</exception>
    public Permeability(double radialM2, double tangentialM2, double longitudinalM2)
    {
        RadialM2 = Require.InRange(radialM2, 1e-25, 1e-9, "m²");
        TangentialM2 = Require.InRange(tangentialM2, 1e-25, 1e-9, "m²");
        LongitudinalM2 = Require.InRange(longitudinalM2, 1e-25, 1e-9, "m²");
    }

    /// <summary>Radial, m².</summary>
    public double RadialM2 { get; }

    /// <summary>Tangential, m².</summary>
    public double TangentialM2 { get; }

    /// <summary>Along the grain, m².</summary>
    public double LongitudinalM2 { get; }

    /// <summary>Across the grain in a direction that is partly radial.</summary>
    /// <param name="radialShare">Squared cosine of the angle to the radius, 0 to 1.</param>
    public double AcrossM2(double radialShare) => radialShare * RadialM2 + (1 - radialShare) * TangentialM2;
}

/// <summary>One kind of wood as the flow sees it.</summary>
public sealed record WoodFlow
{
    /// <summary>Checks voids and saturation.</summary>
    /// <param name="permeability">Permeability to liquid.</param>
    /// <param name="voidFraction">Share of the volume that is cavity, air and free water together. 0.01 to 0.95.</param>
    /// <param name="saturation">Share of the cavities that already holds water, 0 to 0.99.</param>
    public WoodFlow(Permeability permeability, double voidFraction, double saturation = 0)
    {
        Permeability = permeability;
        VoidFraction = Require.InRange(voidFraction, 0.01, 0.95, "(share of the volume)");
        Saturation = Require.InRange(saturation, 0, 0.99, "(share of the voids: moisture above saturation)");
    }

    /// <summary>Permeability to liquid.</summary>
    public Permeability Permeability { get; }

    /// <summary>Share of the volume that is cavity.</summary>
    public double VoidFraction { get; }

    /// <summary>Share of the cavities that already holds water.</summary>
    public double Saturation { get; }
}

/// <summary>A piece of wood across the grain: its shape, where it lay in the log, and what sapwood and heartwood let through.</summary>
/// <param name="Section">Shape and size.</param>
/// <param name="Log">Where the pith lies and how far the heartwood reaches.</param>
/// <param name="Sapwood">The sapwood.</param>
/// <param name="Heartwood">The heartwood.</param>
public sealed record Piece(Timber.Section Section, LogGeometry Log, WoodFlow Sapwood, WoodFlow Heartwood)
{
    /// <summary>The wood at a point of the section.</summary>
    public WoodFlow At(double xMm, double yMm) => Log.IsHeartwood(xMm, yMm) ? Heartwood : Sapwood;
}
