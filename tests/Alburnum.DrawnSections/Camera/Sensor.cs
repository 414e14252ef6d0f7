namespace Alburnum.DrawnSections;

/// <summary>What happens to light behind the lens.</summary>
/// <param name="DefocusPx">Standard deviation of the blur, pixels; no lens is below about 0.6.</param>
/// <param name="MotionPx">Length of the smear of a moving hand.</param>
/// <param name="MotionAngle">Its direction.</param>
/// <param name="Noise">Noise at mid grey, share of full scale.</param>
/// <param name="Vignette">Loss of light in the corners, share.</param>
/// <param name="ExposureStops">Departure from a proper exposure.</param>
/// <param name="WhiteBalance">Error of the white balance: gains of the channels.</param>
/// <param name="Sharpening">Strength of the camera's own sharpening.</param>
/// <param name="Contrast">Strength of the camera's own tone curve, 0 to 1.</param>
/// <param name="Saturation">The camera's own colour boost; 1 is none.</param>
public sealed record Sensor(
    double DefocusPx,
    double MotionPx,
    double MotionAngle,
    float Noise,
    float Vignette,
    float ExposureStops,
    Colour WhiteBalance,
    float Sharpening,
    float Contrast,
    float Saturation,
    int Seed
);
