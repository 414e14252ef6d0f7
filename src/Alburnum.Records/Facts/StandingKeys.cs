namespace Alburnum.Records.Facts;

/// <summary>How a standing is written in files.</summary>
public static class StandingKeys
{
    /// <summary>"published", "worked out", "common practice" or "from memory".</summary>
    public static string Key(this Standing standing) =>
        standing switch
        {
            Standing.Published => "published",
            Standing.WorkedOut => "worked out",
            Standing.CommonPractice => "common practice",
            Standing.FromMemory => "from memory",
            _ => throw new ArgumentOutOfRangeException(nameof(standing), standing, "Not a standing."),
        };
}
