using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Acceptance.Variables;
using Alburnum.Cases;
using Alburnum.Penetration;

namespace Alburnum.Reports.Words;

/// <summary>What a verdict rests on, one sentence for each reason.</summary>
/// <param name="wording">The language.</param>
public sealed class ReasonWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static ReasonWords Current => new(Wording.Current);

    /// <summary>What is said of a piece.</summary>
    public PenetrationWords Penetration { get; } = new(wording);

    /// <summary>What is said of a batch judged by counting, and of the rules by which it is.</summary>
    public AcceptanceWords Acceptance { get; } = new(wording);

    /// <summary>What is said of a batch judged by variables.</summary>
    public VariablesWords Variables { get; } = new(wording);

    /// <summary>Why inspection is switched.</summary>
    public SwitchingWords Switching { get; } = new(wording);

    /// <summary>What is said of a case.</summary>
    public CaseWords Cases { get; } = new(wording);

    /// <summary>One sentence for each reason, in their order.</summary>
    public IReadOnlyList<string> Say(IEnumerable<Reason> reasons) => [.. reasons.Select(Say)];

    /// <summary>The sentence of a reason.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reason of a kind that no sentence is known for.</exception>
    public string Say(Reason reason) =>
        reason switch
        {
            PieceReason piece => Penetration.Say(piece),
            BatchReason batch => Acceptance.Say(batch),
            VariablesReason variables => Variables.Say(variables),
            SwitchingReason switching => Switching.Say(switching),
            CaseReason @case => Cases.Say(@case),
            _ => throw Unknown(reason),
        };

    /// <summary>No sentence is known for a kind of reason.</summary>
    internal static ArgumentOutOfRangeException Unknown(Reason reason) =>
        new(nameof(reason), reason, $"No sentence is known for {reason?.GetType().Name}.");
}
