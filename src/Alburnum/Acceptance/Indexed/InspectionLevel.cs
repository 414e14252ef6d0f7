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
