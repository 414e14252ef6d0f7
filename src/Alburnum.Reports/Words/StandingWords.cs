namespace Alburnum.Reports.Words;

/// <summary>Standings in words.</summary>
public static class StandingWords
{
    /// <summary>A standing in a word or two.</summary>
    /// <param name="wording">The language.</param>
    /// <param name="standing">The standing.</param>
    public static string Say(this Wording wording, Standing standing)
    {
        ArgumentNullException.ThrowIfNull(wording);
        return standing switch
        {
            Standing.Published => wording.Say("standing.published"),
            Standing.WorkedOut => wording.Say("standing.worked-out"),
            Standing.CommonPractice => wording.Say("standing.common-practice"),
            Standing.FromMemory => wording.Say("standing.from-memory"),
            _ => throw new ArgumentOutOfRangeException(nameof(standing), standing, "Not a standing."),
        };
    }
}
