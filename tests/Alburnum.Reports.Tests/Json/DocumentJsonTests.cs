using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Tests.Shared;

namespace Alburnum.Reports.Tests.Json;

public sealed partial class DocumentJsonTests
{
    [Fact]
    public void A_document_read_back_writes_the_same_text()
    {
        var json = DocumentJson.Write(SampleDocument.Conforming);

        Assert.Equal(json, DocumentJson.Write(DocumentJson.Read<CaseDocument>(json)));
    }

    [Fact]
    public void What_was_expected_comes_back_with_its_figures()
    {
        var read = DocumentJson.Read<CaseDocument>(DocumentJson.Write(SampleDocument.Conforming));

        Assert.Equal(SampleDocument.Conforming.Prediction!.MeanDepthMm, read.Prediction!.MeanDepthMm);
        Assert.Equal(new Estimate(9, 0.4), read.Prediction.MeasuredMeanDepthMm);
        Assert.Equal(SampleDocument.Conforming.Charge, read.Charge);
        Assert.Equal(SampleDocument.Conforming.Remarks, read.Remarks);
    }

    [Fact]
    public void A_document_from_before_there_were_predictions_is_read_without_one()
    {
        var json = JsonNode.Parse(DocumentJson.Write(SampleDocument.Conforming))!.AsObject();
        foreach (var field in (string[])["prediction", "charge", "remarks"])
            Assert.True(json.Remove(field));

        var read = DocumentJson.Read<CaseDocument>(json.ToJsonString());

        Assert.Equal((null, null, null), (read.Prediction, read.Charge, read.Remarks));
    }

    [Fact]
    public void What_is_not_known_is_null_and_not_left_out()
    {
        var without = SampleDocument.Conforming with { Prediction = null, Charge = null, Remarks = null };

        using var json = JsonDocument.Parse(DocumentJson.Write(without));

        foreach (var field in (string[])["prediction", "charge", "remarks"])
            Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty(field).ValueKind);
    }

    [Fact]
    public void Names_are_in_snake_case_with_their_unit()
    {
        using var json = JsonDocument.Parse(DocumentJson.Write(SampleDocument.Conforming));

        var reading = json.RootElement.GetProperty("pieces")[0].GetProperty("reading");
        Assert.Equal(9, reading.GetProperty("depth").GetProperty("min_mm").GetDouble());
        Assert.Equal(1, reading.GetProperty("faces")[0].GetProperty("step_mm").GetDouble());
        Assert.Equal(8, json.RootElement.GetProperty("requirement").GetProperty("retention_kg_per_m3").GetDouble());
    }

    [Fact]
    public void Every_field_is_described_in_the_docs()
    {
        // Readings have a page of their own.
        var page =
            File.ReadAllText(Repository.At("docs", "json.md"))
            + File.ReadAllText(Repository.At("docs", "json", "findings.md"))
            + File.ReadAllText(Repository.At("docs", "json", "measure.md"));
        var described = Code()
            .Matches(page)
            .Select(match => match.Groups["name"].Value)
            .ToHashSet(StringComparer.Ordinal);

        Assert.Empty(
            FieldNames(DocumentJson.Write(SampleDocument.Conforming)).Except(described, StringComparer.Ordinal)
        );
    }

    private static IEnumerable<string> FieldNames(string json)
    {
        using var document = JsonDocument.Parse(json);
        return [.. Names(document.RootElement).Distinct(StringComparer.Ordinal)];
    }

    private static IEnumerable<string> Names(JsonElement element) =>
        element.ValueKind switch
        {
            JsonValueKind.Object => element
                .EnumerateObject()
                .SelectMany(field => Names(field.Value).Prepend(field.Name)),
            JsonValueKind.Array => element.EnumerateArray().SelectMany(Names),
            _ => [],
        };

    [GeneratedRegex("`(?<name>[a-z0-9_]+)`", RegexOptions.ExplicitCapture)]
    private static partial Regex Code();
}
