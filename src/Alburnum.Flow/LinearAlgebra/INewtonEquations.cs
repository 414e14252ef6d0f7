namespace Alburnum.Flow.LinearAlgebra;

/// <summary>A way of solving the linear equations of one Newton iteration.</summary>
internal interface INewtonEquations
{
    /// <summary>Iterations of the last solve; 0 where it needs none.</summary>
    int Iterations { get; }

    /// <summary>Solves for x; false where it could not.</summary>
    /// <param name="state">Air pressure (Pa) and saturation, cell by cell, at which the equations were taken.</param>
    /// <param name="right">What is out of balance, m³: liquid, then air, cell by cell.</param>
    /// <param name="x">What is to be taken from the state, laid out alike.</param>
    bool Solve(double[] state, double[] right, double[] x);
}
