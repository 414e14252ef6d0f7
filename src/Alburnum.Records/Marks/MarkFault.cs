namespace Alburnum.Records.Marks;

/// <summary>Why a field that points something out cannot be used.</summary>
/// <param name="Field">The field, one of <see cref="MarkField"/>.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Expected">What was expected.</param>
public record MarkFault(string Field, string Found, string Expected)
{
    /// <summary>"1 point", "2 points".</summary>
    internal static string Counted(int points) =>
        FormattableString.Invariant($"{points} point{(points == 1 ? "" : "s")}");

    /// <summary>The fault as a problem of a file, a command line or a page.</summary>
    /// <param name="where">Name of the file or other place.</param>
    /// <param name="nameOf">What the field is called there.</param>
    public InputProblem At(string where, Func<string, string> nameOf)
    {
        ArgumentNullException.ThrowIfNull(nameOf);
        return new(where, 0, "", nameOf(Field), Found, Expected);
    }
}

/// <summary>Points are begun, and more are needed: a page waits for them, a file is refused.</summary>
/// <param name="Field">The field.</param>
/// <param name="Count">How many points there are.</param>
/// <param name="Least">How many it takes.</param>
/// <param name="Expected">What was expected.</param>
public sealed record TooFewPoints(string Field, int Count, int Least, string Expected)
    : MarkFault(Field, Count == 0 ? "nothing" : Counted(Count), Expected);

/// <summary>One of two things that belong together is there: a page waits for the other, a file is refused.</summary>
/// <param name="Field">The field.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Expected">What was expected.</param>
public sealed record HalfGiven(string Field, string Found, string Expected) : MarkFault(Field, Found, Expected);
