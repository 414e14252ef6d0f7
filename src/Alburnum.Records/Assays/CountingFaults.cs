using Alburnum.Assaying;

namespace Alburnum.Records.Assays;

/// <summary>What was expected of figures that give no retention, for messages.</summary>
public static class CountingFaults
{
    /// <summary>In words.</summary>
    /// <param name="counting">What came of counting them: a fault, or a content that lacks density, its uncertainty or depth of the zone.</param>
    /// <param name="basis">What they were to count as.</param>
    public static string Expected(this Counting counting, AssayBasis basis)
    {
        ArgumentNullException.ThrowIfNull(counting);
        ArgumentNullException.ThrowIfNull(basis);
        return counting switch
        {
            NotCounted not => OfFault(not.Fault, basis),
            _ when basis.Density is null =>
                $"{AssayFields.ZoneDensity.Key} in the case: the species' density is not known",
            CountedRetention { IsVolumeUncertaintyKnown: false } =>
                $"{AssayFields.ZoneDensity.Key} in the case with {StatedUncertainty.Missing}",
            _ => "zoneDepthMm in the case, to turn g/m² into kg/m³",
        };
    }

    private static string OfFault(CountingFault fault, AssayBasis basis)
    {
        var counted = string.Join(
            ", ",
            (basis.Product?.Parts.Select(part => part.Compound) ?? basis.CountedAs).Select(each => each.Name)
        );
        return fault switch
        {
            CountingFault.UnitsDiffer => "one unit for all substances of a sample, or mg/kg and % m/m",
            CountingFault.CountedTwice => "each substance of a sample once",
            CountingFault.NothingToCountAs =>
                $"{AssayFields.CountedAs.Key} or {AssayFields.Product.Key}: what several substances count as",
            CountingFault.SharesNothing =>
                $"a substance that shares an element with what is counted, or is counted itself: {counted}",
            CountingFault.FitsSeveral =>
                $"a substance that shares one element with one alone of what is counted: {counted}",
            CountingFault.NotMeasured => $"a figure for each substance that is counted: {counted}",
            _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "Not a fault."),
        };
    }
}
