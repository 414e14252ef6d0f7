namespace Alburnum.Impregnation.Flow;

/// <summary>A way of solving the linear equations of one Newton step.</summary>
internal interface INewtonEquations
{
    /// <summary>Solves for x, to a relative residual; false where it could not.</summary>
    bool Solve(double[] right, double[] x, double tolerance);
}
