using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Workflows.Tests.Requirements;

public sealed class FindRequirementTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    [Theory]
    [InlineData("Norway spruce", false, Standing.Published)]
    [InlineData("Scots pine", true, Standing.WorkedOut)]
    public void Years_of_the_worse_end_of_a_range_are_worked_out(string species, bool isOfWorseEnd, Standing standing)
    {
        var enquiry = new Enquiry { Species = Facts.Species.Get(species), UseClasses = [UseClass.Four] };
        var found = FindRequirement.Run(enquiry, Facts.Rulebooks.Named("european-2007"), Facts);

        var lasted = Assert.Single(found.Remarks.OfType<LastedInGround>());
        Assert.Equal(isOfWorseEnd, lasted.IsOfWorseEnd);
        Assert.Equal(standing, lasted.Standing);
    }
}
