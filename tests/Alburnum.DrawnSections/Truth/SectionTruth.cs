namespace Alburnum.DrawnSections;

/// <summary>Why a true depth at a place is no fair test of a reading.</summary>
public enum LeftOut
{
    /// <summary>Nothing stands in the way.</summary>
    No,

    /// <summary>Near a corner: the zone of the neighbouring face lies across the line of measurement.</summary>
    End,

    /// <summary>A knot on the line.</summary>
    Knot,

    /// <summary>A split or check on the line.</summary>
    Split,

    /// <summary>A resin pocket on the line.</summary>
    Resin,

    /// <summary>The camera could not see it: a thumb, glare, reagent missing.</summary>
    Hidden,
}

/// <summary>True depths along one face.</summary>
/// <param name="StepMm">Distance between positions, mm.</param>
/// <param name="PositionsMm">Distance from the face's start, mm.</param>
/// <param name="DepthMm">Depth along the inward normal to the first untreated wood, mm.</param>
/// <param name="LeftOut">Whether the place is a fair test.</param>
public sealed record FaceTruth(
    double StepMm,
    IReadOnlyList<double> PositionsMm,
    IReadOnlyList<double> DepthMm,
    IReadOnlyList<LeftOut> LeftOut
)
{
    /// <summary>Depth at any distance along the face, mm, between the two nearest positions; null where either is left out.</summary>
    public double? DepthAtMm(double alongMm)
    {
        var place = (alongMm - PositionsMm[0]) / StepMm;
        var low = Math.Clamp((int)Math.Floor(place), 0, PositionsMm.Count - 1);
        var high = Math.Min(low + 1, PositionsMm.Count - 1);
        if (LeftOut[low] != DrawnSections.LeftOut.No || LeftOut[high] != DrawnSections.LeftOut.No)
            return null;
        var share = Math.Clamp(place - low, 0, 1);
        return DepthMm[low] + share * (DepthMm[high] - DepthMm[low]);
    }
}

/// <summary>Statistics of the true depths that are not left out, mm.</summary>
public sealed record DepthTruth(double MinMm, double P5Mm, double MedianMm, double MeanMm, double MaxMm);

/// <summary>What a perfect reader would say of one photograph.</summary>
/// <param name="Shape">rectangle, square, round, half-round, quarter or core.</param>
/// <param name="SectionMm">Width and height, or diameter.</param>
/// <param name="OutlinePx">Corners or rim points of the ideal outline on the upright photograph, clockwise.</param>
/// <param name="TreatedShare">Treated share of the section's area.</param>
/// <param name="SapwoodTreatedShare">Treated share of the sapwood; null where there is none.</param>
public sealed record SectionTruth(
    string Name,
    int Seed,
    string Shape,
    IReadOnlyList<double> SectionMm,
    string Indicator,
    string Timber,
    double PixelsPerMm,
    int WidthPx,
    int HeightPx,
    int Orientation,
    IReadOnlyList<Point> OutlinePx,
    IReadOnlyList<FaceTruth> Faces,
    DepthTruth? Depth,
    double TreatedShare,
    double? SapwoodTreatedShare
);
