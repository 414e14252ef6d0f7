using Alburnum.Penetration;

namespace Alburnum.Records.Store;

/// <summary>How a verdict is kept.</summary>
public static class VerdictKeys
{
    /// <summary>"conforms", "does not conform" or "undecided".</summary>
    public static string Key(this Verdict verdict) =>
        verdict switch
        {
            Verdict.Conforms => "conforms",
            Verdict.DoesNotConform => "does not conform",
            Verdict.Undecided => "undecided",
            _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
        };

    /// <summary>The verdict that was kept.</summary>
    /// <exception cref="FormatException">None is kept so.</exception>
    internal static Verdict Read(string key)
    {
        foreach (var verdict in Enum.GetValues<Verdict>())
            if (verdict.Key() == key)
                return verdict;
        throw new FormatException($"\"{key}\" is not a verdict.");
    }
}
