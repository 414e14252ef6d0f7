namespace Alburnum.Records.Marks;

/// <summary>Names of the fields that point something out, as a case file writes them; a page sends the same.</summary>
public static class MarkField
{
    /// <summary>Corners, or points on the rim.</summary>
    public const string Corners = "corners";

    /// <summary>Two ends and a length.</summary>
    public const string Scale = "scale";

    /// <summary>The section's size as measured on the piece.</summary>
    public const string MeasuredSize = "measuredSize";

    /// <summary>Treated places.</summary>
    public const string Treated = "treated";

    /// <summary>Untreated places.</summary>
    public const string Untreated = "untreated";

    /// <summary>Places not to be read.</summary>
    public const string LeaveOut = "leaveOut";

    /// <summary>The heartwood's outline.</summary>
    public const string Heartwood = "heartwood";

    /// <summary>The ring at which the heartwood ends.</summary>
    public const string HeartwoodRing = "heartwoodRing";

    /// <summary>The pith.</summary>
    public const string Pith = "pith";

    /// <summary>Radius of the heartwood about the pith.</summary>
    public const string HeartwoodRadius = "heartwoodRadiusMm";
}
