using Alburnum.Imaging.Tests.Drawn;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Tests.Front;

/// <summary>Drawn sections read, and what their depths look like.</summary>
public sealed class PatternsOfSectionsTests
{
    // 100 × 75 mm: face 2 runs from 100 to 175 mm along the perimeter.
    private static bool IsOnFace2(double mm) => mm is > 100 and < 175;

    private static bool IsOnFace4(double mm) => mm is > 275 and < 350;

    [Fact]
    public void An_evenly_treated_section_looks_like_nothing_in_particular() => Assert.Empty(Of(_ => 9));

    [Fact]
    public void A_section_ripped_after_treatment_is_recognised() =>
        Assert.Equal(2, Assert.IsType<CutThroughBorder>(Assert.Single(Of(mm => IsOnFace2(mm) ? 0 : 9))).Face);

    [Fact]
    public void A_face_planed_after_treatment_is_recognised() =>
        Assert.Equal(2, Assert.IsType<ShallowFace>(Assert.Single(Of(mm => IsOnFace2(mm) ? 4 : 10))).Face);

    [Fact]
    public void A_skin_is_recognised() =>
        Assert.Equal(1.6, Assert.IsType<ThinSkin>(Assert.Single(Of(_ => 1.6))).MeanMm, 0.2);

    [Fact]
    public void A_place_that_the_spray_missed_is_recognised()
    {
        var patch = Assert.IsType<BarePatch>(Assert.Single(Of(mm => mm is > 40 and < 60 ? 0 : 9)));

        Assert.Equal(1, patch.Face);
        Assert.Equal(40, patch.FromMm, 2.0);
        Assert.Equal(60, patch.ToMm, 2.0);
    }

    [Fact]
    public void Two_faces_that_lay_tight_in_the_stack_are_recognised()
    {
        var pattern = Assert.IsType<TwoBareFaces>(Assert.Single(Of(mm => IsOnFace2(mm) || IsOnFace4(mm) ? 0 : 9)));

        Assert.Equal((2, 4, true), (pattern.First, pattern.Second, pattern.AreOpposite));
    }

    [Fact]
    public void Half_a_bare_face_is_recognised()
    {
        var patch = Assert.IsType<BarePatch>(Assert.Single(Of(mm => mm is > 45 and < 90 ? 0 : 9)));

        Assert.Equal(1, patch.Face);
        Assert.Equal(45, patch.FromMm, 2.0);
    }

    private static IReadOnlyList<DepthPattern> Of(Func<double, double> depthMm)
    {
        var drawn = new PlainSection { DepthMm = depthMm };
        return DepthPatterns.Of(DrawnReading.Profile(DrawnReading.Of(drawn)));
    }
}
