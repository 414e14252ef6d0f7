using System.Text;
using Alburnum.Facts;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using CsCheck;

namespace Alburnum.Records.Tests.Facts;

public sealed class EnquiryFieldsTests
{
    private const string Start = "do not edit by hand -->\n";
    private const string End = "<!-- end -->";

    // A few things that may be written in each field, and one that may not.
    private static readonly (AskedField Field, string[] Good, string Bad)[] Written =
    [
        (EnquiryFields.Component, ["fence post", "deck joists"], "flying buttress"),
        (EnquiryFields.Species, ["Scots pine", "Picea abies"], "moon pine"),
        (EnquiryFields.Section, ["100 x 75", "round 120 mm", "half round 120", "quartered 150"], "100"),
        (EnquiryFields.Form, ["sawn", "round"], "bent"),
        (EnquiryFields.UseClass, ["1", "3", "3c", "3u", "3.2", "UC4", "use class 4", "3C"], "4u"),
        (ExposureFields.SaltWater, ["no"], "never"),
        (ExposureFields.GroundContact, ["yes", "no"], "touch"),
        (ExposureFields.Weather, ["yes", "no"], "rain"),
        (ExposureFields.WaterStays, ["yes", "no"], "2"),
        (ExposureFields.Damp, ["yes", "no"], "wet"),
        (EnquiryFields.Life, ["15", "200", "30 years"], "15.5"),
        (EnquiryFields.ExposedHeartwood, ["yes", "no"], "perhaps"),
        (EnquiryFields.Incised, ["yes", "no"], "1"),
        (ExposureFields.Coated, ["yes", "no"], "true"),
        (EnquiryFields.Moisture, ["0", "24.5", "250 %"], "251"),
        (EnquiryFields.StatedClass, ["NP3"], ""),
        (EnquiryFields.Preservative, ["CA-C", "boron"], "moonshine"),
        (EnquiryFields.CriticalValue, ["8 kg/m3", "0.5 pcf", "120 g/m2"], "8"),
        (ExposureFields.Insects, ["none", "None", "termites", "House longhorn and termites"], "ants"),
    ];

    private static readonly Gen<Dictionary<AskedField, string>> Anything = Gen.Int[0, 5]
        .Array[Written.Length]
        .Select(picks =>
            Written
                .Zip(picks)
                .Where(pair => pair.Second > 0)
                .ToDictionary(
                    pair => pair.First.Field,
                    pair =>
                        pair.Second == 5 && pair.First.Bad.Length > 0
                            ? pair.First.Bad
                            : pair.First.Good[pair.Second % pair.First.Good.Length]
                )
        );

    [Fact]
    public void Every_field_has_names_of_its_own() =>
        Assert.All(
            (Func<AskedField, string>[])[field => field.Key, field => field.Option, field => field.Column],
            name => Assert.Equal(EnquiryFields.All.Count, EnquiryFields.All.Select(name).Distinct().Count())
        );

    [Fact]
    public void The_same_words_mean_the_same_as_options_in_a_file_and_in_a_table() =>
        Anything.Sample(
            words =>
            {
                var (asOptions, refused) = AsOptions(words);
                Assert.Equal((Said(asOptions), refused), InFile(words));
                Assert.Equal((Said(asOptions), refused), InTable(words, asOptions));
            },
            iter: 300
        );

    [Fact]
    public void What_may_not_be_written_is_refused_with_what_may() =>
        Assert.All(
            Written.Where(each => each.Bad.Length > 0),
            each =>
            {
                var fields = new Words(new() { [each.Field] = each.Bad });
                EnquiryReader.Read(fields, ShippedData.Library);
                var (field, expected) = Assert.Single(fields.Refused);
                Assert.Same(each.Field, field);
                Assert.StartsWith(each.Field.Expected, expected, StringComparison.Ordinal);
            }
        );

    [Fact]
    public void The_table_in_the_docs_is_the_list_in_the_code()
    {
        var page = File.ReadAllText(Repository.At("docs", "how-to", "find-a-requirement.md"));
        var from = page.IndexOf(Start, StringComparison.Ordinal) + Start.Length;
        var to = page.IndexOf(End, StringComparison.Ordinal);
        if (Environment.GetEnvironmentVariable("ALBURNUM_WRITE_ENQUIRY_FIELDS") is { Length: > 0 } path)
            File.WriteAllText(path, page[..from] + DocsTable() + page[to..]);

        Assert.Equal(DocsTable(), page[from..to]);
    }

    private static string DocsTable()
    {
        var table = new StringBuilder();
        table.Append(
            "| option | in `case.yaml` | in a table | what it is | examples | if left out |\n|---|---|---|---|---|---|\n"
        );
        foreach (var field in EnquiryFields.All)
            table.Append(
                $"| `{field.Option}` | `{field.Key}` | `{field.Column}` | {field.Help} | {field.Examples} | {field.LeftOut} |\n"
            );
        return table.ToString();
    }

    private static (Enquiry Enquiry, string Refused) AsOptions(Dictionary<AskedField, string> words)
    {
        var fields = new Words(words);
        var enquiry = EnquiryReader.Read(fields, ShippedData.Library);
        return (enquiry, string.Join(", ", fields.Refused.Select(each => each.Field.Key).Order()));
    }

    private static (string Said, string Refused) InFile(Dictionary<AskedField, string> words)
    {
        var problems = new List<InputProblem>();
        var lines = words.Select(each => $"{each.Key.Key}: \"{each.Value}\"").Append("other: x");
        Enquiry? read = null;
        FactFile.ReadText(
            string.Join('\n', lines),
            "case.yaml",
            problems,
            root =>
            {
                root.Text("other");
                read = EnquiryReader.Read(new RowFields(root), ShippedData.Library);
            }
        );
        return (Said(read!), string.Join(", ", problems.Select(problem => problem.Field).Order()));
    }

    private static (string Said, string Refused) InTable(Dictionary<AskedField, string> words, Enquiry asOptions)
    {
        // A row without a word is no row.
        if (words.Count == 0)
            return (Said(new Enquiry()), "");
        var names = words.Keys.ToDictionary(field => field.Column, field => field.Key);
        var table = string.Join(
            '\n',
            string.Join(',', words.Keys.Select(field => field.Column).Append("form").Distinct()),
            string.Join(',', words.Values.Append(words.ContainsKey(EnquiryFields.Form) ? null : "").OfType<string>())
        );
        try
        {
            var read = EnquiryTable.Read(
                Table.Read("archive.csv", () => new MemoryStream(Encoding.UTF8.GetBytes(table)), sheet: null),
                ShippedData.Library
            );
            return (Said(Assert.Single(read)), "");
        }
        catch (InputRefusedException refused)
        {
            return (
                Said(asOptions),
                string.Join(", ", refused.Problems.Select(problem => names[problem.Field]).Order())
            );
        }
    }

    private static string Said(Enquiry enquiry) =>
        $"{enquiry with { UseClasses = [] }} {string.Join('/', enquiry.UseClasses)}";

    private sealed class Words(Dictionary<AskedField, string> words) : IFields
    {
        public List<(AskedField Field, string Expected)> Refused { get; } = [];

        public string? Text(AskedField field) => words.GetValueOrDefault(field);

        public void Refuse(AskedField field, string found, string expected) => Refused.Add((field, expected));
    }
}
