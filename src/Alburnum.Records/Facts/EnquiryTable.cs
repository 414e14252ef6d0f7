using System.Globalization;
using Alburnum.Requirements;
using Alburnum.Timber;
using CsvHelper;
using CsvHelper.Configuration;

namespace Alburnum.Records.Facts;

/// <summary>Reads archived enquiries from a CSV table; columns as in docs/how-to/compare-editions.md, all but the header optional.</summary>
public static class EnquiryTable
{
    private static readonly string[] Columns =
    [
        "component",
        "species",
        "section",
        "form",
        "use_class",
        "life_years",
        "exposed_heartwood",
        "incised",
        "coated",
        "moisture_percent",
        "stated_class",
        "preservative",
    ];

    /// <summary>Reads every row, or refuses with every problem.</summary>
    /// <param name="path">Path of the table.</param>
    /// <param name="facts">Names of components and species.</param>
    /// <exception cref="InputRefusedException">The table is missing or a cell cannot be read.</exception>
    public static IReadOnlyList<Enquiry> Read(string path, FactLibrary facts)
    {
        if (!File.Exists(path))
            throw new InputRefusedException(
                new InputProblem(path, 0, "", "", "no such file", "a CSV table of enquiries")
            );
        using var text = new StringReader(FileTrouble.Refusing(path, "a table in CSV", () => File.ReadAllText(path)));
        return Read(text, path, facts);
    }

    /// <summary>As <see cref="Read(string, FactLibrary)"/>, from an open text.</summary>
    /// <param name="text">The table.</param>
    /// <param name="file">Name for messages.</param>
    /// <param name="facts">Names of components and species.</param>
    public static IReadOnlyList<Enquiry> Read(TextReader text, string file, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var problems = new List<InputProblem>();
        var enquiries = new List<Enquiry>();
        using var csv = new CsvReader(
            text,
            new CsvConfiguration(CultureInfo.InvariantCulture) { TrimOptions = TrimOptions.Trim, BadDataFound = null }
        );
        if (!csv.Read() || !csv.ReadHeader())
            throw new InputRefusedException(
                new InputProblem(file, 1, "", "", "an empty table", string.Join(", ", Columns))
            );
        foreach (var column in csv.HeaderRecord!.Except(Columns, StringComparer.Ordinal))
            problems.Add(new InputProblem(file, 1, "", column, "an unknown column", string.Join(", ", Columns)));

        var row = new EnquiryCells(csv, file, problems, facts);
        while (csv.Read())
            enquiries.Add(row.Read());
        return problems.Count == 0 ? enquiries : throw new InputRefusedException(problems);
    }

    /// <summary>The form that a section has, for a message to those who said another.</summary>
    public static string FormOf(Section section) =>
        $"{(section is RoundSection ? "round" : "sawn")}, as the section {section?.Label} is";

    // Names repeat from row to row, so each is looked up once.
    private sealed class EnquiryCells(CsvReader csv, string file, List<InputProblem> problems, FactLibrary facts)
    {
        private readonly Dictionary<string, Species?> species = new(StringComparer.Ordinal);
        private readonly Dictionary<string, Component?> components = new(StringComparer.Ordinal);
        private readonly Dictionary<string, Section?> sections = new(StringComparer.Ordinal);

        public Enquiry Read()
        {
            var enquiry = Cells();
            if (enquiry.FormContradictsSection)
                Refuse<TimberForm?>("form", Cell("form"), FormOf(enquiry.Section!));
            return enquiry;
        }

        private Enquiry Cells() =>
            new()
            {
                Component = Named(
                    "component",
                    components,
                    name => facts.Components.Find(name) is Found<Component> found ? found.Value : null,
                    "a known component"
                ),
                Species = Named(
                    "species",
                    species,
                    name => facts.Species.Find(name) is Found<Species> found ? found.Value : null,
                    "a species of the catalogue"
                ),
                Section = Named(
                    "section",
                    sections,
                    text => SectionText.TryParse(text, out var section) ? section : null,
                    SectionText.Expected
                ),
                Form = Cell("form") switch
                {
                    "" => null,
                    "sawn" => TimberForm.Sawn,
                    "round" => TimberForm.Round,
                    var other => Refuse<TimberForm?>("form", other, "sawn or round"),
                },
                UseClasses = UseClasses(),
                Life = Number("life_years", 1, 200) is { } years ? new DesiredServiceLife((int)years) : null,
                HasExposedHeartwood = YesNo("exposed_heartwood"),
                IsIncised = YesNo("incised"),
                IsCoated = YesNo("coated"),
                MoisturePercent = Number("moisture_percent", 0, 250),
                StatedClass = Cell("stated_class") is { Length: > 0 } stated ? stated : null,
                Preservative = Cell("preservative") is { Length: > 0 } code ? code : null,
            };

        private string Cell(string column) => csv.TryGetField<string>(column, out var text) ? text ?? "" : "";

        private T? Named<T>(string column, Dictionary<string, T?> known, Func<string, T?> find, string expected)
            where T : class
        {
            var name = Cell(column);
            if (name.Length == 0)
                return null;
            if (!known.TryGetValue(name, out var value))
                known[name] = value = find(name);
            return value ?? Refuse<T?>(column, name, expected);
        }

        private IReadOnlyList<UseClass> UseClasses()
        {
            var text = Cell("use_class");
            var classes = UseClassWords.Parse(text);
            return classes.Count > 0 || text.Length == 0
                ? classes
                : Refuse(("use_class"), text, "1, 2, 3, 3.1, 3.2, 4 or 5", classes);
        }

        private double? Number(string column, double low, double high)
        {
            var text = Cell(column);
            if (text.Length == 0)
                return null;
            if (
                double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
                && value >= low
                && value <= high
            )
                return value;
            return Refuse<double?>(column, text, FormattableString.Invariant($"{low} to {high}"));
        }

        private bool? YesNo(string column) =>
            Cell(column) switch
            {
                "" => null,
                "yes" => true,
                "no" => false,
                var other => Refuse<bool?>(column, other, "yes or no"),
            };

        private T? Refuse<T>(string column, string found, string expected) =>
            Refuse<T?>(column, found, expected, default);

        private T Refuse<T>(string column, string found, string expected, T instead)
        {
            problems.Add(new InputProblem(file, csv.Parser.RawRow, "", column, found, expected));
            return instead;
        }
    }
}
