namespace Alburnum.Requirements;

/// <summary>Use class by exposure, as in EN 335:2013 (class 3 in its two parts).</summary>
public enum UseClass
{
    /// <summary>Indoors, dry.</summary>
    One,

    /// <summary>Under cover, occasional wetting or condensation.</summary>
    Two,

    /// <summary>Outdoors above ground; water does not stay.</summary>
    ThreeOne,

    /// <summary>Outdoors above ground; water may stay.</summary>
    ThreeTwo,

    /// <summary>In contact with ground or fresh water.</summary>
    Four,

    /// <summary>In salt water.</summary>
    Five,
}

/// <summary>How long the client expects a component to serve, in whole years. 1 to 200.</summary>
/// <remarks>Immutable. <c>default</c> is 0 years and is refused by every rulebook.</remarks>
public readonly record struct DesiredServiceLife
{
    /// <summary>Checks the range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 1 to 200 years.</exception>
    public DesiredServiceLife(int years) => Years = Require.InRange(years, 1, 200, "years");

    /// <summary>Whole years.</summary>
    public int Years { get; }
}
