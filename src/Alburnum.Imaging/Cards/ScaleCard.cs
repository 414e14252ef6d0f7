using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Cards;

/// <summary>The card that is printed and laid beside a cut end, level with it: what lies where on it, mm from its upper left corner.</summary>
/// <remarks>Four ring marks tell the scale and how the card is tilted, patches of grey the colour of the light. The design is our own.</remarks>
public static class ScaleCard
{
    /// <summary>Width, mm.</summary>
    public const double WidthMm = 100;

    /// <summary>Height, mm.</summary>
    public const double HeightMm = 64;

    /// <summary>Outer radius of a ring mark, mm.</summary>
    public const double RingMm = 5;

    /// <summary>Inner radius of a ring mark, mm.</summary>
    public const double HoleMm = 3.7;

    /// <summary>Radius of the dot in the middle of a mark, mm; the first mark's is <see cref="FirstDotMm"/>.</summary>
    public const double DotMm = 1.5;

    /// <summary>Radius of the first mark's dot, mm: larger, so that the card's own upper left corner is known.</summary>
    public const double FirstDotMm = 2.4;

    /// <summary>Length of the line by which the print is checked with a ruler, mm.</summary>
    public const double CheckMm = 80;

    /// <summary>Middles of the marks, clockwise from the card's upper left.</summary>
    public static IReadOnlyList<PointMm> Marks { get; } = [new(9, 10), new(91, 10), new(91, 54), new(9, 54)];

    /// <summary>Patches of grey, from the lightest to the darkest.</summary>
    public static IReadOnlyList<CardPatch> Greys { get; } =
    [
        .. new[] { 0xD0D0D0, 0x989898, 0x606060, 0x202020 }.Select(
            (rgb, k) => new CardPatch(new(18 + (16 * k), 10), new(34 + (16 * k), 22), rgb)
        ),
    ];

    /// <summary>Patches of colour, for the eye: on a print that has faded they no longer look alike.</summary>
    public static IReadOnlyList<CardPatch> Colours { get; } =
    [
        .. new[] { 0xA8342A, 0x3F7F3F, 0x2F4F97, 0xD2B02E }.Select(
            (rgb, k) => new CardPatch(new(18 + (16 * k), 42), new(34 + (16 * k), 54), rgb)
        ),
    ];
}

/// <summary>A patch of one colour on the card.</summary>
/// <param name="From">Its upper left corner, mm.</param>
/// <param name="To">Its lower right corner, mm.</param>
/// <param name="Rgb">Its colour as it is to be printed, sRGB.</param>
public sealed record CardPatch(PointMm From, PointMm To, int Rgb);
