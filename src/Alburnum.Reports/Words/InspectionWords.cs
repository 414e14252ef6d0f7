using Alburnum.Acceptance.Indexed;

namespace Alburnum.Reports.Words;

/// <summary>Severities of inspection in words.</summary>
public static class InspectionWords
{
    /// <summary>A severity in a word.</summary>
    /// <param name="wording">The language.</param>
    /// <param name="severity">The severity.</param>
    public static string Say(this Wording wording, Severity severity)
    {
        ArgumentNullException.ThrowIfNull(wording);
        return severity switch
        {
            Severity.Normal => wording.Say("acceptance.normal"),
            Severity.Tightened => wording.Say("acceptance.tightened"),
            Severity.Reduced => wording.Say("acceptance.reduced"),
            _ => throw new ArgumentOutOfRangeException(nameof(severity), severity, "Not a severity."),
        };
    }
}
