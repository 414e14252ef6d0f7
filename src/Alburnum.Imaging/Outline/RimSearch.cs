using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>Finds a rim that is no ellipse about a rough one: the closed path that has the section's colours within, others without, and an edge along it.</summary>
/// <remarks>Its figures are our own choice.</remarks>
internal static class RimSearch
{
    /// <summary>Places around the rim, and how far within and without the rough one it is looked for, in so many steps each way.</summary>
    private const int Stations = 180;

    private const double ReachShare = 0.3;

    private const int StepsEachWay = 60;

    /// <summary>A plain edge counts as much as the colours of so many steps that are no proof either way.</summary>
    private const float EdgeGain = 6;

    private const int FreeSteps = 1;

    private const float CostPerStep = 1.5f;

    /// <summary>Outside the picture there is no section, as far as anyone sees.</summary>
    private const float OutsidePicture = -3;

    /// <summary>Waves of this harmonic and shorter are smoothed away by half.</summary>
    private const double SmoothFrom = 10;

    private static readonly double Stiffness = 0.5 / Math.Pow(SmoothFrom, 4);

    /// <summary>How far from the rough path the rim is then looked for, as a share of the mean half axis.</summary>
    private const double TraceShare = 0.03;

    /// <summary>Around the whole of a rim, colours within and without must be this much alike in sum: 2 where they are the same all around.</summary>
    private const double LeastAlike = 1.5;

    /// <summary>And those within this much at every look, however finely it tells colours apart.</summary>
    private const double LeastAlikeWithin = 0.5;

    /// <summary>Places along a rim where the colours on both sides are looked at.</summary>
    private const int Looks = 64;

    /// <summary>Whether the colours along a rim are alike all around, inside and outside: bark or a side of the piece within it in part are not.</summary>
    public static bool IsAlike(Surroundings surroundings, RimCurve rim)
    {
        var colours = surroundings.Along(rim.Stations(Looks));
        return colours.InsideAlike + colours.OutsideAlike >= LeastAlike;
    }

    /// <summary>Whether the colours just within a rim are alike all around.</summary>
    public static bool IsAlikeWithin(Surroundings surroundings, RimCurve rim) =>
        surroundings.Along(rim.Stations(Looks)).InsideAlike >= LeastAlikeWithin;

    /// <summary>The rim about a rough place.</summary>
    public static Outcome<FoundOutline, NoEllipse> About(Photograph photo, Ellipse rough, Surroundings surroundings) =>
        Roughly(photo, rough, surroundings).Then(rim => RimTrace.Near(photo, rim, TraceShare * rim.MeanRadius));

    private static Outcome<RimCurve, NoEllipse> Roughly(Photograph photo, Ellipse rough, Surroundings surroundings)
    {
        var stations = rough.Stations(Stations);
        var reach = ReachShare * Math.Sqrt(rough.Major * rough.Minor);
        var step = reach / StepsEachWay;
        var profile = EdgeProfile.Across(photo, stations, reach, step);
        var within = new float[Stations * profile.Steps];
        for (var i = 0; i < Stations; i++)
        {
            float sum = 0;
            for (var k = 0; k < profile.Steps; k++)
            {
                within[(i * profile.Steps) + k] = sum;
                var at = Place(stations[i], profile.OffsetPx(k + 0.5));
                sum += IsIn(photo, at) ? surroundings.Evidence(at) : OutsidePicture;
            }
        }
        var path = RimPath.Along(
            Stations,
            profile.Steps,
            (i, k) =>
                within[(i * profile.Steps) + k] + (EdgeGain * Math.Min(1, profile[i, k] / (float)EdgeProfile.Plain)),
            FreeSteps,
            CostPerStep
        );
        var one = new double[Stations];
        Array.Fill(one, 1);
        PointPx[] points = [.. stations.Select((station, i) => Place(station, profile.OffsetPx(path[i])))];
        return RimCurve.Fit(points, one, Stiffness);
    }

    private static PointPx Place((PointPx At, double Nx, double Ny) station, double offset) =>
        new(station.At.X + (offset * station.Nx), station.At.Y + (offset * station.Ny));

    private static bool IsIn(Photograph photo, PointPx p) =>
        p.X >= 0 && p.Y >= 0 && p.X < photo.WidthPx && p.Y < photo.HeightPx;
}
