namespace Alburnum.DrawnSections;

/// <summary>What was put on a section on which no preservative shows.</summary>
public enum SapwoodKind
{
    /// <summary>Nothing: plain wood, its heartwood in sight.</summary>
    Bare,

    /// <summary>An indicator of a preservative, which finds none.</summary>
    IndicatorOnly,

    /// <summary>A reagent that colours heartwood.</summary>
    HeartwoodReagent,

    /// <summary>Nothing, on wood that is sapwood throughout, stained or not.</summary>
    AllSapwood,

    /// <summary>An indicator that finds none, on wood that is sapwood throughout, stained or not.</summary>
    AllSapwoodIndicator,
}
