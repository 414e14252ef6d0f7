using Alburnum.Penetration;
using Alburnum.Reports.Sheets;
using UglyToad.PdfPig;

namespace Alburnum.Reports.Tests.Sheets;

public sealed class CaseReportTests
{
    [Theory]
    [InlineData(Verdict.Conforms, 0.99, "Penetration rule met")]
    [InlineData(Verdict.DoesNotConform, 0.01, "Penetration rule not met")]
    [InlineData(Verdict.Undecided, null, "Penetration rule undecided")]
    public void The_report_says_its_verdict(Verdict verdict, double? probability, string expected) =>
        Assert.Contains(expected, TextOf(SampleDocument.Make(verdict, probability)), StringComparison.Ordinal);

    [Theory]
    [InlineData("Gate posts & rails")]
    [InlineData("T-1")]
    [InlineData("NP3: at least 6 mm in the sapwood")]
    [InlineData("8.0 kg/m³ in the zone")]
    [InlineData("18.0 mm, nine pieces of ten 12.5 to 24.5 mm")]
    [InlineData("9.0 ± 0.4 mm, over 1 piece")]
    [InlineData("93 % predicted (standard deviation from batch to batch 8 %)")]
    [InlineData("charge 12: 120 pieces, 1.62 m³")]
    [InlineData("1.30 ± 0.10 % of product by mass")]
    [InlineData("360 ± 30 L/m³ of timber, for 8 kg/m³ required")]
    [InlineData("Shallower than expected.")]
    [InlineData("The saw slipped.")]
    [InlineData("It would have failed.")]
    [InlineData("With every photograph left out that could be read: penetration rule not met.")]
    [InlineData("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa")]
    [InlineData("Assumed: From the smallest log")]
    [InlineData("Sapwood: an invented law.")]
    [InlineData("row-1")]
    [InlineData("Invented, 1")]
    [InlineData("from memory")]
    [InlineData("Deep enough.")]
    [InlineData("Out of focus.")]
    [InlineData("8.9 ± 0.3")]
    [InlineData("below 0.2 (not detected)")]
    [InlineData("The rule in words.")]
    [InlineData("The lot in words.")]
    [InlineData("This was not judged.")]
    [InlineData("± is the standard uncertainty")]
    [InlineData("Treated wood is hazardous when burnt.")]
    public void The_report_holds_what_the_document_holds(string expected) =>
        Assert.Contains(expected, TextOf(SampleDocument.Conforming), StringComparison.Ordinal);

    [Fact]
    public void A_report_kept_before_the_findings_were_written_down_says_its_rule_and_reasons()
    {
        var text = TextOf(SampleDocument.Conforming with { Findings = null });

        Assert.Contains("Rule met", text, StringComparison.Ordinal);
        Assert.Contains("The batch is as it is.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_page_bears_its_number_and_the_reference()
    {
        using var pdf = PdfDocument.Open(CaseReport.Write(SampleDocument.Conforming, NoPictures));

        Assert.All(
            pdf.GetPages(),
            page =>
            {
                var text = string.Join(' ', page.GetWords().Select(word => word.Text));
                Assert.Contains($"{page.Number} of {pdf.NumberOfPages}", text, StringComparison.Ordinal);
                Assert.Contains("T-1", text, StringComparison.Ordinal);
            }
        );
    }

    [Fact]
    public void Nothing_is_printed_outside_the_margins()
    {
        using var pdf = PdfDocument.Open(CaseReport.Write(SampleDocument.Conforming, NoPictures));

        Assert.All(
            pdf.GetPages().SelectMany(page => page.GetWords().Select(word => (page, word))),
            placed =>
            {
                Assert.InRange(placed.word.BoundingBox.Left, 55, placed.page.Width - 55);
                Assert.InRange(placed.word.BoundingBox.Right, 55, placed.page.Width - 55);
            }
        );
    }

    private static IReadOnlyDictionary<string, ReadOnlyMemory<byte>> NoPictures { get; } =
        new Dictionary<string, ReadOnlyMemory<byte>>(StringComparer.Ordinal);

    private static string TextOf(Alburnum.Reports.Documents.CaseDocument document)
    {
        using var pdf = PdfDocument.Open(CaseReport.Write(document, NoPictures));
        return string.Join(' ', pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text));
    }
}
