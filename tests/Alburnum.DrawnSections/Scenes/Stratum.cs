namespace Alburnum.DrawnSections;

/// <summary>How difficult a photograph is to read.</summary>
public enum Stratum
{
    /// <summary>A careful photograph: plain ground, square on, even light, clear colours.</summary>
    Easy,

    /// <summary>What comes from a site on a good day.</summary>
    Ordinary,

    /// <summary>What comes from a site on a bad one.</summary>
    Hard,
}
