namespace Alburnum.DrawnSections;

/// <summary>How a kind of timber looks on its end grain.</summary>
/// <param name="Earlywood">Colour of earlywood in sapwood.</param>
/// <param name="Latewood">Colour of latewood in sapwood.</param>
/// <param name="HeartEarlywood">Colour of earlywood in heartwood.</param>
/// <param name="HeartLatewood">Colour of latewood in heartwood.</param>
/// <param name="RayStrength">How much the rays show; softwood rays hardly do.</param>
/// <param name="PoreStrength">How much large vessels show.</param>
/// <param name="LatewoodStart">Share of a ring at which latewood sets in.</param>
public sealed record Timber(
    string Name,
    Colour Earlywood,
    Colour Latewood,
    Colour HeartEarlywood,
    Colour HeartLatewood,
    float RayStrength,
    float PoreStrength,
    float LatewoodStart
)
{
    public static readonly Timber Pine = new(
        "pine",
        Colour.Of("#E6CB9E"),
        Colour.Of("#BF8648"),
        Colour.Of("#D2A473"),
        Colour.Of("#9C5E33"),
        0.05f,
        0,
        0.52f
    );

    public static readonly Timber Spruce = new(
        "spruce",
        Colour.Of("#EBDCBB"),
        Colour.Of("#CDA672"),
        Colour.Of("#E6D3AE"),
        Colour.Of("#C69C68"),
        0.04f,
        0,
        0.66f
    );

    public static readonly Timber Larch = new(
        "larch",
        Colour.Of("#DFBE8D"),
        Colour.Of("#A9683A"),
        Colour.Of("#C68A5C"),
        Colour.Of("#82452A"),
        0.06f,
        0,
        0.55f
    );

    public static readonly Timber DouglasFir = new(
        "Douglas fir",
        Colour.Of("#E2C194"),
        Colour.Of("#B8763F"),
        Colour.Of("#CB8F66"),
        Colour.Of("#8E5136"),
        0.06f,
        0,
        0.5f
    );

    public static readonly Timber Oak = new(
        "oak",
        Colour.Of("#CDB187"),
        Colour.Of("#B3935F"),
        Colour.Of("#B28D5B"),
        Colour.Of("#8F6C41"),
        0.28f,
        0.5f,
        0.35f
    );

    public static readonly Timber Beech = new(
        "beech",
        Colour.Of("#DDB68C"),
        Colour.Of("#C99A6D"),
        Colour.Of("#CF9C70"),
        Colour.Of("#B98457"),
        0.16f,
        0.1f,
        0.6f
    );

    public static readonly Timber Eucalypt = new(
        "eucalypt",
        Colour.Of("#D8B79A"),
        Colour.Of("#B98768"),
        Colour.Of("#A8654B"),
        Colour.Of("#8A4B38"),
        0.1f,
        0.3f,
        0.5f
    );

    public static readonly IReadOnlyList<Timber> All = [Pine, Spruce, Larch, DouglasFir, Oak, Beech, Eucalypt];
}
