using Alburnum.Imaging.Outline;
using CsCheck;

namespace Alburnum.Imaging.Tests.Outline;

public class GroupSumsTests
{
    private const int Width = 23;
    private const int Height = 3;

    [Fact]
    public void A_stretch_counts_what_its_pixels_count() =>
        Gen.Select(
                Gen.Byte[0, Palette.Groups - 1].Array[Width * Height],
                Gen.Byte[0, 3].Array[Width * Height],
                Gen.Int[0, Height - 1],
                Gen.Int[0, Width],
                Gen.Int[0, Width]
            )
            .Sample(
                (group, weight, y, one, other) =>
                {
                    var (from, to) = (Math.Min(one, other), Math.Max(one, other));
                    var plain = new float[Palette.Groups];
                    for (var x = from; x < to; x++)
                        plain[group[(y * Width) + x]] += weight[(y * Width) + x];

                    var quick = new float[Palette.Groups];
                    new GroupSums(group, weight, Width, Height).Count(y, from, to, quick);

                    Assert.Equal(plain, quick);
                }
            );
}
