namespace Alburnum.Requirements;

/// <summary>Which kind of answer a rulebook gives.</summary>
public enum AnswerOutcome
{
    /// <summary>The code demands something.</summary>
    Required,

    /// <summary>The code recommends something, and does not require it.</summary>
    Recommended,

    /// <summary>The code asks for no preservative.</summary>
    NotNeeded,

    /// <summary>The code does not allow it.</summary>
    NotPermitted,

    /// <summary>The rulebook has no answer.</summary>
    NotCovered,
}

/// <summary>What a rulebook says to an enquiry, and why.</summary>
/// <param name="Outcome">Which kind it is.</param>
/// <param name="Trace">Why.</param>
public abstract record Answer(AnswerOutcome Outcome, Trace Trace);

/// <summary>The code demands this, or recommends it.</summary>
/// <param name="Requirement">The requirement.</param>
/// <param name="Trace">Why.</param>
public sealed record Required(Requirement Requirement, Trace Trace)
    : Answer(Requirement.IsRecommended ? AnswerOutcome.Recommended : AnswerOutcome.Required, Trace);

/// <summary>The code asks for no preservative; insects that nobody has ruled out may still make it wise.</summary>
/// <param name="Reason">Why, one sentence, as the rulebook has it.</param>
/// <param name="Conditions">Conditions and advice that go with it.</param>
/// <param name="Trace">Why, in full.</param>
public sealed record NotNeeded(string Reason, IReadOnlyList<RequirementCondition> Conditions, Trace Trace)
    : Answer(AnswerOutcome.NotNeeded, Trace)
{
    /// <summary>True where nobody has said which insects live where it is used.</summary>
    public bool IsUnlessInsects => Trace.Enquiry.Exposure.Insects is null;
}

/// <summary>The code does not allow it.</summary>
/// <param name="Reason">Why, one sentence, as the rulebook has it.</param>
/// <param name="Trace">Why, in full.</param>
public sealed record NotPermitted(string Reason, Trace Trace) : Answer(AnswerOutcome.NotPermitted, Trace);

/// <summary>The rulebook has no answer: the code itself must be consulted, or more must be known. Never a guess.</summary>
/// <param name="Reason">Why.</param>
/// <param name="Trace">Why, in full.</param>
public sealed record NotCovered(NotCoveredReason Reason, Trace Trace) : Answer(AnswerOutcome.NotCovered, Trace)
{
    /// <summary>What would have to be known of the piece; empty where the rulebook itself is silent.</summary>
    public IReadOnlyList<Field> Missing =>
        Reason switch
        {
            DependsOn unknown => unknown.Fields,
            ClassNotStated => [Field.StatedClass],
            _ => [],
        };

    /// <summary>Advice of the rulebook that holds whatever the cell says that has not been read; none of what is no timber of one species, of which it does not speak.</summary>
    public IReadOnlyList<RequirementCondition> Advice =>
        Reason is NotOneSpecies
            ? []
            : [.. (Trace.Step(Subject.Advice)?.Matched ?? []).Select(row => new RowAdvises(row))];
}
