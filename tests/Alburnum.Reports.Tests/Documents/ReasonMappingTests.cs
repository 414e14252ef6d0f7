using System.Globalization;
using Alburnum.Penetration;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Reports.Tests.Words;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;

namespace Alburnum.Reports.Tests.Documents;

/// <summary>Reasons as data, beside the sentences.</summary>
public sealed class ReasonMappingTests
{
    [Fact]
    public void The_position_that_decides_is_data()
    {
        var ground = Assert.Single(
            ReasonMapping.Of([
                new DecidedAt
                {
                    Rule = new LeastDepth(WoodZone.Sapwood, 6),
                    Reading = DepthReading.FifthPercentile,
                    Positions = 40,
                    LeastDepthMm = new(5.5, 0.3),
                    Face = 2,
                    PositionMm = 32.5,
                    DepthMm = 5.8,
                    RequiredMm = 6,
                    StandardUncertaintyMm = 0.28,
                    Probability = new(0.2, 0.4),
                },
            ])
        );

        Assert.Equal("decided_at", ground["kind"]!.GetValue<string>());
        Assert.Equal("fifth percentile", ground["reading"]!.GetValue<string>());
        Assert.Equal(
            (2, 32.5, 5.8, 6.0, 0.28, 0.2, 0.4),
            (
                ground["face"]!.GetValue<int>(),
                ground["position_mm"]!.GetValue<double>(),
                ground["depth_mm"]!.GetValue<double>(),
                ground["required_mm"]!.GetValue<double>(),
                ground["u_mm"]!.GetValue<double>(),
                ground["probability_low"]!.GetValue<double>(),
                ground["probability_high"]!.GetValue<double>()
            )
        );
    }

    [Fact]
    public void Every_kind_of_reason_is_described_in_the_docs()
    {
        var described = File.ReadAllText(Repository.At("docs", "json", "reasons.md"));

        Assert.All(
            ReasonMapping.Of(SaidReasons.All.Select(said => said.Reason).Where(reason => reason is PieceReason)),
            ground =>
                Assert.All(
                    ground.Select(field => field.Key).Append(ground["kind"]!.GetValue<string>()),
                    name => Assert.Contains($"`{name}`", described, StringComparison.Ordinal)
                )
        );
    }

    [Fact]
    public void Names_in_a_document_are_the_same_in_every_language()
    {
        var english = DocumentJson.Write(SampleDocument.Conforming);
        Wording.Add(Wording.Read(BracketedLanguage.Name, BracketedLanguage.File()));
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(BracketedLanguage.Name);

        Assert.Equal(english, DocumentJson.Write(SampleDocument.Conforming));
        Assert.Equal(english, DocumentJson.Write(DocumentJson.Read<CaseDocument>(english)));
    }

    [Fact]
    public void A_document_that_was_kept_under_an_earlier_name_is_read()
    {
        var document = SampleDocument.Conforming;
        var piece = document.Pieces[0];
        var heartwood = new HeartwoodDocument { DetectedBy = HeartwoodSource.Colour, InWords = "" };
        var kept = DocumentJson
            .Write(document with { Pieces = [piece with { Reading = piece.Reading with { Heartwood = heartwood } }] })
            .Replace("\"detected_by\":", "\"told\":", StringComparison.Ordinal);

        Assert.Contains("\"told\":", kept, StringComparison.Ordinal);
        Assert.Equal(
            HeartwoodSource.Colour,
            DocumentJson.Read<CaseDocument>(kept).Pieces[0].Reading.Heartwood!.DetectedBy
        );
    }
}
