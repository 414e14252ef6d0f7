using Alburnum.Flow.Equations;

namespace Alburnum.Flow.Stepping;

/// <summary>How Newton's method ended on a time step.</summary>
internal enum NewtonEnding
{
    /// <summary>Every cell is in balance within the tolerance.</summary>
    Converged,

    /// <summary>The iterations allowed were used up.</summary>
    IterationLimit,

    /// <summary>A balance is no longer a number.</summary>
    NotFinite,

    /// <summary>The linear equations could not be solved.</summary>
    LinearSolveFailed,

    /// <summary>The linear equations could not be solved in single precision.</summary>
    SinglePrecisionExhausted,
}

/// <summary>What Newton's method came to on a time step.</summary>
/// <param name="Ending">How it ended.</param>
/// <param name="Iterations">Iterations taken, the last of which only found the balance.</param>
/// <param name="LinearIterations">Iterations of the linear solver.</param>
/// <param name="WorstCell">Cell most out of balance.</param>
/// <param name="WorstShare">How far, as a share of its voids.</param>
internal readonly record struct NewtonOutcome(
    NewtonEnding Ending,
    int Iterations,
    int LinearIterations,
    int WorstCell,
    double WorstShare
)
{
    /// <summary>Iterations of the hardest of several steps solved together.</summary>
    public int MostIterations { get; init; } = Iterations;

    /// <summary>This and another step solved together: it ended as the first of the two that did not converge.</summary>
    public NewtonOutcome With(NewtonOutcome other) =>
        (Ending == NewtonEnding.Converged ? other : this) with
        {
            Iterations = Iterations + other.Iterations,
            MostIterations = Math.Max(MostIterations, other.MostIterations),
            LinearIterations = LinearIterations + other.LinearIterations,
        };
}

/// <summary>A time step that was solved. The arrays are the solver's own: read them before the next step.</summary>
/// <param name="State">Air pressure (Pa) and saturation at its end, cell by cell.</param>
/// <param name="Flows">What flowed.</param>
internal readonly record struct SolvedStep(double[] State, StepFlows Flows);
