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
            sum += filled.MeanMm;
            border += filled.BorderMm;
            net += filled.NetShare * place.Own.AreaMm2;
            inZone += filled.InZoneMm;
            zone += filled.ZoneMm;
        }
        _piece.LeastMm = least;
        _piece.MeanMm = sum / Places.Count;
        _piece.MeanBorderMm = border / Places.Count;
        _piece.UptakeLPerM3 = 1000 * _question.VoidFraction * net / _areaMm2;
        _piece.ZoneLPerM3 = 1000 * _question.VoidFraction * inZone / zone;
        return _piece;
    }

    // Depth of a core, of the border between the cuts and on average, liquid kept by the place's own strip as a share of its voids, and solution
    // kept in the zone as a length of filled voids.
    private readonly record struct Filled(
        double CoreMm,
        double BorderMm,
        double MeanMm,
        double NetShare,
        double InZoneMm,
        double ZoneMm
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
        var zone = Math.Min(plain.ZoneMm, place.WayMm);
        return new(
            Deeper(reach.CoreMm(across, where)),
            Deeper(reach.UnbrokenMm(across)),
            mean,
            plain.NetShare * place.Own.ShareWithin(mean) / place.Own.ShareWithin(plain.BorderMm),
            Math.Min(zone, plain.InZoneMm * Math.Max(1, reach.MeanMm(across, zone) / Math.Min(plain.BorderMm, zone))),
            plain.ZoneMm
        );

        double Deeper(double depthMm) => Math.Max(plain.BorderMm, Math.Min(place.WayMm, depthMm));
    }

    private Filled Plain(SectionPosition place, double sapwoodM2, double heartwoodM2)
    {
        var (voids, a) = (_question.VoidFraction, place.SapwoodMm);
        var zone = Math.Min(place.WayMm, _question.ZoneDepthMm ?? (a > 0 ? a : place.WayMm));
        if (a <= 0 || a >= _endMm)
        {
            var way = _front.At(a <= 0 ? heartwoodM2 : sapwoodM2, voids, _endMm, _narrowing);
            var depth = LayeredWay.Whole(way.Reached, _endMm);
            return Even(
                depth >= _endMm ? place.WayMm : Math.Min(depth, place.WayMm),
                way.Net,
                Kept(way, _endMm, _narrowing, zone),
                Length(_endMm, _narrowing, zone)
            );
        }
        var reached = LayeredWay.DepthMm(_front, voids, (sapwoodM2, a), (heartwoodM2, _endMm), _narrowing);
        var narrowing = _narrowing * a / _endMm;
        var isClosed = LayeredWay.IsClosed(sapwoodM2, heartwoodM2);
        var shell = isClosed
            ? _front.At(sapwoodM2, voids, a, narrowing)
            : _front.At(sapwoodM2, voids, _endMm, _narrowing);
        var core = _front.At(heartwoodM2, voids, _endMm - a, 1);
        var share = place.Own.ShareWithin(a);
        var beyond = reached >= a ? core.Net : 0;
        var (shellMm, zoneNarrowing) = isClosed ? (a, narrowing) : (_endMm, _narrowing);
        return Even(
            reached >= _endMm ? place.WayMm : Math.Min(reached, place.WayMm),
            share * shell.Net + (1 - share) * beyond,
            Kept(shell, shellMm, zoneNarrowing, Math.Min(zone, a))
                + (zone > a && reached > a ? Kept(core, _endMm - a, 1, zone - a) : 0),
            Length(shellMm, zoneNarrowing, Math.Min(zone, a)) + (zone > a ? Length(_endMm - a, 1, zone - a) : 0)
        );
    }

    private static Filled Even(double depthMm, double netShare, double inZoneMm, double zoneMm) =>
        new(depthMm, depthMm, depthMm, netShare, inZoneMm, zoneMm);

    // Solution kept within a depth, as the length of face-wide voids that it fills; and the length of those voids.
    private static double Kept(in WayReading way, double endMm, double narrowing, double depthMm) =>
        way.KeptWithin(depthMm / endMm) * Length(endMm, narrowing, endMm);

    private static double Length(double endMm, double narrowing, double depthMm)
    {
        var depth = Math.Min(depthMm, endMm);
        return depth - narrowing * depth * depth / (2 * endMm);
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
