namespace Alburnum.Acceptance.Indexed;

/// <summary>How large a sample a lot calls for: special levels cut little, general level II is the usual one.</summary>
public enum InspectionLevel
{
    /// <summary>Special level S-1.</summary>
    S1,

    /// <summary>Special level S-2.</summary>
    S2,

    /// <summary>Special level S-3.</summary>
    S3,

    /// <summary>Special level S-4.</summary>
    S4,

    /// <summary>General level I.</summary>
    I,

    /// <summary>General level II.</summary>
    II,

    /// <summary>General level III.</summary>
    III,
}

/// <summary>How strictly lots are inspected at present.</summary>
public enum Severity
{
    /// <summary>Normal inspection.</summary>
    Normal,

    /// <summary>Tightened inspection, after rejections.</summary>
    Tightened,

    /// <summary>Reduced inspection, after a run of good lots.</summary>
    Reduced,
}

/// <summary>Names of levels and severities, as tables and options hold them.</summary>
public static class InspectionWords
{
    /// <summary>"S-1" to "S-4", "I", "II" or "III".</summary>
    public static string InWords(this InspectionLevel level) =>
        level switch
        {
            InspectionLevel.S1 => "S-1",
            InspectionLevel.S2 => "S-2",
            InspectionLevel.S3 => "S-3",
            InspectionLevel.S4 => "S-4",
            InspectionLevel.I => "I",
            InspectionLevel.II => "II",
            InspectionLevel.III => "III",
            _ => throw new ArgumentOutOfRangeException(nameof(level), level, "Not an inspection level."),
        };

    /// <summary>"normal", "tightened" or "reduced".</summary>
    public static string InWords(this Severity severity) =>
        severity switch
        {
            Severity.Normal => "normal",
            Severity.Tightened => "tightened",
            Severity.Reduced => "reduced",
            _ => throw new ArgumentOutOfRangeException(nameof(severity), severity, "Not a severity."),
        };

    /// <summary>Reads a level as people write it; null where it is none.</summary>
    public static InspectionLevel? ReadLevel(string text) =>
        Enum.GetValues<InspectionLevel>()
            .Cast<InspectionLevel?>()
            .FirstOrDefault(level => Same(level!.Value.InWords(), text) || Same(level.Value.ToString(), text));

    /// <summary>Reads a severity as people write it; null where it is none.</summary>
    public static Severity? ReadSeverity(string text) =>
        Enum.GetValues<Severity>().Cast<Severity?>().FirstOrDefault(severity => Same(severity!.Value.InWords(), text));

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
