using Alburnum.Facts;
using Alburnum.Impregnation;

namespace Alburnum.Records.Facts;

/// <summary>One line of a schedule as a treater writes it: go to a pressure, then hold it.</summary>
/// <param name="Name">What the step is, for instance "initial vacuum".</param>
/// <param name="Contact">What touches the wood.</param>
/// <param name="KPa">Absolute pressure to go to, kPa.</param>
/// <param name="RampMinutes">Minutes to get there; 0 where it is reached at once.</param>
/// <param name="HoldMinutes">Minutes to hold it; 0 where it is not held.</param>
/// <param name="Celsius">Temperature of the solution, of steam or of hot air, °C; null for the solution's usual one, and for air or a vacuum that brings no heat.</param>
internal sealed record ScheduleStep(
    string Name,
    Contact Contact,
    double KPa,
    double RampMinutes,
    double HoldMinutes,
    double? Celsius = null
);

/// <summary>Makes schedules from what people write, or refuses them in words.</summary>
internal static class ScheduleSteps
{
    /// <summary>A schedule from steps that each go to a pressure and hold it, starting from the open air.</summary>
    /// <param name="name">Name of the schedule; also the row named in a refusal.</param>
    /// <param name="steps">The steps in order.</param>
    /// <param name="file">File the steps were read from, for a refusal.</param>
    /// <exception cref="InputRefusedException">A step is impossible. Every problem is listed.</exception>
    public static Schedule Build(string name, IReadOnlyList<ScheduleStep> steps, string file)
    {
        var problems = new List<InputProblem>();
        if (steps.Count == 0)
            problems.Add(new InputProblem(file, 0, name, "steps", "none", "one step or more"));
        foreach (var step in steps)
        {
            Check(step, "kPa", step.KPa, Ranges.PressureKPa);
            Check(step, "rampMinutes", step.RampMinutes, Ranges.StepMinutes);
            Check(step, "holdMinutes", step.HoldMinutes, Ranges.StepMinutes);
            if (step.Celsius is { } celsius)
                Check(step, "celsius", celsius, Stage.CelsiusRange(step.Contact));
        }
        if (steps.Count > 0 && !steps.Any(step => step.Contact == Contact.Liquid))
            problems.Add(
                new InputProblem(
                    file,
                    0,
                    name,
                    "contact",
                    "air throughout",
                    "a step with solution in contact with the wood"
                )
            );
        if (problems.Count > 0)
            throw new InputRefusedException(problems);

        var stages = new List<Stage>();
        var pressure = Schedule.AtmosphereKPa;
        foreach (var step in steps)
        {
            if (step.RampMinutes > 0)
                stages.Add(new Stage(step.Name, step.Contact, step.RampMinutes, pressure, step.KPa, step.Celsius));
            if (step.HoldMinutes > 0)
                stages.Add(new Stage(step.Name, step.Contact, step.HoldMinutes, step.KPa, step.KPa, step.Celsius));
            pressure = step.KPa;
        }
        if (stages.Count == 0)
            throw new InputRefusedException(
                new InputProblem(file, 0, name, "minutes", "0 in every step", "a step that takes time")
            );
        return new Schedule(name, stages);

        void Check(ScheduleStep step, string field, double found, NumberRange range)
        {
            if (!range.Holds(found))
                problems.Add(
                    new InputProblem(file, 0, $"{name}: {step.Name}", field, InputProblem.Number(found), range.InWords)
                );
        }
    }
}
