using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;

namespace Alburnum.Imaging.Outline;

/// <summary>An outline in the photograph.</summary>
/// <param name="Points">Corners or rim points, clockwise, upright pixels.</param>
/// <param name="Rim">The ellipse of a round section; null for any other.</param>
/// <param name="Confidence">How likely it is right to within 1 mm, 0 to 1.</param>
/// <param name="UncertaintyPx">Standard uncertainty of each side's place, px.</param>
/// <param name="IsAsGiven">True where its points stand as a person gave them; false where they were drawn to an edge.</param>
/// <param name="LeastSupport">Least share of any sixth of a rim along which a plain edge lies, 0 to 1.</param>
internal sealed record FoundOutline(
    IReadOnlyList<PointPx> Points,
    Ellipse? Rim,
    double Confidence,
    double UncertaintyPx,
    bool IsAsGiven = false,
    double LeastSupport = 1
)
{
    /// <summary>How well each straight side is borne out by a plain edge along it, 0 to 1; side k begins at corner k. Empty for a rim.</summary>
    public IReadOnlyList<double> SideSupport { get; init; } = [];

    /// <summary>What is amiss with points that a person gave, where no edge lies at them; null where there is nothing amiss.</summary>
    public PointsOffEdge? OffEdge { get; init; }

    /// <summary>The outline as a reading gives it.</summary>
    public OutlineInPhotograph InPhotograph => new(Points, Confidence);
}
