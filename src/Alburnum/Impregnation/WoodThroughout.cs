namespace Alburnum.Impregnation;

/// <summary>Wood of one kind throughout a piece.</summary>
public enum WoodThroughout
{
    /// <summary>Sapwood throughout.</summary>
    Sapwood,

    /// <summary>Heartwood throughout.</summary>
    Heartwood,
}
