using Alburnum.Timber;

namespace Alburnum.Impregnation.Diffusing;

/// <summary>A time during which salt spreads.</summary>
/// <param name="M2PerS">Coefficient, m²/s.</param>
/// <param name="Days">Its length, days. 0 or more.</param>
public readonly record struct SaltSpell(double M2PerS, double Days);

/// <summary>A salt in a section after it spread from a border under all faces.</summary>
/// <param name="FromFace">From the middle of a broad face, or from the rim, to the middle.</param>
/// <param name="Mean">Mean loading of the section.</param>
/// <remarks>
/// Sawn sections: what a border under all four faces lacks of an even loading is, from the start, the product of what the borders of two sheets lack, one as
/// thick as the piece and one as wide; each factor obeys the law of its own sheet, and so the product that of the section, sealed or kept free of salt at the
/// faces (the product of solutions in Crank, The Mathematics of Diffusion, remembered). Rounds: along the radius. Half-rounds and quartered pieces: as a sheet
/// up to their deepest place, so that depths come out too small.
/// </remarks>
public sealed record SaltSection(SaltProfile FromFace, double Mean)
{
    /// <summary>The section after it was stored, its faces sealed, and lay in running water.</summary>
    /// <param name="section">The section.</param>
    /// <param name="borderMm">Depth of the border, mm. Above 0, at most where fronts from all faces meet.</param>
    /// <param name="loading">Its loading, above 0.</param>
    /// <param name="stored">How it was stored.</param>
    /// <param name="washed">How it lay in running water; null where it did not.</param>
    public static SaltSection After(
        Section section,
        double borderMm,
        double loading,
        SaltSpell stored,
        SaltSpell? washed
    )
    {
        ArgumentNullException.ThrowIfNull(section);
        if (section is RectangularSection sawn)
            return OfSawn(sawn, borderMm, loading, stored, washed);
        var profile = Lain(
            SaltProfile.Border(SectionBorder.DeepestMm(section), borderMm, loading, section is RoundSection),
            stored,
            washed
        );
        return new(profile, profile.Mean);
    }

    /// <summary>True where the section's own shape is reckoned with; false where it is taken for a sheet.</summary>
    /// <param name="section">The section.</param>
    public static bool IsExact(Section section) => section is RectangularSection or RoundSection;

    private static SaltSection OfSawn(
        RectangularSection sawn,
        double borderMm,
        double loading,
        SaltSpell stored,
        SaltSpell? washed
    )
    {
        var (thick, wide) = (
            Sheet(Math.Min(sawn.WidthMm, sawn.HeightMm) / 2),
            Sheet(Math.Max(sawn.WidthMm, sawn.HeightMm) / 2)
        );
        // In the middle of the broad face, the other sheet is at its own middle.
        var (even, border) = (wide.Even.Loading[^1], wide.Border.Loading[^1]);
        return new(
            thick.Border.With((inBorder, i) => loading * Both(thick.Even.Loading[i], inBorder, even, border)),
            loading * Both(thick.Even.Mean, thick.Border.Mean, wide.Even.Mean, wide.Border.Mean)
        );

        // What is left of an even loading of 1, and of the border alone.
        (SaltProfile Even, SaltProfile Border) Sheet(double halfMm) =>
            (
                Lain(SaltProfile.Border(halfMm, halfMm, 1), stored, washed),
                Lain(SaltProfile.Border(halfMm, borderMm, 1), stored, washed)
            );

        // The means multiply as the values do: each factor hangs on its own coordinate alone.
        static double Both(double even, double border, double otherEven, double otherBorder) =>
            even * otherEven - (even - border) * (otherEven - otherBorder);
    }

    private static SaltProfile Lain(SaltProfile profile, SaltSpell stored, SaltSpell? washed)
    {
        var spread = profile.After(stored.M2PerS, stored.Days, isFaceWet: false);
        return washed is { } wet ? spread.After(wet.M2PerS, wet.Days, isFaceWet: true) : spread;
    }
}
