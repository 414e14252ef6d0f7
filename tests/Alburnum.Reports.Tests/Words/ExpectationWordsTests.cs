using Alburnum.Reports.Words;

namespace Alburnum.Reports.Tests.Words;

public sealed class ExpectationWordsTests
{
    [Fact]
    public void A_mean_that_could_not_be_measured_is_not_determined() =>
        Assert.Equal("not determined", ExpectationWords.Current.MeasuredDepth(null, 0).Value);
}
