namespace Alburnum.Flow.LinearAlgebra;

/// <summary>How the factoring of a matrix ended.</summary>
internal enum FactorOutcome
{
    /// <summary>Its factors stand and may be applied.</summary>
    Factored,

    /// <summary>A block on its diagonal is singular: there are no factors.</summary>
    SingularBlock,
}
