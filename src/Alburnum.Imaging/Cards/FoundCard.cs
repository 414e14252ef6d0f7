using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Cards;

/// <summary>The card as a photograph shows it.</summary>
/// <param name="MarksPx">Middles of its marks, in the order of <see cref="ScaleCard.Marks"/>, upright pixels.</param>
/// <param name="MarkPx">Standard uncertainty of each mark's place, px.</param>
internal sealed record FoundCard(IReadOnlyList<PointPx> MarksPx, double MarkPx)
{
    /// <summary>From mm on the card to the photograph.</summary>
    /// <param name="lens">What the lens does to the picture; null where nothing is known of it.</param>
    public SectionMap Map(RadialLens? lens) =>
        new(
            Homography.FromFour(
                [.. ScaleCard.Marks.Select(mm => new PointPx(mm.X, mm.Y))],
                [.. MarksPx.Select(px => lens is null ? px : lens.Straight(px))]
            ),
            lens
        );

    /// <summary>Its middle in the photograph.</summary>
    public PointPx MiddlePx => Map(lens: null).ToPx(ScaleCard.WidthMm / 2, ScaleCard.HeightMm / 2);
}
