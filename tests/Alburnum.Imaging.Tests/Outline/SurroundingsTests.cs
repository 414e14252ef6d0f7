using Alburnum.Imaging.Outline;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Tests.Drawn;

namespace Alburnum.Imaging.Tests.Outline;

public class SurroundingsTests
{
    [Fact]
    public void The_true_outline_tells_more_of_the_colours_than_the_front_or_one_too_wide()
    {
        var drawn = new PlainSection();
        using var file = PhotographFile.Open("drawn.jpg", drawn.Draw());
        using var photo = file.Decode(1);
        var picture = SmallPicture.Of(photo, 320);
        var palette = Palette.Of(picture);
        var likeness = palette.Likeness(0.3f);
        var (rough, separation) = RoughSearch.In(palette, likeness, drawn.HeightMm / drawn.WidthMm, isRound: false);
        var surroundings = new Surroundings(palette, likeness, separation, rough, picture.UprightPerPx);

        var trueOne = surroundings.Told(Grown(drawn, 0));

        Assert.True(trueOne > -0.02, $"{trueOne}");
        Assert.True(trueOne > surroundings.Told(Grown(drawn, -9)) + 0.02);
        Assert.True(trueOne > surroundings.Told(Grown(drawn, 6)) + 0.02);
    }

    private static PointPx[] Grown(PlainSection drawn, double byMm)
    {
        var (w, h) = (drawn.WidthMm + byMm, drawn.HeightMm + byMm);
        return [drawn.Place(-byMm, -byMm), drawn.Place(w, -byMm), drawn.Place(w, h), drawn.Place(-byMm, h)];
    }
}
