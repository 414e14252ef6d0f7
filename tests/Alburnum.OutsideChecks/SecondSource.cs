namespace Alburnum.OutsideChecks;

/// <summary>Ways to hold a fact against another publication than the one that it was taken from.</summary>
internal static class SecondSource
{
    /// <summary>Refuses a check of a fact against the very publication that the fact names.</summary>
    /// <param name="provenance">Where the fact was taken from.</param>
    /// <param name="publication">The words that tell the second publication apart in a citation.</param>
    public static void IsAnother(Provenance provenance, string publication) =>
        Assert.DoesNotContain(publication, provenance.Citation, StringComparison.OrdinalIgnoreCase);
}
