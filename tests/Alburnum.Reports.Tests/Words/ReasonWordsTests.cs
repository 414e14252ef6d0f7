using Alburnum.Acceptance;
using Alburnum.Penetration;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Tests.Words;

public sealed class ReasonWordsTests
{
    public static TheoryData<int> EachReason => [.. Enumerable.Range(0, SaidReasons.All.Count)];

    [Theory]
    [MemberData(nameof(EachReason))]
    public void A_reason_is_said(int which) =>
        Assert.Equal(SaidReasons.All[which].Sentence, ReasonWords.Current.Say(SaidReasons.All[which].Reason));

    [Fact]
    public void Every_kind_of_reason_in_the_core_has_its_sentence()
    {
        var kinds = typeof(Reason)
            .Assembly.GetTypes()
            .Where(type => type.IsSubclassOf(typeof(Reason)) && !type.IsAbstract);

        Assert.Equal(
            kinds.Select(kind => kind.Name).Order(StringComparer.Ordinal),
            SaidReasons.All.Select(said => said.Reason.GetType().Name).Distinct().Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void Reasons_keep_their_order() =>
        Assert.Equal(
            ["No depth of penetration is required.", "Not demonstrable on this piece."],
            ReasonWords.Current.Say([new NoDepthRequired(), new NotDemonstrable()])
        );

    [Fact]
    public void A_share_that_is_no_whole_per_cent_is_named_as_it_is() =>
        Assert.Equal(
            "99.99 % of the pieces cut must pass",
            ReasonWords.Current.Acceptance.Rule(new ShareMustPass(0.9999))
        );
}
