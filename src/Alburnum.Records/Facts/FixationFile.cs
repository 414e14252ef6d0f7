using Alburnum.Facts;
using Alburnum.Impregnation.Fixing;
using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads how fast preservatives fix in wood.</summary>
internal static class FixationFile
{
    /// <summary>The laws of the file.</summary>
    internal static IReadOnlyList<FixationLaw> Read(FactRow root, PreservativeCatalogue preservatives) =>
        [.. root.Rows("laws").Select(row => Law(row, preservatives)).OfType<FixationLaw>()];

    private static FixationLaw? Law(FactRow row, PreservativeCatalogue preservatives)
    {
        var rates = new List<FixationRate>();
        foreach (var rate in row.Rows("rates"))
            rates.Add(
                new(
                    rate.Number(
                        "strengthPercent",
                        Ranges.StrengthPercent with
                        {
                            Low = rates.Count > 0 ? rates[^1].StrengthPercent + 0.01 : Ranges.StrengthPercent.Low,
                        }
                    ),
                    1e13 * rate.Number("per1e13Hours", 1e-6, 1e6),
                    rate.Number("kJPerMol", 1, 500)
                )
            );
        if (rates.Count == 0)
        {
            row.Refuse("rates", "no row", "one strength or more");
            return null;
        }
        var least = row.Number("leastCelsius", Ranges.SolutionCelsius);
        return new()
        {
            Preservative = row.Word("preservative", [.. preservatives.All.Select(each => (each.Key, each.Key))]),
            Counts = row.Text("counts"),
            Wood = row.Text("wood"),
            FirstShare = row.Number("firstShare", 0.01, 0.99),
            FirstHours = row.Number("firstHours", 0.01, 1000),
            FirstCelsius = row.Number("firstCelsius", Ranges.SolutionCelsius),
            FirstKJPerMol = row.Number("firstKJPerMol", 1, 500),
            FirstStrengthPercent = row.Number("firstStrengthPercent", Ranges.StrengthPercent),
            Rates = rates,
            Celsius = Ranges.SolutionCelsius with
            {
                Low = least,
                High = row.Number("mostCelsius", Ranges.SolutionCelsius with { Low = least }),
            },
            Provenance = row.Provenance(),
        };
    }
}
