using System.Reflection;
using System.Text.RegularExpressions;
using Xunit.v3;

namespace Alburnum.OutsideChecks;

/// <summary>Ways to hold a fact against another publication than the one that it was taken from.</summary>
internal static partial class SecondSource
{
    /// <summary>
    /// Refuses a check of a fact against the publication that the fact names, and against another copy of the standard that
    /// the fact repeats.
    /// </summary>
    /// <param name="row">Where the fact was taken from.</param>
    /// <param name="publication">The words that tell the second publication apart in a citation.</param>
    public static void IsAnother(Provenance row, string publication)
    {
        IsAnotherCopy(row, publication);
        var test = (IXunitTest)TestContext.Current.Test!;
        var sources = test.TestMethod.Method.GetCustomAttributes<OutsideSourceAttribute>();
        Assert.Empty(StandardsRepeated(row, sources));
        TestContext.Current.KeyValueStorage[test.UniqueID] = publication;
    }

    /// <summary>Refuses a check of a fact against the very text that the fact names; another copy of its standard will do.</summary>
    /// <param name="row">Where the fact was taken from.</param>
    /// <param name="publication">The words that tell the second publication apart in a citation.</param>
    public static void IsAnotherCopy(Provenance row, string publication) =>
        Assert.DoesNotContain(publication, row.Citation, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a check of this test has passed <see cref="IsAnother"/>.</summary>
    /// <param name="test">The test that has run.</param>
    public static bool WasShown(IXunitTest test) => TestContext.Current.KeyValueStorage.ContainsKey(test.UniqueID);

    /// <summary>The standards, by number without part or year, that a fact and the sources of its check both quote.</summary>
    /// <param name="row">Where the fact was taken from.</param>
    /// <param name="sources">What the check names.</param>
    public static IEnumerable<string> StandardsRepeated(Provenance row, IEnumerable<OutsideSourceAttribute> sources) =>
        Standards(row.Citation)
            .Intersect(sources.SelectMany(source => Standards($"{source.Document}, {source.Place}")));

    private static IEnumerable<string> Standards(string citation) =>
        Numbered().Matches(citation).Select(match => match.Value);

    [GeneratedRegex(@"\b(?:EN|BS|ISO|NEN|DIN|AS|NZS|AWPA) \w*\d+", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Numbered();
}
