namespace Alburnum.DrawnSections;

/// <summary>What a photograph shows of the heartwood.</summary>
public enum HeartwoodKind
{
    /// <summary>Heartwood of another colour, its border in sight on untreated wood.</summary>
    Clear,

    /// <summary>Heartwood of nearly the sapwood's colour: spruce, beech.</summary>
    Faint,

    /// <summary>Sapwood alone.</summary>
    None,

    /// <summary>Sapwood alone, with brown stains that look like heartwood.</summary>
    Stained,
}
