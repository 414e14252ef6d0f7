using Alburnum.Impregnation.Incising;
using Alburnum.Measures;

namespace Alburnum.Impregnation.Prediction;

/// <summary>Treats one drawn piece after another.</summary>
internal sealed class PieceTreatment
{
    private readonly PredictionQuestion _question;
    private readonly FrontTable _front;
    private readonly IncisedReach? _sapwoodReach;
    private readonly IncisedReach? _heartwoodReach;
    private readonly DrawnPiece _piece;

    // From a face to where the fronts of the whole piece meet, and how much of its breadth is lost by then.
    private readonly double _endMm;
    private readonly double _narrowing;
    private readonly double _areaMm2;
    private readonly double _breadthMm;
    private readonly double _zoneMm2;

    // Permeability straight in from each place over that across the grain in the mean: of sapwood, of heartwood.
    private readonly (double Sapwood, double Heartwood)[] _inwards;

    public PieceTreatment(PredictionQuestion question, FrontTable front, int placesPerFace)
    {
        (_question, _front) = (question, front);
        Places = SectionPositions.Around(question.Section, question.Log, placesPerFace);
        _inwards =
        [
            .. Places.Select(place =>
                (question.Sapwood.InwardsTimes(place.RadialShare), question.Heartwood.InwardsTimes(place.RadialShare))
            ),
        ];
        _areaMm2 = Places.Sum(place => place.Own.AreaMm2);
        _breadthMm = Places.Sum(place => place.Own.BreadthMm);
        _zoneMm2 = Places.Sum(place => place.Own.AreaMm2 * place.Own.ShareWithin(ZoneMm(place)));
        _endMm = question.Section.ThicknessMm / 2;
        // A breadth that falls evenly encloses the section's area: 1 for round and square, towards 0 for a plank.
        _narrowing = Math.Clamp(2 * (1 - question.Section.AreaMm2 / (question.Section.PerimeterMm * _endMm)), 0, 1);
        if (question.Incising is { } pattern)
        {
            _sapwoodReach = new IncisedReach(pattern, question.Sapwood.Directions.LongitudinalToLateral);
            _heartwoodReach = new IncisedReach(pattern, question.Heartwood.Directions.LongitudinalToLateral);
        }
        _piece = new DrawnPiece(new double[Places.Count], new double[Places.Count]);
    }

    public IReadOnlyList<SectionPosition> Places { get; }

    /// <summary>The next piece. The same object each time: read it before asking again.</summary>
    public DrawnPiece Next(SeededRandom random, double batchSapwood, double batchHeartwood)
    {
        var sapwood = Drawn(_question.Sapwood, batchSapwood, random.NextNormal());
        var heartwood = Drawn(_question.Heartwood, batchHeartwood, random.NextNormal());
        double least = double.MaxValue,
            sum = 0,
            border = 0,
            net = 0,
            kept = 0,
            inZone = 0,
            zone = 0;
        for (var i = 0; i < Places.Count; i++)
        {
            var place = Places[i];
            var here = random.NextNormal();
            var (times1, times2) = _inwards[i];
            var k1 = times1 * sapwood * Math.Exp(_question.Sapwood.WithinLnSpread * here);
            var k2 = times2 * heartwood * Math.Exp(_question.Heartwood.WithinLnSpread * here);
            var filled = At(place, k1, k2, random);
            _piece.CoreMm[i] = filled.CoreMm;
            _piece.BorderMm[i] = filled.BorderMm;
            least = Math.Min(least, filled.BorderMm);
            sum += filled.MeanMm * place.Own.BreadthMm;
            border += filled.BorderMm * place.Own.BreadthMm;
            net += filled.NetShare * place.Own.AreaMm2;
            kept += filled.KeptShare * place.Own.AreaMm2;
            inZone += filled.InZoneShare * place.Own.AreaMm2;
            zone += filled.ZoneShare * place.Own.AreaMm2;
        }
        _piece.LeastMm = least;
        _piece.MeanMm = sum / _breadthMm;
        _piece.MeanBorderMm = border / _breadthMm;
        _piece.UptakeLPerM3 = 1000 * _question.VoidFraction * net / _areaMm2;
        // A zone never holds more than the whole piece.
        _piece.ZoneLPerM3 = 1000 * _question.VoidFraction * Math.Min(inZone / zone, kept / _zoneMm2);
        return _piece;
    }

    // Depth of a core, of the border between the cuts and on average; liquid kept by the place's own strip, solution kept by it and in its zone, and the zone
    // itself, as shares of the strip's voids.
    private readonly record struct Filled(
        double CoreMm,
        double BorderMm,
        double MeanMm,
        double NetShare,
        double KeptShare,
        double InZoneShare,
        double ZoneShare
    );

    private Filled At(SectionPosition place, double sapwoodM2, double heartwoodM2, SeededRandom random)
    {
        var plain = Plain(place, sapwoodM2, heartwoodM2);
        if (_sapwoodReach is null || _heartwoodReach is null)
            return plain;
        // Cuts that go through the sapwood open the heartwood: its own reach decides there.
        var open = place.SapwoodMm < _heartwoodReach.Pattern.DepthMm;
        var (reach, where) = (open ? _heartwoodReach : _sapwoodReach, random.NextDouble());
        var across = _front.DepthMm(open ? heartwoodM2 : sapwoodM2, _question.VoidFraction, _endMm);
        // Where nothing got in at the face, there is nothing to share out between the cuts.
        if (plain.BorderMm <= 0)
            return plain;
        var mean = Deeper(reach.MeanMm(across, place.WayMm));
        // Between the cuts the wood is as full as it is under the face.
        var (zone, times) = (ZoneMm(place), place.Own.ShareWithin(mean) / place.Own.ShareWithin(plain.BorderMm));
        return new(
            Deeper(reach.CoreMm(across, where)),
            Deeper(reach.UnbrokenMm(across)),
            mean,
            plain.NetShare * times,
            Math.Min(1, plain.KeptShare * times),
            Math.Min(
                plain.ZoneShare,
                plain.InZoneShare * Math.Max(1, reach.MeanMm(across, zone) / Math.Min(plain.BorderMm, zone))
            ),
            plain.ZoneShare
        );

        double Deeper(double depthMm) => Math.Max(plain.BorderMm, Math.Min(place.WayMm, depthMm));
    }

    private double ZoneMm(SectionPosition place) =>
        Math.Min(place.WayMm, _question.ZoneDepthMm ?? (place.SapwoodMm > 0 ? place.SapwoodMm : place.WayMm));

    private Filled Plain(SectionPosition place, double sapwoodM2, double heartwoodM2)
    {
        var (voids, a, zone) = (_question.VoidFraction, place.SapwoodMm, ZoneMm(place));
        if (a <= 0 || a >= _endMm)
        {
            var way = _front.At(a <= 0 ? heartwoodM2 : sapwoodM2, voids, _endMm, _narrowing);
            var depth = LayeredWay.Whole(way.Reached, _endMm);
            return Even(
                depth >= _endMm ? place.WayMm : Math.Min(depth, place.WayMm),
                way.Net,
                way.KeptWithin(1),
                way.KeptWithin(zone / _endMm),
                Within(_endMm, _narrowing, zone)
            );
        }
        var reached = LayeredWay.DepthMm(_front, voids, (sapwoodM2, a), (heartwoodM2, _endMm), _narrowing);
        var isClosed = LayeredWay.IsClosed(sapwoodM2, heartwoodM2);
        // Before heartwood that is closed the fronts of the sapwood end; into open heartwood they go on.
        var (shellMm, narrowing) = isClosed ? (a, _narrowing * a / _endMm) : (_endMm, _narrowing);
        var shell = _front.At(sapwoodM2, voids, shellMm, narrowing);
        var core = _front.At(heartwoodM2, voids, _endMm - a, 1);
        var (share, ofWay) = (place.Own.ShareWithin(a), Within(shellMm, narrowing, a));
        var beyond = reached >= a ? 1 - share : 0;
        // What the sapwood's part of an open way keeps is more than the mean of the whole way.
        var (inShell, inWay) = (shell.KeptWithin(a / shellMm), shell.KeptWithin(1));
        return Even(
            reached >= _endMm ? place.WayMm : Math.Min(reached, place.WayMm),
            share * shell.Net * (inWay > 0 ? inShell / inWay / ofWay : 1) + beyond * core.Net,
            share * inShell / ofWay + beyond * core.KeptWithin(1),
            share * shell.KeptWithin(Math.Min(zone, a) / shellMm) / ofWay
                + beyond * core.KeptWithin(Math.Max(0, zone - a) / (_endMm - a)),
            share * Within(shellMm, narrowing, Math.Min(zone, a)) / ofWay
                + (1 - share) * Within(_endMm - a, 1, Math.Max(0, zone - a))
        );
    }

    private static Filled Even(
        double depthMm,
        double netShare,
        double keptShare,
        double inZoneShare,
        double zoneShare
    ) => new(depthMm, depthMm, depthMm, netShare, keptShare, inZoneShare, zoneShare);

    // Share of a way's voids down to a depth.
    private static double Within(double endMm, double narrowing, double depthMm)
    {
        var depth = Math.Min(depthMm, endMm);
        return (depth - narrowing * depth * depth / (2 * endMm)) / (endMm * (1 - narrowing / 2));
    }

    private static double Drawn(PermeabilityLaw law, double batch, double piece) =>
        law.LateralMedianM2 * Math.Exp(law.BatchLnSpread * batch + law.PieceLnSpread * piece);
}

/// <summary>One drawn piece after treatment.</summary>
internal sealed class DrawnPiece(double[] coreMm, double[] borderMm)
{
    /// <summary>Depth of a core taken at each place, mm; in incised wood anywhere between the cuts and at them.</summary>
    public double[] CoreMm { get; } = coreMm;

    /// <summary>Depth of the unbroken border at each place, mm: between the cuts where there are any.</summary>
    public double[] BorderMm { get; } = borderMm;

    /// <summary>Least depth of the border, mm.</summary>
    public double LeastMm { get; set; }

    /// <summary>Mean depth of the border, mm.</summary>
    public double MeanBorderMm { get; set; }

    /// <summary>Mean depth, what goes deeper at the cuts included, mm.</summary>
    public double MeanMm { get; set; }

    public double UptakeLPerM3 { get; set; }

    public double ZoneLPerM3 { get; set; }
}
