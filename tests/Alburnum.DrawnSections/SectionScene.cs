namespace Alburnum.DrawnSections;

/// <summary>Everything that goes into one photograph of a sprayed cut end. The same scene always draws the same picture.</summary>
public sealed record SectionScene(
    string Name,
    int Seed,
    SectionShape Shape,
    EndGrain Grain,
    Treatment Treatment,
    Indicator Indicator,
    Spray Spray,
    Ground Ground,
    Light Light,
    Lens Lens,
    Sensor Sensor
)
{
    /// <summary>Length of the piece below the cut face, mm.</summary>
    public double ThicknessMm { get; init; } = 30;

    /// <summary>How strongly the sawn surface's relief shows under this light.</summary>
    public double SawShade { get; init; } = 1;

    public Thumb? Thumb { get; init; }

    public LaidCard? Card { get; init; }

    public int JpegQuality { get; init; } = 90;

    /// <summary>Whether colours are stored at full resolution.</summary>
    public bool FullColour { get; init; }

    /// <summary>EXIF orientation, 1 to 8.</summary>
    public int Orientation { get; init; } = 1;

    /// <summary>The true depths and outline of this scene, without drawing it.</summary>
    public SectionTruth Truth() => TruthReading.Of(this);

    /// <summary>Takes the photograph.</summary>
    /// <returns>A JPEG file's bytes.</returns>
    public byte[] Photograph()
    {
        var face = new SprayedFace(Shape, Grain, Treatment, Indicator, Spray, SawShade);
        var light = new Exposure(this, face).Take();
        using var developed = Development.Develop(light, Sensor);
        return JpegFile.Encode(developed, JpegQuality, Orientation, FullColour);
    }
}
