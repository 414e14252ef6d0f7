using Alburnum.Penetration;
using Alburnum.Records.Facts;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Tests.Shared;

namespace Alburnum.Reports.Tests.Words;

public sealed class PatternWordsTests
{
    private static readonly IReadOnlyList<(DepthPattern Pattern, string Part)> Patterns =
    [
        (new UntreatedHeartwood(0.98), "treated sapwood (98 % of it)"),
        (new CutThroughBorder(2, 9), "Face 2 looks as if it had been sawn, ripped or planed after treatment"),
        (new BareFace(2, 9), "Face 2 looks as if it had hardly been treated, with 9.0 mm on the other faces"),
        (new TwoBareFaces(1, 3, AreOpposite: true, 9), "Faces 1 and 3, opposite each other, look as if"),
        (new TwoBareFaces(1, 2, AreOpposite: false, 9), "sawn out of a larger one after treatment"),
        (new OneTreatedFace(4, 9), "face 4 alone had been treated, 9.0 mm deep"),
        (new BareAllRound(), "the reagent may not show this preservative"),
        (new BareHeartwoodFace(3), "Face 3 looks bare because heartwood lies at it"),
        (new ShallowFace(1, 4, 10), "about 6.0 mm had been taken off it"),
        (new ThinSkin(1.5), "a skin, 1.5 mm deep"),
        (new BarePatch(1, 40, 55, MayBeHeartwood: false), "the spray had missed it from 40 to 55 mm"),
        (
            new BarePatch(1, 40, 55, MayBeHeartwood: true),
            "a missed spray, a place covered in the stack, or heartwood at the face"
        ),
        (new TreatedThroughout(), "treated all through"),
        (
            new EndGrainOnly(30),
            "come in at an end and run along the grain, perhaps there only: the heartwood is treated as well, 30 mm"
        ),
    ];

    [Fact]
    public void Every_pattern_says_what_it_looks_like_and_what_would_confirm_it() =>
        Assert.All(
            Patterns,
            each =>
            {
                var says = PatternWords.Current.LooksLike(each.Pattern);
                Assert.Contains(each.Part, says, StringComparison.Ordinal);
                // A hint, never a finding.
                Assert.Contains("look", says, StringComparison.Ordinal);
                Assert.NotEmpty(PatternWords.Current.WouldConfirm(each.Pattern));
            }
        );

    [Fact]
    public void The_letter_that_a_pattern_leads_to_is_there()
    {
        var keys = new FactLibrary(Repository.At("data")).Letters.Select(letter => letter.Key).ToList();
        List<string> asked = [.. Patterns.Select(each => PatternMapping.Letter(each.Pattern)).OfType<string>()];

        Assert.NotEmpty(asked);
        Assert.All(asked, key => Assert.Contains(key, keys));
    }

    [Fact]
    public void No_kind_of_pattern_is_left_out() =>
        Assert.Equal(
            typeof(DepthPattern).Assembly.GetTypes().Where(type => type.BaseType == typeof(DepthPattern)).ToHashSet(),
            Patterns.Select(each => each.Pattern.GetType()).ToHashSet()
        );
}
