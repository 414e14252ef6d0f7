namespace Alburnum.Imaging.Geometry;

/// <summary>The outline that the photograph shows.</summary>
public enum SectionShape
{
    /// <summary>Four corners. Faces run from corner to corner, clockwise.</summary>
    Rectangle,

    /// <summary>A full disc: one face.</summary>
    Round,

    /// <summary>Half a disc. Its points: both ends of the flat, clockwise, then the crown of the arc. Faces: flat, arc.</summary>
    HalfRound,

    /// <summary>A quarter of a disc. Its points: arc's end, square corner, arc's start, clockwise. Faces: two flats, arc.</summary>
    Quartered,

    /// <summary>
    /// An increment core lying on its side: four corners, the first two at the outer end. One face, the outer end; depth runs along the core.
    /// Width is the core's diameter, height its length.
    /// </summary>
    CoreStrip,
}
