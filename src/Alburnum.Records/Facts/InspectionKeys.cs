using Alburnum.Acceptance.Indexed;

namespace Alburnum.Records.Facts;

/// <summary>How levels and severities of inspection are written in tables and options.</summary>
public static class InspectionKeys
{
    /// <summary>"S-1" to "S-4", "I", "II" or "III".</summary>
    public static string Key(this InspectionLevel level) =>
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
    public static string Key(this Severity severity) =>
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
            .FirstOrDefault(level => Same(level!.Value.Key(), text) || Same(level.Value.ToString(), text));

    /// <summary>Reads a severity as people write it; null where it is none.</summary>
    public static Severity? ReadSeverity(string text) =>
        Enum.GetValues<Severity>().Cast<Severity?>().FirstOrDefault(severity => Same(severity!.Value.Key(), text));

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
