namespace Alburnum.Measures;

/// <summary>How a standard uncertainty was evaluated (JCGM 100:2008, 4.2 and 4.3).</summary>
public enum EvaluationType
{
    /// <summary>From the scatter of observations.</summary>
    A,

    /// <summary>By any other means: stated limits, experience, a table.</summary>
    B,
}

/// <summary>One cause of uncertainty: how large it is taken to be, how that was evaluated, and on whose word.</summary>
/// <param name="Key">Its name in data, for instance "outline".</param>
/// <param name="Share">Standard uncertainty as a share of something; null where it is found anew for every measurement.</param>
/// <param name="OfWhat">Name in data of what it is a share of, or of what it is found from.</param>
/// <param name="Type">How it was evaluated.</param>
/// <param name="Provenance">Who says so, and how far that may be relied on.</param>
public sealed record UncertaintyCause(
    string Key,
    double? Share,
    string OfWhat,
    EvaluationType Type,
    Provenance Provenance
)
{
    /// <summary>The figures that it is found from, by the names of their places in the words for its size, in the units said there; empty where there are none.</summary>
    public IReadOnlyList<(string Name, double Value)> Figures { get; init; } = [];

    /// <summary>The parts of a whole that it is found from, likewise: 4 is a quarter.</summary>
    public IReadOnlyList<(string Name, int Part)> Parts { get; init; } = [];
}

/// <summary>What one cause adds to one result.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Contribution">Standard uncertainty of the result from this cause alone, in the result's unit. 0 or more.</param>
public sealed record UncertaintyComponent(UncertaintyCause Cause, double Contribution);

/// <summary>Everything that makes one result uncertain, cause by cause (JCGM 100:2008, 5.1). Causes are taken to be independent.</summary>
/// <param name="Components">In the order in which they are listed.</param>
public sealed record UncertaintyBudget(IReadOnlyList<UncertaintyComponent> Components)
{
    /// <summary>Combined standard uncertainty, in the result's unit.</summary>
    public double Combined => Combine([.. Components.Select(component => component.Contribution)]);

    /// <summary>Standard uncertainty of what several independent causes bring about together: root of the sum of squares.</summary>
    public static double Combine(params ReadOnlySpan<double> standardUncertainties)
    {
        double squares = 0;
        foreach (var u in standardUncertainties)
            squares += u * u;
        return Math.Sqrt(squares);
    }

    /// <summary>What is left of a combined standard uncertainty when a part contained in it is taken out; 0 where nothing is.</summary>
    public static double Without(double combined, double part) =>
        Math.Sqrt(Math.Max(0, (combined * combined) - (part * part)));
}
