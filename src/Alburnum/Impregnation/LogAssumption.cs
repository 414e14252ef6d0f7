using Alburnum.Timber;

namespace Alburnum.Impregnation;

/// <summary>What was assumed about a piece's place in its log because nobody said it.</summary>
public abstract record LogAssumption
{
    private protected LogAssumption() { }
}

/// <summary>Sapwood and heartwood of the species look alike: taken as sapwood throughout.</summary>
/// <param name="Species">The species.</param>
/// <param name="Standing">How far that may be relied on.</param>
public sealed record SapwoodNotDistinct(Species Species, Standing Standing) : LogAssumption;

/// <summary>The sapwood is as wide as is usual in the species.</summary>
/// <param name="Width">The width.</param>
/// <param name="Standing">How far the species' band may be relied on.</param>
public sealed record SapwoodAsUsual(UsualSapwood Width, Standing Standing) : LogAssumption;

/// <summary>The piece was sawn with the pith in its middle.</summary>
public sealed record PithInTheMiddle : LogAssumption;

/// <summary>The piece was sawn as one of four round the pith, as hardwoods are.</summary>
public sealed record PithAtACorner : LogAssumption;

/// <summary>The piece comes from the smallest log that holds it.</summary>
public sealed record SmallestLog : LogAssumption;
