using Alburnum.Assaying;

namespace Alburnum.Records.Assays;

/// <summary>What was expected of figures that cannot be counted, for messages.</summary>
public static class CountingFaults
{
    /// <summary>In words.</summary>
    /// <param name="fault">Why they cannot be counted.</param>
    /// <param name="basis">What they were to count as.</param>
    public static string Expected(this CountingFault fault, AssayBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        var counted = string.Join(
            ", ",
            (basis.Product?.Parts.Select(part => part.Compound) ?? basis.CountedAs).Select(each => each.Formula)
        );
        return fault switch
        {
            CountingFault.UnitsDiffer => "one unit for all substances of a sample",
            CountingFault.CountedTwice => "each substance of a sample once",
            CountingFault.NothingToCountAs =>
                $"{AssayFields.CountedAs.Key} or {AssayFields.Product.Key}: what several substances count as",
            CountingFault.SharesNothing => $"a substance that shares one element with what is counted: {counted}",
            CountingFault.NotMeasured => $"a figure for each substance that is counted: {counted}",
            _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "Not a fault."),
        };
    }
}
