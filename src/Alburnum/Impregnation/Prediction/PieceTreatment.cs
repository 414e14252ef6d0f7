using Alburnum.Impregnation.Incising;
using Alburnum.Measures;
using Alburnum.Timber;

namespace Alburnum.Impregnation.Prediction;

/// <summary>Treats one drawn piece after another with the sharp front.</summary>
internal sealed class PieceTreatment
{
    private readonly PredictionQuestion _question;
    private readonly QuickFront _front;
    private readonly IncisedReach? _sapwoodReach;
    private readonly IncisedReach? _heartwoodReach;
    private readonly DrawnPiece _piece;

    public PieceTreatment(PredictionQuestion question, QuickFront front, int placesPerFace)
    {
        _question = question;
        _front = front;
        Places = SectionPositions.Around(question.Section, question.Log, placesPerFace);
        if (question.Incising is { } pattern)
        {
            _sapwoodReach = new IncisedReach(pattern, question.Sapwood.LongitudinalToLateral);
            _heartwoodReach = new IncisedReach(pattern, question.Heartwood.LongitudinalToLateral);
        }
        _piece = new DrawnPiece(new double[Places.Count]);
    }

    /// <summary>The front of a question: one table serves every pattern and every piece.</summary>
    /// <remarks>A ring of sapwood on a dead core takes the flat front, which is the slower of the two.</remarks>
    public static QuickFront FrontOf(PredictionQuestion question) =>
        new(
            question.Schedule,
            question.Liquid,
            isRound: question.Section is RoundSection && question.Log.HeartwoodRadiusMm <= 0
        );

    public IReadOnlyList<SectionPosition> Places { get; }

    /// <summary>The next piece. The same object each time: read it before asking again.</summary>
    public DrawnPiece Next(SeededRandom random, double batchSapwood, double batchHeartwood)
    {
        var sapwood = Drawn(_question.Sapwood, batchSapwood, random.NextNormal());
        var heartwood = Drawn(_question.Heartwood, batchHeartwood, random.NextNormal());
        double least = double.MaxValue,
            sum = 0,
            kept = 0,
            inZone = 0,
            zoneLength = 0;
        for (var i = 0; i < Places.Count; i++)
        {
            var place = Places[i];
            var here = random.NextNormal();
            var k1 = sapwood * Math.Exp(_question.Sapwood.WithinLnSpread * here);
            var k2 = heartwood * Math.Exp(_question.Heartwood.WithinLnSpread * here);
            var depth = Depth(place, k1, k2);
            _piece.DepthMm[i] = depth;
            least = Math.Min(least, depth);
            sum += depth;
            var share = _front.KeptShare(place.SapwoodMm > 0 ? k1 : k2, _question.VoidFraction, place.WayMm);
            kept += share;
            var zone = Math.Min(
                place.WayMm,
                _question.ZoneDepthMm ?? (place.SapwoodMm > 0 ? place.SapwoodMm : place.WayMm)
            );
            inZone += Math.Min(depth, zone) * share;
            zoneLength += zone;
        }
        var fill = 1000 * _question.VoidFraction * (1 - AssumedVoids.TrappedAirShare);
        _piece.LeastMm = least;
        _piece.MeanMm = sum / Places.Count;
        _piece.UptakeLPerM3 = fill * kept / Places.Count * TreatedShare();
        _piece.ZoneLPerM3 = fill * inZone / zoneLength;
        return _piece;
    }

    private double Depth(SectionPosition place, double sapwoodM2, double heartwoodM2)
    {
        var plain =
            place.SapwoodMm <= 0
                ? _front.DepthMm(heartwoodM2, _question.VoidFraction, place.WayMm)
                : _front.DepthMm(sapwoodM2, place.SapwoodMm, heartwoodM2, _question.VoidFraction, place.WayMm);
        if (_sapwoodReach is null || _heartwoodReach is null)
            return plain;
        // Cuts that go through the sapwood open the heartwood: its own reach decides there.
        var open = place.SapwoodMm < _heartwoodReach.Pattern.DepthMm;
        var across = _front.DepthMm(open ? heartwoodM2 : sapwoodM2, _question.VoidFraction, place.WayMm);
        return Math.Min(place.WayMm, Math.Max(plain, (open ? _heartwoodReach : _sapwoodReach).UnbrokenMm(across)));
    }

    // Area within the depth of a face; faces share their corners.
    private double TreatedShare()
    {
        if (_question.Section is RoundSection round)
        {
            double ring = 0;
            foreach (var depth in _piece.DepthMm)
                ring += 1 - Math.Pow(1 - Math.Min(1, 2 * depth / round.DiameterMm), 2);
            return ring / Places.Count;
        }
        if (_question.Section is HalfRoundSection half)
        {
            double area = 0;
            var radius = half.DiameterMm / 2;
            var perSide = Places.Count / 2;
            for (var i = 0; i < Places.Count; i++)
            {
                var d = _piece.DepthMm[i];
                area += Places[i].Face == 1 ? Math.PI / perSide * d * (radius - d / 2) : half.DiameterMm / perSide * d;
            }
            return Math.Min(1, area / half.AreaMm2);
        }
        Span<double> face = stackalloc double[4];
        var perFace = Places.Count / 4;
        for (var i = 0; i < Places.Count; i++)
            face[i / perFace] += _piece.DepthMm[i] / (2 * Places[i].WayMm) / perFace;
        return 1 - Math.Max(0, 1 - face[0] - face[2]) * Math.Max(0, 1 - face[1] - face[3]);
    }

    private static double Drawn(PermeabilityLaw law, double batch, double piece) =>
        law.LateralMedianM2 * Math.Exp(law.BatchLnSpread * batch + law.PieceLnSpread * piece);
}

/// <summary>One drawn piece after treatment.</summary>
internal sealed class DrawnPiece(double[] depthMm)
{
    /// <summary>Depth at each place, mm.</summary>
    public double[] DepthMm { get; } = depthMm;

    public double LeastMm { get; set; }

    public double MeanMm { get; set; }

    public double UptakeLPerM3 { get; set; }

    public double ZoneLPerM3 { get; set; }
}
