namespace Alburnum.Flow.Stepping;

/// <summary>How a flow run ended.</summary>
public abstract record FlowEnding
{
    private protected FlowEnding() { }
}

/// <summary>Every step to the end of the schedule was solved.</summary>
/// <param name="Steps">Steps taken.</param>
/// <param name="NewtonIterations">Newton iterations over all steps.</param>
/// <param name="LinearIterations">Iterations of the linear solver over all steps; 0 where it is direct.</param>
public sealed record Completed(int Steps, int NewtonIterations, int LinearIterations) : FlowEnding;

/// <summary>A step would not converge, however short. The field returned is the last one that balanced.</summary>
/// <param name="Minutes">Time of the last solved step, min.</param>
/// <param name="Stage">Stage of the schedule.</param>
/// <param name="Cell">Cell that was worst out of balance.</param>
/// <param name="ResidualShare">How far, as a share of the cell's void volume.</param>
public sealed record StepTooSmall(double Minutes, string Stage, int Cell, double ResidualShare) : FlowEnding;

/// <summary>The allowance of steps was used up before the schedule ended. The field returned is the last one that balanced.</summary>
/// <param name="Minutes">Time of the last solved step, min.</param>
/// <param name="Stage">Stage of the schedule.</param>
/// <param name="Steps">Steps allowed and taken.</param>
/// <param name="Cell">Cell that was worst out of balance in the last solved step.</param>
/// <param name="ResidualShare">How far, as a share of the cell's void volume.</param>
public sealed record StepLimit(double Minutes, string Stage, int Steps, int Cell, double ResidualShare) : FlowEnding;

/// <summary>The linear equations could not be solved in single precision: the run is begun anew in double.</summary>
internal sealed record SinglePrecisionExhausted : FlowEnding;
