namespace Alburnum.DrawnSections;

/// <summary>A piece as it lies on a bench.</summary>
/// <param name="Scene">The piece, its lens and light as they are seen from it.</param>
/// <param name="Centre">Where its middle lies, mm on the bench.</param>
public sealed record LaidPiece(SectionScene Scene, Point Centre)
{
    /// <summary>A piece laid on a bench.</summary>
    /// <param name="scene">The piece; its own lens and light are not looked at.</param>
    /// <param name="centre">Where its middle lies, mm on the bench.</param>
    /// <param name="turn">How far it is turned, radians.</param>
    /// <param name="lens">The camera over the bench.</param>
    /// <param name="light">The light on the bench; how it falls off is the bench's.</param>
    public static LaidPiece On(SectionScene scene, Point centre, double turn, Lens lens, Light light)
    {
        var from = lens.AimMm - centre;
        var (sin, cos) = Math.SinCos(turn);
        return new(
            scene with
            {
                Lens = lens with
                {
                    AimMm = new((from.X * cos) + (from.Y * sin), (from.Y * cos) - (from.X * sin)),
                    TiltAzimuth = lens.TiltAzimuth - turn,
                    Roll = lens.Roll - turn,
                },
                Light = light with { Azimuth = light.Azimuth - turn, Falloff = 0 },
                Orientation = 1,
                Thumb = null,
                Card = null,
            },
            centre
        );
    }
}

/// <summary>Several cut ends on one photograph. The same scene always draws the same picture.</summary>
/// <param name="Pieces">The pieces in reading order, left to right, row by row; then what lies about besides.</param>
/// <param name="Sections">How many of them are sections to be measured.</param>
public sealed record BenchScene(
    string Name,
    int Seed,
    IReadOnlyList<LaidPiece> Pieces,
    int Sections,
    Ground Ground,
    Light Light,
    Lens Lens,
    Sensor Sensor
)
{
    public int JpegQuality { get; init; } = 92;

    /// <summary>EXIF orientation, 1 to 8.</summary>
    public int Orientation { get; init; } = 1;

    /// <summary>The true depths and outlines of the sections, in reading order.</summary>
    public IReadOnlyList<SectionTruth> Truths() => [.. Pieces.Take(Sections).Select(laid => laid.Scene.Truth())];

    /// <summary>Takes the photograph.</summary>
    /// <returns>A JPEG file's bytes.</returns>
    public byte[] Photograph()
    {
        using var developed = Development.Develop(new BenchExposure(this).Take(), Sensor);
        return JpegFile.Encode(developed, JpegQuality, Orientation, fullColour: false);
    }
}
