using Alburnum.Records.Facts;
using Alburnum.Reports.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Tests.Requirements;

public sealed class NameTextTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    [Fact]
    public void Of_changed_wood_the_classes_of_the_wood_it_was_made_from_are_not_shown()
    {
        var said = Said("thermo ash");

        Assert.Contains("made from: European ash or American ash", said, StringComparison.Ordinal);
        Assert.DoesNotContain("durability of the heartwood", said, StringComparison.Ordinal);
        Assert.Contains("durability of the heartwood", Said("European ash"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_mixture_of_which_not_all_is_known_names_none_as_the_least_treatable()
    {
        var said = Said("SPF");

        Assert.Contains("least treatable: not known", said, StringComparison.Ordinal);
        Assert.DoesNotContain("the least treatable of them", said, StringComparison.Ordinal);
    }

    private static string Said(string word) =>
        string.Join('\n', NameText.Lines(NameMapping.From(LookUpName.Run(word, Facts))));
}
