using System.Diagnostics.CodeAnalysis;

namespace Alburnum.Imaging.Outcomes;

/// <summary>What came of a step: its result, or the named reason why there is none.</summary>
/// <typeparam name="T">The result.</typeparam>
/// <typeparam name="TReason">Why there is none.</typeparam>
internal sealed class Outcome<T, TReason>
{
    private readonly bool _isReached;
    private readonly T? _result;
    private readonly TReason? _reason;

    private Outcome(bool isReached, T? result, TReason? reason) =>
        (_isReached, _result, _reason) = (isReached, result, reason);

    public static implicit operator Outcome<T, TReason>(T result) => new(true, result, default);

    public static implicit operator Outcome<T, TReason>(TReason reason) => new(false, default, reason);

    /// <summary>Whether the step reached its result.</summary>
    public bool Has([MaybeNullWhen(false)] out T result, [MaybeNullWhen(true)] out TReason reason)
    {
        (result, reason) = (_result, _reason);
        return _isReached;
    }

    /// <summary>The next step on the result; a reason passes on as it is.</summary>
    public Outcome<TNext, TReason> Then<TNext>(Func<T, Outcome<TNext, TReason>> next) =>
        Has(out var result, out var reason) ? next(result) : reason;

    /// <summary>One value for both.</summary>
    public TValue Match<TValue>(Func<T, TValue> ofResult, Func<TReason, TValue> ofReason) =>
        Has(out var result, out var reason) ? ofResult(result) : ofReason(reason);
}
