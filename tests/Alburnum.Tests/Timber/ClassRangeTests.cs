using Alburnum.Timber;
using CsCheck;

namespace Alburnum.Tests.Timber;

public sealed class ClassRangeTests
{
    [Fact]
    public void What_is_written_is_read_back() =>
        Gen.Select(
                Gen.Int[1, 5].Array[2],
                Gen.Bool,
                (ends, isVariable) => new ClassRange(ends.Min(), ends.Max(), isVariable)
            )
            .Sample(range => ClassRange.TryParse(range.Label, out var read) && read == range);

    [Theory]
    [InlineData("")]
    [InlineData("0")]
    [InlineData("6")]
    [InlineData("4-3")]
    [InlineData("1-2-3")]
    [InlineData("v")]
    [InlineData("２")]
    public void Anything_else_is_not_a_class(string text) => Assert.False(ClassRange.TryParse(text, out _));

    [Fact]
    public void A_class_off_the_scale_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ClassRange(0, 3));
}
