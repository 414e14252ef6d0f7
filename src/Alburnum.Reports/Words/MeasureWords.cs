using Alburnum.Acceptance.History;

namespace Alburnum.Reports.Words;

/// <summary>Measures of charges and pieces in words.</summary>
public static class MeasureWords
{
    /// <summary>A measure in a word or two.</summary>
    /// <param name="wording">The language.</param>
    /// <param name="measure">The measure.</param>
    public static string Say(this Wording wording, Measure measure)
    {
        ArgumentNullException.ThrowIfNull(wording);
        ArgumentNullException.ThrowIfNull(measure);
        return wording.Say($"measures.{measure.Name.Replace(' ', '-')}");
    }
}
