namespace Alburnum.Impregnation;

/// <summary>Reads what people write of the wood that a piece was sawn from, as an option or in a file.</summary>
public static class TreatedWoodText
{
    /// <summary>The positions in a log, for messages.</summary>
    public const string PositionsExpected = "boxed, halved, quartered or side";

    /// <summary>The kinds of wood that a piece may be of throughout, for messages.</summary>
    public const string ThroughoutExpected = "sapwood or heartwood";

    /// <summary>Where in the log a piece was sawn; null where the text names no position.</summary>
    public static SawingPosition? Position(string text) =>
        text switch
        {
            "boxed" => SawingPosition.Boxed,
            "halved" => SawingPosition.Halved,
            "quartered" => SawingPosition.Quartered,
            "side" => SawingPosition.Side,
            _ => null,
        };

    /// <summary>The wood that a piece is of throughout; null where the text names neither.</summary>
    public static WoodThroughout? Throughout(string text) =>
        text switch
        {
            "sapwood" => WoodThroughout.Sapwood,
            "heartwood" => WoodThroughout.Heartwood,
            _ => null,
        };
}
