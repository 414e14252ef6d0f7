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

    /// <summary>It answers by something that is not known of the piece.</summary>
    Open,

    /// <summary>The rulebook has no answer.</summary>
    NotCovered,
}

/// <summary>What a rulebook says to an enquiry, and why.</summary>
/// <param name="Outcome">Which kind it is.</param>
/// <param name="Trace">Why.</param>
public abstract record Answer(AnswerOutcome Outcome, Trace Trace)
{
    /// <summary>What is demanded in any event: the demand itself; where the answer is open, the least of those possible; null where none is sure.</summary>
    public Required? InAnyEvent => this as Required ?? (this as NotCovered)?.Least;

    /// <summary>True where whatever reaches that depth is sure to be deep enough, whatever is open; false where no demand is known.</summary>
    /// <param name="depth">The depth.</param>
    public bool IsMetBy(DepthRule depth) =>
        this switch
        {
            Required { Requirement.Penetration: var demanded } => DepthOrder.Implies(depth, demanded),
            NotCovered { Possible: { Count: > 0 } possible } => possible.All(each => each.Answer.IsMetBy(depth)),
            _ => false,
        };
}

/// <summary>The code demands this, or recommends it.</summary>
/// <param name="Requirement">The requirement.</param>
/// <param name="Trace">Why.</param>
public sealed record Required(Requirement Requirement, Trace Trace)
    : Answer(Requirement.IsRecommended ? AnswerOutcome.Recommended : AnswerOutcome.Required, Trace);

/// <summary>What is taken to be so of a field that an enquiry leaves open.</summary>
/// <param name="Field">The field.</param>
/// <param name="IsSo">Whether it is taken to be so.</param>
/// <param name="Words">The words that it is taken to be one of, or none of; empty for a field that is itself yes or no.</param>
public sealed record Assumption(Field Field, bool IsSo, IReadOnlyList<string> Words)
{
    /// <inheritdoc/>
    public bool Equals(Assumption? other) =>
        other is not null
        && Field == other.Field
        && IsSo == other.IsSo
        && Words.SequenceEqual(other.Words, StringComparer.Ordinal);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Field, IsSo, Words.Count);
}

/// <summary>What a rulebook answers in one of the cases that an enquiry leaves open.</summary>
/// <param name="Where">What is taken to be so, one assumption for each open field. Never empty.</param>
/// <param name="Answer">The answer then.</param>
public sealed record PossibleAnswer(IReadOnlyList<Assumption> Where, Answer Answer);

/// <summary>The code asks for no preservative; insects that nobody has ruled out may still make it wise.</summary>
/// <param name="Reason">Why, one sentence, as the rulebook has it.</param>
/// <param name="Conditions">Conditions and advice that go with it.</param>
/// <param name="Trace">Why, in full.</param>
public sealed record NotNeeded(string Reason, IReadOnlyList<RequirementCondition> Conditions, Trace Trace)
    : Answer(AnswerOutcome.NotNeeded, Trace)
{
    /// <summary>True where nobody has said which insects live where it is used.</summary>
    public bool IsUnlessInsects => !Trace.Enquiry.Insects.IsSaid;
}

/// <summary>The code does not allow it.</summary>
/// <param name="Reason">Why, one sentence, as the rulebook has it.</param>
/// <param name="Trace">Why, in full.</param>
public sealed record NotPermitted(string Reason, Trace Trace) : Answer(AnswerOutcome.NotPermitted, Trace);

/// <summary>The rulebook has no answer: the code itself must be consulted, or more must be known. Never a guess.</summary>
/// <param name="Reason">Why.</param>
/// <param name="Trace">Why, in full.</param>
public sealed record NotCovered(NotCoveredReason Reason, Trace Trace)
    : Answer(Reason is DependsOn ? AnswerOutcome.Open : AnswerOutcome.NotCovered, Trace)
{
    /// <summary>What would have to be known of the piece; empty where the rulebook itself is silent.</summary>
    public IReadOnlyList<Field> Missing =>
        Reason switch
        {
            DependsOn unknown => unknown.Fields,
            ClassNotStated => [Field.StatedClass],
            _ => [],
        };

    /// <summary>What it answers in each of the cases that are open, as far as they are told apart by yes or no or by the preservative; empty where it has no answer in any of them.</summary>
    public IReadOnlyList<PossibleAnswer> Possible { get; init; } = [];

    /// <summary>
    /// What it demands whatever is open: the least of the demands possible, with the least retention; null where one of them is none, or where none is sure to be met
    /// by whatever meets the others. Timber that is not permitted in one of the cases must meet it in the others.
    /// </summary>
    public Required? Least
    {
        get
        {
            List<Required> demands = [.. Possible.Select(each => each.Answer).OfType<Required>()];
            if (
                demands.Exists(each => each.Requirement.IsRecommended)
                || Possible.Any(each => each.Answer is not (Required or NotPermitted))
            )
                return null;
            var least = demands.Find(each => demands.TrueForAll(other => each.IsMetBy(other.Requirement.Penetration)));
            return least is null
                ? null
                : least with
                {
                    Requirement = least.Requirement with { RequiredRetention = LeastRetention(demands) },
                };
        }
    }

    private static PreservativeAmount? LeastRetention(List<Required> demands) =>
        demands.TrueForAll(each =>
            each.Requirement.RequiredRetention?.Unit == demands[0].Requirement.RequiredRetention?.Unit
        )
            ? demands.Select(each => each.Requirement.RequiredRetention).MinBy(amount => amount?.Value)
            : null;

    /// <summary>Advice of the rulebook that holds whatever the cell says that has not been read; none of timber of which it does not speak.</summary>
    public IReadOnlyList<RequirementCondition> Advice =>
        Reason is NotOneSpecies or TimberNotCovered
            ? []
            : [.. (Trace.Step(Subject.Advice)?.Matched ?? []).Select(row => new RowAdvises(row))];
}
