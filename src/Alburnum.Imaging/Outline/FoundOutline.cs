using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;

namespace Alburnum.Imaging.Outline;

/// <summary>An outline in the photograph.</summary>
/// <param name="Points">Corners or rim points, clockwise, upright pixels.</param>
/// <param name="Rim">The rim of a round section; null for any other.</param>
/// <param name="Confidence">How likely it is right to within 1 mm, 0 to 1.</param>
/// <param name="UncertaintyPx">Standard uncertainty of each side's place, px.</param>
/// <param name="IsAsGiven">True where its points stand as a person gave them; false where they were drawn to an edge.</param>
/// <param name="LeastSupport">Least share of any part of a rim (a sixth of an ellipse, a twelfth of any other) along which a plain edge lies, 0 to 1.</param>
internal sealed record FoundOutline(
    IReadOnlyList<PointPx> Points,
    RimCurve? Rim,
    double Confidence,
    double UncertaintyPx,
    bool IsAsGiven = false,
    double LeastSupport = 1
)
{
    /// <summary>How well each straight side is borne out by a plain edge along it, 0 to 1; side k begins at corner k. Empty for a rim.</summary>
    public IReadOnlyList<double> SideSupport { get; init; } = [];

    /// <summary>At even parameters of a rim's ellipse, whether no edge is seen at the rim there, so that no depth is measured from it. Empty for none.</summary>
    public IReadOnlyList<bool> Bare { get; init; } = [];

    /// <summary>Whether its edge is plain and its colours change around it: bark, or the side of the piece, may lie within it in part.</summary>
    public bool MayIncludeBark { get; init; }

    /// <summary>What is amiss with points that a person gave, where no edge lies at them; null where there is nothing amiss.</summary>
    public PointsOffEdge? OffEdge { get; init; }

    /// <summary>The outline as a reading gives it.</summary>
    public OutlineInPhotograph InPhotograph => new(Points, Confidence);
}
