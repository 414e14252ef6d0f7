namespace Alburnum.Impregnation;

/// <summary>Where in the log a piece was sawn.</summary>
public enum SawingPosition
{
    /// <summary>The pith in the middle of the piece.</summary>
    Boxed,

    /// <summary>Two pieces from the log: the pith in the middle of the lower face.</summary>
    Halved,

    /// <summary>Four pieces from the log: the pith at the lower left corner.</summary>
    Quartered,

    /// <summary>Outside the heartwood where the log allows: the outer corners on the log's surface, the pith far below.</summary>
    Side,
}
