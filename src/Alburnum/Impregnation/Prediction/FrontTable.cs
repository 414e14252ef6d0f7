using System.Collections.Concurrent;

namespace Alburnum.Impregnation.Prediction;

/// <summary>What one schedule with one solution brings about in wood of every permeability and size: the flow solver's answers on one way from a face inwards, and what lies between them.</summary>
/// <remarks>
/// Everything on a way depends on one number, κ = k/(φL²), and on how much the way narrows from the face inwards: not at all under a flat
/// face, to nothing in a round or square piece. The solver is run for κ at even steps of its logarithm, eight to a decade, on a way that does
/// not narrow and on one that narrows to nothing, each only when it is asked for; between them the answers are drawn straight. Below the
/// least κ the front goes in as the root of κ. Where heat has to come in first, the length counts by itself: there is a set of runs for each
/// length, to the nearest of lengths a tenth apart.
/// </remarks>
public sealed class FrontTable
{
    private const double LeastLn = -41.5;
    private const double MostLn = -19.5;
    private const int Rows = 77;
    private const double Step = (MostLn - LeastLn) / (Rows - 1);
    private static readonly double LengthStep = Math.Log(1.1);
    private readonly ConcurrentDictionary<int, RunsOfLength> _runs = [];
    private readonly Func<int, RunsOfLength> _ofLength;
    private readonly bool _byLength;

    /// <summary>A table that is filled as it is read.</summary>
    /// <param name="solve">The solver on one way.</param>
    /// <param name="byLength">Whether two ways of the same κ differ where they are of different lengths, as heat comes to the end of one sooner.</param>
    public FrontTable(Func<SingleWay, FilledWay> solve, bool byLength = false)
        : this(length => RunsOfLength.Of(solve, byLength ? Math.Exp(length * LengthStep) : SingleWay.AnyMm), byLength)
    {
        ArgumentNullException.ThrowIfNull(solve);
    }

    private FrontTable(Func<int, RunsOfLength> ofLength, bool byLength) =>
        (_ofLength, _byLength) = (ofLength, byLength);

    /// <summary>The same runs at a moment of the schedule, as far as what was taken in goes: depths stay those of the end.</summary>
    /// <param name="minutes">Since the schedule began, min. 0 or more.</param>
    public FrontTable By(double minutes) => new(length => Runs(length).By(minutes), _byLength);

    /// <summary>What a way holds after the schedule.</summary>
    /// <param name="permeabilityM2">Permeability along the way, m². Above 0.</param>
    /// <param name="voidFraction">Void share, above 0, at most 1.</param>
    /// <param name="wayMm">Length of the way, mm: half the thickness, the radius, or the border of wood that lets nothing through.</param>
    /// <param name="narrowing">Share of its breadth that the way has lost at its end: 0 under a flat face, 1 in a round or square piece.</param>
    public WayReading At(double permeabilityM2, double voidFraction, double wayMm, double narrowing)
    {
        var way = wayMm / 1000;
        var at = (Math.Log(permeabilityM2 / (voidFraction * way * way)) - LeastLn) / Step;
        var (flats, closings) = Runs(_byLength ? (int)Math.Round(Math.Log(wayMm) / LengthStep) : 0);
        if (!(at > 0))
            return Read(0, 0, Math.Exp(Math.Max(at, -1e4) * Step / 2));
        var row = Math.Min((int)at, Rows - 2);
        return Read(row, Math.Min(1, at - row), 1);

        WayReading Read(int row, double between, double scale)
        {
            var next = between > 0 ? row + 1 : row;
            var closing = narrowing > 0 ? closings : flats;
            var flat = narrowing < 1 ? flats : closings;
            return new(
                (flat[row].Value, flat[next].Value, closing[row].Value, closing[next].Value),
                between,
                narrowing,
                scale
            );
        }
    }

    private RunsOfLength Runs(int length) => _runs.GetOrAdd(length, _ofLength);

    // On a way that does not narrow, and on one that narrows to nothing.
    private sealed record RunsOfLength(Lazy<FilledWay>[] Flat, Lazy<FilledWay>[] Closing)
    {
        public static RunsOfLength Of(Func<SingleWay, FilledWay> solve, double wayMm)
        {
            return new(Table(0), Table(1));

            Lazy<FilledWay>[] Table(double narrowing) =>
                [
                    .. Enumerable
                        .Range(0, Rows)
                        .Select(row => new Lazy<FilledWay>(() =>
                            solve(new(Math.Exp(LeastLn + row * Step), narrowing, wayMm))
                        )),
                ];
        }

        public RunsOfLength By(double minutes)
        {
            return new(Then(Flat), Then(Closing));

            Lazy<FilledWay>[] Then(Lazy<FilledWay>[] ways) =>
                [.. ways.Select(way => new Lazy<FilledWay>(() => way.Value.By(minutes)))];
        }
    }

    /// <summary>Greatest depth that solution reaches under a flat face, mm.</summary>
    /// <param name="permeabilityM2">Permeability along the way, m². Above 0.</param>
    /// <param name="voidFraction">Void share, above 0, at most 1.</param>
    /// <param name="wayMm">Length of the way, mm.</param>
    public double DepthMm(double permeabilityM2, double voidFraction, double wayMm) =>
        wayMm * At(permeabilityM2, voidFraction, wayMm, 0).Reached;

    /// <summary>Permeability that brings solution to a depth under a flat face, m²: the inverse of <see cref="DepthMm"/>.</summary>
    /// <param name="depthMm">Depth, mm. Above 0, below the end of the way.</param>
    /// <param name="voidFraction">Void share, above 0, at most 1.</param>
    /// <param name="wayMm">Length of the way, mm.</param>
    public double PermeabilityM2(double depthMm, double voidFraction, double wayMm)
    {
        Require.InRange(depthMm, 1e-6, wayMm, "mm");
        double low = Math.Log(1e-30),
            high = Math.Log(1e-8);
        while (high - low > 1e-9)
        {
            var middle = (low + high) / 2;
            if (DepthMm(Math.Exp(middle), voidFraction, wayMm) >= depthMm)
                high = middle;
            else
                low = middle;
        }
        return Math.Exp(high);
    }
}

/// <summary>What a way holds, read between four runs of the flow solver.</summary>
public readonly struct WayReading
{
    private readonly (FilledWay Flat, FilledWay NextFlat, FilledWay Closing, FilledWay NextClosing) _ways;
    private readonly double _between;
    private readonly double _narrowing;
    private readonly double _scale;

    internal WayReading(
        (FilledWay Flat, FilledWay NextFlat, FilledWay Closing, FilledWay NextClosing) ways,
        double between,
        double narrowing,
        double scale
    ) => (_ways, _between, _narrowing, _scale) = (ways, between, narrowing, scale);

    /// <summary>Share of the way that solution reached, 0 to 1.</summary>
    public double Reached =>
        Drawn(_ways.Flat.Reached, _ways.NextFlat.Reached, _ways.Closing.Reached, _ways.NextClosing.Reached, _narrowing);

    /// <summary>Liquid taken in and kept at the end, as a share of the way's voids.</summary>
    public double Net => Drawn(_ways.Flat.Net, _ways.NextFlat.Net, _ways.Closing.Net, _ways.NextClosing.Net, Volume);

    /// <summary>Solution kept from the face down to a depth, as a share of the way's voids.</summary>
    /// <param name="depth">Share of the way, 0 or more.</param>
    public double KeptWithin(double depth)
    {
        var own = depth / _scale;
        return Drawn(
            _ways.Flat.KeptWithin(own),
            _ways.NextFlat.KeptWithin(own),
            _ways.Closing.KeptWithin(own),
            _ways.NextClosing.KeptWithin(own),
            Volume
        );
    }

    // A way that narrows to nothing has half the volume of one that does not.
    private double Volume => _narrowing / (2 - _narrowing);

    private double Drawn(double flat, double nextFlat, double closing, double nextClosing, double narrowing)
    {
        var inFlat = flat + _between * (nextFlat - flat);
        return _scale * (inFlat + narrowing * (closing + _between * (nextClosing - closing) - inFlat));
    }
}
