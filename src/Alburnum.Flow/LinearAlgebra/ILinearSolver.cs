namespace Alburnum.Flow.LinearAlgebra;

/// <summary>Solves A·x = b for a block matrix whose values change from one solve to the next, its pattern never.</summary>
internal interface ILinearSolver
{
    /// <summary>Solves for x with the matrix as it now stands.</summary>
    /// <param name="right">The right-hand side b, pairs cell by cell.</param>
    /// <param name="x">The unknowns, laid out alike; overwritten. Of no use where the matrix is singular.</param>
    LinearOutcome Solve(double[] right, double[] x);
}
