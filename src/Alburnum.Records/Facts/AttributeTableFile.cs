using System.Globalization;
using Alburnum.Acceptance.Indexed;

namespace Alburnum.Records.Facts;

/// <summary>A standard's sampling plans with its switching rules.</summary>
/// <param name="Tables">The tables.</param>
/// <param name="Switching">The switching rules, with a standing of their own.</param>
public sealed record SamplingStandard(AttributeTables Tables, SwitchingRules Switching);

/// <summary>Reads a file of attribute sampling tables, for instance <c>sampling/mil-std-105e.yaml</c>.</summary>
internal static class AttributeTableFile
{
    private const string UsualFile = "sampling/mil-std-105e.yaml";

    /// <summary>Reads the standard that travels with the program.</summary>
    internal static SamplingStandard Load(string dataFolder, Lazy<SourceRegister> sources)
    {
        var path = Path.Combine(dataFolder, UsualFile);
        return Read(PlainFile.Text(path, UsualFile, $"a file in {dataFolder}"), UsualFile, sources);
    }

    /// <summary>Reads tables from text.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="name">Name for messages.</param>
    /// <param name="sources">Sources that its rows may name.</param>
    /// <exception cref="InputRefusedException">Anything is wrong; carries every problem found.</exception>
    internal static SamplingStandard Read(string text, string name, Lazy<SourceRegister> sources)
    {
        var problems = new List<InputProblem>();
        SamplingStandard? read = null;
        FactFile.ReadText(
            text,
            name,
            problems,
            root =>
            {
                var source = root.Provenance();
                var aqls = root.Texts("aqlsPercent").Select(aql => Aql(root, aql)).ToList();
                var lots = LotSizes(root);
                var plans = Enum.GetValues<Severity>()
                    .ToDictionary(
                        severity => severity,
                        severity => (IReadOnlyList<PlanRow>)Plans(root, severity.Key(), aqls.Count)
                    );
                var switching = SwitchingRules(root);
                if (problems.Count > 0 || switching is null)
                    return;
                try
                {
                    read = new(new AttributeTables(source, lots, aqls, plans), switching);
                }
                catch (FormatException broken)
                {
                    problems.Add(
                        new InputProblem(name, 0, "", "", broken.Message, "tables in which every arrow leads to a plan")
                    );
                }
            },
            sources
        );
        return problems.Count == 0 && read is not null ? read : throw new InputRefusedException(problems);
    }

    private static double Aql(FactRow root, string text)
    {
        if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var aql) && aql > 0)
            return aql;
        root.Refuse("aqlsPercent", text, "numbers above 0");
        return 1;
    }

    private static List<LotSizeRow> LotSizes(FactRow root)
    {
        List<LotSizeRow> rows = [];
        foreach (var row in root.Rows("codeLetters"))
        {
            _ = row.Provenance();
            var letters = row.OptionalRow("letters");
            rows.Add(
                new(
                    row.Whole("from", 1, int.MaxValue),
                    row.Has("to") ? row.Whole("to", 1, int.MaxValue) : null,
                    Enum.GetValues<InspectionLevel>()
                        .ToDictionary(level => level, level => letters is null ? 'A' : Letter(letters, level.Key()))
                )
            );
        }
        return rows;
    }

    private static List<PlanRow> Plans(FactRow root, string field, int columns)
    {
        List<PlanRow> rows = [];
        foreach (var row in root.Rows(field))
        {
            _ = row.Provenance();
            var cells = row.Text("cells").Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (cells.Length != columns)
                row.Refuse("cells", $"{cells.Length} cells", $"{columns}, one for each AQL");
            rows.Add(
                new(
                    Letter(row, "letter"),
                    row.Whole("sampleSize", 1, 1_000_000),
                    [.. cells.Select(cell => Cell(row, cell))]
                )
            );
        }
        return rows;
    }

    private static PlanCell Cell(FactRow row, string text)
    {
        if (PlanCell.Read(text) is { } cell)
            return cell;
        row.Refuse("cells", text, "Ac/Re such as 2/3, v, ^ or -");
        return new NoPlan();
    }

    private static char Letter(FactRow row, string field)
    {
        var text = row.Text(field);
        if (text.Length == 1 && char.IsAsciiLetterUpper(text[0]))
            return text[0];
        row.Refuse(field, text, "one capital letter");
        return 'A';
    }

    private static SwitchingRules? SwitchingRules(FactRow root)
    {
        var row = root.OptionalRow("switching");
        if (row is null)
        {
            root.Refuse("switching", "nothing", "the switching rules");
            return null;
        }
        _ = row.OptionalText("check");
        return new(
            row.Whole("rejectedToTighten", 1, 100),
            row.Whole("watchedToTighten", 1, 100),
            row.Whole("acceptedToRelax", 1, 100),
            row.Whole("acceptedToReduce", 1, 100),
            row.Has("tightenedToStop") ? row.Whole("tightenedToStop", 1, 100) : null,
            row.Has("rejectedToStop") ? row.Whole("rejectedToStop", 1, 100) : null,
            row.Provenance()
        );
    }
}
