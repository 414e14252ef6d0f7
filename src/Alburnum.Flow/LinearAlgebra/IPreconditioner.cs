namespace Alburnum.Flow.LinearAlgebra;

/// <summary>A cheap approximate inverse M⁻¹ of a matrix, by which a Krylov method takes fewer steps.</summary>
internal interface IPreconditioner<T>
{
    /// <summary>Takes the matrix as it now stands.</summary>
    /// <param name="coarsen">Whether what was fitted to earlier values of the matrix, such as coarse grids, is to be chosen anew.</param>
    FactorOutcome SetUp(bool coarsen);

    /// <summary>z = M⁻¹·r, pairs cell by cell.</summary>
    void Apply(T[] r, T[] z);
}
