using System.Xml.Linq;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Json;
using Alburnum.Reports.Requirements;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Tests.Requirements;

public sealed class DecisionDiagramTests
{
    private static readonly Provenance Source = new(Standing.FromMemory, "Own table", "1", "row 1", "");

    private static readonly Rulebook Book = new([
        new(
            "deep",
            Subject.Penetration,
            [new OneOf(Field.UseClass, ["4"])],
            new PenetrationDemand("12 mm", new LeastDepth(WoodZone.Sapwood, 12), null, null),
            [],
            Source
        ),
        new(
            "shallow",
            Subject.Penetration,
            [new OneOf(Field.UseClass, ["3.2"])],
            new PenetrationDemand("3 mm", new LeastDepth(WoodZone.Sapwood, 3), null, null),
            [],
            Source
        ),
    ])
    {
        Name = "own-1",
        Title = "Own <table> & more",
        Document = "Own",
        Edition = "1",
    };

    [Theory]
    [InlineData(UseClass.Four, "required")]
    [InlineData(UseClass.One, "not covered")]
    public void The_drawing_shows_the_rows_that_counted_and_the_answer(UseClass useClass, string outcome)
    {
        var document = Document(new Enquiry { UseClasses = [useClass] });
        var drawing = DecisionDiagram.Draw(document);
        var labels = drawing.Marks.OfType<Label>().Select(label => label.Text).ToList();

        Assert.Contains(outcome, labels);
        Assert.Contains(labels, text => text.Contains("shallow", StringComparison.Ordinal));
        Assert.Contains("weakest standing: " + Wording.Current.Say(document.WeakestStanding), labels);
        Assert.All(drawing.Marks.OfType<Label>(), label => Assert.InRange(label.At.Y, 0, drawing.HeightMm));
    }

    [Fact]
    public void The_SVG_is_well_formed_whatever_the_rulebook_is_called()
    {
        var document = Document(new Enquiry { UseClasses = [UseClass.Four] });
        var svg = XElement.Parse(Svg.Write(DecisionDiagram.Draw(document)));
        Assert.Contains(
            svg.Descendants(),
            element => element.Value.StartsWith("Own <table> & more", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void An_answer_written_as_JSON_reads_back_the_same()
    {
        var document = Document(
            new Enquiry { UseClasses = [UseClass.Four], MoisturePercent = 22.5 },
            new CodeGoverns()
        );
        Assert.Equal(
            DocumentJson.Write(document),
            DocumentJson.Write(DocumentJson.Read<AnswerDocument>(DocumentJson.Write(document)))
        );
    }

    [Fact]
    public void Lines_of_text_keep_within_the_page()
    {
        var document = Document(
            new Enquiry { UseClasses = [UseClass.Four] },
            new TrapOfUseClass(new([UseClass.Four], string.Join(' ', Enumerable.Repeat("word", 60)), Source))
        );
        Assert.All(
            AnswerText.Lines(document, withAllRows: false, "--all-rows"),
            line => Assert.InRange(line.Length, 0, 110)
        );
    }

    private static AnswerDocument Document(Enquiry enquiry, params IReadOnlyList<RequirementRemark> remarks) =>
        AnswerMapping.From(new(Book.Answer(enquiry), null, [], null, [], [], remarks, null));
}
