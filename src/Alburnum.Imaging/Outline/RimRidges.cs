using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>Rounds along which the picture changes, near a rough one: the rim itself, the piece's far rim, the treated zone, annual rings.</summary>
internal static class RimRidges
{
    // All figures are our own choice.

    /// <summary>Places along a rim where edges are looked for, and most steps outward and inward of it.</summary>
    private const int Stations = 96;

    private const int StepsEachWay = 48;

    /// <summary>How far aside a rim is tried, as a share of the steps each way, and in steps of how many steps.</summary>
    private const double AsideShare = 0.6;

    private const int AsideEvery = 2;

    /// <summary>Steps at either end of the search that no rim is tried at.</summary>
    private const int EndSteps = 2;

    /// <summary>Rims of one width lie apart by one in so many of the steps each way, and by so many steps at least.</summary>
    private const int ApartPart = 8;

    private const int LeastApartSteps = 3;

    /// <summary>First and last step of the climb to the best supported rim nearby, in steps.</summary>
    private const double FirstClimb = 2;

    private const double LastClimb = 0.5;

    /// <summary>Annual rings are many: of each of so many widths the best few supported are taken, lest rings crowd out the rim.</summary>
    private const int Widths = 10;

    private const int PerWidth = 2;

    /// <summary>Ellipses near a rough rim that lie along edges.</summary>
    /// <param name="photo">The photograph.</param>
    /// <param name="rough">A rough rim.</param>
    /// <param name="reachPx">How far a rim may lie from it.</param>
    public static IReadOnlyList<Ellipse> Near(Photograph photo, Ellipse rough, double reachPx)
    {
        var step = Math.Max(EdgeProfile.FinestStepPx(photo), reachPx / StepsEachWay);
        var stations = rough.Stations(Stations);
        var profile = EdgeProfile.Across(photo, stations, reachPx, step);
        var middle = (profile.Steps - 1) / 2;
        var aside = (int)(AsideShare * middle);
        var scored = new List<(Offsets Offsets, double Score)>[Widths];
        for (var o = -middle + EndSteps; o <= middle - EndSteps; o++)
        {
            var width = (o + middle) * Widths / ((2 * middle) + 1);
            for (var right = -aside; right <= aside; right += AsideEvery)
            for (var down = -aside; down <= aside; down += AsideEvery)
            {
                var offsets = new Offsets(o, right, down, 0, 0);
                (scored[width] ??= []).Add((offsets, Score(profile, offsets)));
            }
        }
        var ridges = new List<Offsets>();
        foreach (var ofWidth in scored)
        {
            if (ofWidth is null)
                continue;
            var taken = new List<Offsets>();
            foreach (var (offsets, _) in ofWidth.OrderByDescending(s => s.Score))
            {
                if (taken.All(t => t.Apart(offsets) > Math.Max(LeastApartSteps, middle / ApartPart)))
                    taken.Add(offsets);
                if (taken.Count == PerWidth)
                    break;
            }
            ridges.AddRange(taken);
        }
        return
        [
            .. ridges.SelectMany(r =>
                Drawn(stations, Climbed(profile, r), step).Match<Ellipse[]>(ellipse => [ellipse], _ => [])
            ),
        ];
    }

    /// <summary>Offset along the rim, in steps: out, shifted along and across the longer axis, and flattened two ways.</summary>
    private readonly record struct Offsets(double Out, double Along, double Across, double Flat, double Skew)
    {
        public const int Measures = 5;

        public double At(int station) =>
            Out
            + (Along * Cos[station])
            + (Across * Sin[station])
            + (Flat * Cos[2 * station % Stations])
            + (Skew * Sin[2 * station % Stations]);

        public double Apart(Offsets other) =>
            Math.Abs(Out - other.Out) + double.Hypot(Along - other.Along, Across - other.Across);

        public Offsets Moved(int which, double by) =>
            which switch
            {
                0 => this with { Out = Out + by },
                1 => this with { Along = Along + by },
                2 => this with { Across = Across + by },
                3 => this with { Flat = Flat + by },
                _ => this with { Skew = Skew + by },
            };
    }

    private static readonly double[] Cos =
    [
        .. Enumerable.Range(0, Stations).Select(i => Math.Cos(2 * Math.PI * i / Stations)),
    ];

    private static readonly double[] Sin =
    [
        .. Enumerable.Range(0, Stations).Select(i => Math.Sin(2 * Math.PI * i / Stations)),
    ];

    private static double Score(EdgeProfile profile, Offsets offsets)
    {
        var middle = (profile.Steps - 1) / 2;
        double score = 0;
        for (var i = 0; i < Stations; i++)
            score += Math.Min(EdgeProfile.Plain, profile.At(i, middle + offsets.At(i)));
        return score;
    }

    private static Offsets Climbed(EdgeProfile profile, Offsets start) =>
        PatternSearch
            .Climb(
                start,
                offsets => Score(profile, offsets),
                (offsets, measure, by) => offsets.Moved(measure, by),
                Offsets.Measures,
                FirstClimb,
                LastClimb
            )
            .Place;

    private static Outcome<Ellipse, NoEllipse> Drawn(
        (PointPx At, double Nx, double Ny)[] stations,
        Offsets offsets,
        double stepPx
    )
    {
        var points = new PointPx[stations.Length];
        for (var i = 0; i < points.Length; i++)
        {
            var (at, nx, ny) = stations[i];
            var o = offsets.At(i) * stepPx;
            points[i] = new(at.X + (o * nx), at.Y + (o * ny));
        }
        var one = new double[points.Length];
        Array.Fill(one, 1);
        return Ellipse.Fit(points, one);
    }
}
