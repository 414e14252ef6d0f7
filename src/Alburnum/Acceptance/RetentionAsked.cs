using Alburnum.Penetration;

namespace Alburnum.Acceptance;

/// <summary>A retention that is required of a batch in one analytical zone, with the assays that speak of it.</summary>
/// <param name="KgPerM3">Required loading in the zone, kg/m³. Above 0.</param>
/// <param name="Assays">Assays that are, or may be, of the zone; may be empty.</param>
public sealed record RetentionAsked(double KgPerM3, IReadOnlyList<Assay> Assays)
{
    /// <summary>The zone, as the rulebook names it; null where it is not known.</summary>
    public string? Zone { get; init; }

    /// <summary>Why it is open which assays are of the zone; null where it is not.</summary>
    public ZoneGap? Gap { get; init; }

    /// <summary>Other sets of assays that may be those of the zone instead. The verdict must hold for each.</summary>
    public IReadOnlyList<IReadOnlyList<Assay>> OrElse { get; init; } = [];

    /// <summary>What the assays tell of the content of the zone.</summary>
    public AssaysTell Tell { get; init; }

    /// <summary>Whether a verdict of the assays is one on the zone.</summary>
    internal bool IsSettledBy(Verdict verdict) =>
        Tell switch
        {
            AssaysTell.Content => true,
            AssaysTell.AtLeast => verdict == Verdict.Conforms,
            AssaysTell.AtMost => verdict == Verdict.DoesNotConform,
            _ => false,
        };
}

/// <summary>What assays tell of the content of a zone.</summary>
public enum AssaysTell
{
    /// <summary>What it is.</summary>
    Content,

    /// <summary>That it is no less: they are of the zone, or of a deeper one.</summary>
    AtLeast,

    /// <summary>That it is no more: they are of the zone, or of a shallower one.</summary>
    AtMost,

    /// <summary>Nothing.</summary>
    Nothing,
}

/// <summary>Why it is open which assays are of a zone.</summary>
public enum ZoneGap
{
    /// <summary>Every assay says that it is of another zone.</summary>
    OthersCut,

    /// <summary>No assay that may be of the zone says which zone was cut, and retention is asked for in more than one.</summary>
    NotStated,

    /// <summary>Some assays are of the zone, and others do not say which zone was cut.</summary>
    SomeNotStated,

    /// <summary>In which zone the retention is required is not known, and the assays say which was cut, or another retention is asked for in a zone that is.</summary>
    ZoneNotKnown,
}
