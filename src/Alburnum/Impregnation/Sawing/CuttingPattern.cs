namespace Alburnum.Impregnation.Sawing;

/// <summary>How a log is cut up.</summary>
public enum CuttingPattern
{
    /// <summary>One piece with the pith in its middle.</summary>
    Boxed,

    /// <summary>Two pieces, one above and one below a cut through the pith.</summary>
    Halved,

    /// <summary>Four pieces about the pith.</summary>
    Quartered,

    /// <summary>As many pieces of the size as the log holds, in rows and columns about the pith.</summary>
    Grid,

    /// <summary>Boards of the piece's thickness, one above the other, each as wide as the log allows where it lies.</summary>
    Boards,
}
