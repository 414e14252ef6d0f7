namespace Alburnum.Acceptance.Indexed;

/// <summary>Inspection that comes next.</summary>
public enum NextInspection
{
    /// <summary>Normal inspection.</summary>
    Normal,

    /// <summary>Tightened inspection.</summary>
    Tightened,

    /// <summary>Reduced inspection.</summary>
    Reduced,

    /// <summary>None: acceptance has stopped.</summary>
    Stopped,
}
