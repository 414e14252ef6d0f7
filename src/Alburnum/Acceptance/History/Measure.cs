namespace Alburnum.Acceptance.History;

/// <summary>What kind of quantity a measure is: which demand it can be held against goes by this.</summary>
public enum MeasureKind
{
    /// <summary>A depth, mm.</summary>
    Depth,

    /// <summary>Product in a volume of wood, kg/m³.</summary>
    Retention,

    /// <summary>Solution taken up by a volume of wood, l/m³.</summary>
    Uptake,

    /// <summary>Product in the solution, %.</summary>
    Strength,
}

/// <summary>A measure of a charge or of a piece: what it is, how it is called and in which unit it is given.</summary>
/// <param name="Kind">What kind of quantity it is.</param>
/// <param name="Name">Its name among measures, for instance "mean depth"; people read it in their own language.</param>
/// <param name="Unit">Unit, for instance "mm".</param>
public sealed record Measure(MeasureKind Kind, string Name, string Unit);
