namespace Alburnum.Requirements;

/// <summary>What a rulebook says to an enquiry, and why.</summary>
/// <param name="Trace">Why.</param>
public abstract record Answer(Trace Trace);

/// <summary>The code demands this.</summary>
/// <param name="Requirement">The requirement.</param>
/// <param name="Trace">Why.</param>
public sealed record Required(Requirement Requirement, Trace Trace) : Answer(Trace);

/// <summary>The code does not allow it.</summary>
/// <param name="Reason">Why, one sentence.</param>
/// <param name="Trace">Why, in full.</param>
public sealed record NotPermitted(string Reason, Trace Trace) : Answer(Trace);

/// <summary>The rulebook has no answer: the code itself must be consulted, or more must be known. Never a guess.</summary>
/// <param name="Reason">Why, one sentence.</param>
/// <param name="Missing">What would have to be known of the piece; empty where the rulebook itself is silent.</param>
/// <param name="Trace">Why, in full.</param>
public sealed record NotCovered(string Reason, IReadOnlyList<Field> Missing, Trace Trace) : Answer(Trace);
