namespace Alburnum.Flow.LinearAlgebra;

/// <summary>How a linear solve ended.</summary>
internal enum LinearEnding
{
    /// <summary>The residual is within the tolerance.</summary>
    Converged,

    /// <summary>The iterations allowed were used up before the residual was within the tolerance.</summary>
    Stagnated,

    /// <summary>A diagonal block has no inverse.</summary>
    Singular,

    /// <summary>A number ran out of the precision's range.</summary>
    PrecisionExhausted,
}

/// <summary>What a linear solve came to.</summary>
/// <param name="Ending">How it ended.</param>
/// <param name="Iterations">Iterations taken; 0 where the method is direct.</param>
/// <param name="RelativeResidual">‖b − A·x‖ over ‖b‖, as the method itself counts it; 0 where it is direct, 1 where x was not found.</param>
internal readonly record struct LinearOutcome(LinearEnding Ending, int Iterations, double RelativeResidual)
{
    /// <summary>A direct method's answer.</summary>
    public static LinearOutcome Exact { get; } = new(LinearEnding.Converged, 0, 0);

    /// <summary>A diagonal block has no inverse: nothing was solved.</summary>
    public static LinearOutcome Singular { get; } = new(LinearEnding.Singular, 0, 1);
}
