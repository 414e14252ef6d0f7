using System.Globalization;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outline;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.Imaging.Tests.RealWood;

/// <summary>Ends of real logs, against places on their edges that were marked by eye.</summary>
public sealed class RealRimTests
{
    /// <summary>How far a place may lie from the rim found, as a share of the diameter.</summary>
    private const double Near = 0.01;

    private static string At(string name) => Repository.At($"tests/Alburnum.Imaging.Tests/RealWood/{name}");

    [Theory]
    [InlineData("douglas-fir-A05b", 0)]
    [InlineData("douglas-fir-B09b", 0)]
    [InlineData("douglas-fir-C08d", 0)]
    // Beside the torn stub of this one the rim steps in and out faster than a smooth contour can; the stub itself is not read.
    [InlineData("douglas-fir-C10d", 2)]
    public void The_rim_of_a_log_end_is_found_by_itself_but_where_it_is_torn(string name, int placesBesideStub)
    {
        var found = Found(name);

        Assert.True(found.Confidence >= OutlineFinder.SureEnough, $"{found.Confidence}");
        var rim = found.Rim!;
        double[] off =
        [
            .. Marked(name)
                .Where(place => !found.Bare[rim.StationOf(place, found.Bare.Count)])
                .Select(place => Math.Abs(rim.DistanceTo(place) / (2 * rim.MeanRadius))),
        ];
        Assert.InRange(off.Count(share => share > Near), 0, placesBesideStub);
        Assert.InRange(off.Max(), 0, 2 * Near);
        Assert.InRange(found.Bare.Count(isBare => isBare), 0, found.Bare.Count / 8);
    }

    [Fact]
    public void A_rim_that_takes_in_bark_in_places_is_asked_about()
    {
        var ended = DrawnReading.Ended(
            DrawnReading.Of(File.ReadAllBytes(At("douglas-fir-C08d-scene.jpg")), Request with { OutlinePx = null })
        );

        Assert.Equal(new OutlineNotFound(MayIncludeBark: true), ended.Fault);
    }

    [Theory]
    [InlineData("douglas-fir-A05b")]
    [InlineData("douglas-fir-B09b")]
    [InlineData("douglas-fir-C08d-scene")]
    [InlineData("douglas-fir-C08d")]
    [InlineData("douglas-fir-C10d")]
    public void Twelve_places_pointed_out_give_the_rim_that_they_lie_on_or_none_that_is_believed(string name)
    {
        var marked = Marked(name);
        IReadOnlyList<PointPx> given = [.. Enumerable.Range(0, 12).Select(k => marked[k * marked.Count / 12])];

        var reading = DrawnReading.Of(File.ReadAllBytes(At($"{name}.jpg")), Request with { OutlinePx = given });

        var outline = Assert.IsType<NotDetermined>(reading.Outcome, exactMatch: false).Outline!;
        var across = outline.PointsPx.Max(p => outline.PointsPx.Max(p.DistanceTo));
        if (outline.Confidence > 0)
            Assert.InRange(marked.Count(p => Off(p) < Near * across) / (double)marked.Count, 0.85, 1);

        double Off(PointPx p) => Dense(outline.PointsPx).Min(p.DistanceTo);
    }

    // The outline's points, and seven more between two of them.
    private static IEnumerable<PointPx> Dense(IReadOnlyList<PointPx> points) =>
        points.SelectMany(
            (p, k) =>
                Enumerable
                    .Range(0, 8)
                    .Select(part => part / 8.0)
                    .Select(share => new PointPx(
                        p.X + (share * (points[(k + 1) % points.Count].X - p.X)),
                        p.Y + (share * (points[(k + 1) % points.Count].Y - p.Y))
                    ))
        );

    private static ReadingRequest Request =>
        new() { Section = new RoundSection(300), Candidates = KnownIndicators.All };

    private static FoundOutline Found(string name)
    {
        using var file = PhotographFile.Open(name, File.ReadAllBytes(At($"{name}.jpg")));
        using var photo = file.Decode(1);
        return OutlineFinder
            .Rim(photo)
            .Match(found => found, _ => throw new Xunit.Sdk.XunitException("Nothing found."));
    }

    private static IReadOnlyList<PointPx> Marked(string name) =>
        [
            .. File.ReadLines(At($"{name}.csv"))
                .Skip(1)
                .Select(line => line.Split(','))
                .Select(of => new PointPx(
                    double.Parse(of[0], CultureInfo.InvariantCulture),
                    double.Parse(of[1], CultureInfo.InvariantCulture)
                )),
        ];
}
