using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads the <c>confirmed</c> of a rulebook: rows, and analytical zones that rows name, that its user has held against a copy of the document.</summary>
internal static class RowConfirmations
{
    private const string Field = "confirmed";
    private const string WayOfReading = "copy";
    private const int InitialsMax = 7;

    /// <summary>The rows, what is confirmed with the standing and the place that this gives it.</summary>
    /// <param name="root">The file's outermost fields.</param>
    /// <param name="rows">All rows of the rulebook.</param>
    /// <param name="code">The document that the copy is of, and its edition.</param>
    /// <param name="words">The words for how a document was read, and today.</param>
    public static IReadOnlyList<Row> Applied(
        FactRow root,
        IReadOnlyList<Row> rows,
        (string Document, string Edition) code,
        RulebookWords words
    )
    {
        var confirmed = new Dictionary<string, Provenance>(StringComparer.Ordinal);
        foreach (var each in root.OptionalRows(Field))
        {
            var key = each.Text("key");
            var row = rows.FirstOrDefault(row => row.Key == key);
            var zone = row is null ? rows.Where(named => named.ZoneKey == key).Select(ZoneOf).FirstOrDefault() : null;
            // A zone stands in the document that it comes from, which need not be the code.
            var provenance = Read(
                each,
                zone is { Provenance: var source } ? (source.Document, source.Edition) : code,
                words
            );
            if (row is null && zone is null)
                each.Refuse("key", key, "the key of a row, or of an analytical zone");
            else if (row?.Demand is UnknownCell)
                each.Refuse(
                    "key",
                    $"{key}, of which nothing is known",
                    "a row of your own of that key, with what the copy says"
                );
            else if (!confirmed.TryAdd(key, provenance))
                each.Refuse("key", key, "each row once");
        }
        return confirmed.Count == 0
            ? rows
            :
            [
                .. rows.Select(row =>
                        confirmed.TryGetValue(row.Key, out var provenance) ? row with { Provenance = provenance } : row
                    )
                    .Select(row => WithZone(row, confirmed)),
            ];
    }

    private static Fact<AnalyticalZone>? ZoneOf(Row row) => (row.Demand as PenetrationDemand)?.Zone;

    private static Row WithZone(Row row, Dictionary<string, Provenance> confirmed) =>
        row is { ZoneKey: { } key, Demand: PenetrationDemand { Zone: { } zone } depth }
        && confirmed.TryGetValue(key, out var provenance)
            ? row with
            {
                Demand = depth with { Zone = new(zone.Value, provenance) },
            }
            : row;

    private static Provenance Read(FactRow row, (string Document, string Edition) code, RulebookWords words)
    {
        var (table, page) = (row.Text("table"), row.OptionalText("page"));
        var edition = row.Text("edition");
        if (ReadCopy.EditionFault(code.Edition, edition) is { } expected)
            row.Refuse("edition", edition, expected);
        var (initials, date) = (row.Text("initials"), row.Text("date"));
        if (initials.Length > InitialsMax)
            row.Refuse("initials", initials, $"at most {InitialsMax} letters");
        if (DateText.Read(date) is not { } readOn)
            row.Refuse("date", date, DateText.Expected);
        else if (words.Today() is var today && readOn > today)
            row.Refuse("date", date, DateText.NotAfter(today));
        return new(
            Standing.Published,
            code.Document,
            edition,
            ReadCopy.Place(table, page),
            $"{words.Sources.Value.InWords(WayOfReading)}, {initials}, {date}"
        );
    }
}
