using Alburnum.Impregnation.Incising;
using Alburnum.Measures;

namespace Alburnum.Impregnation.Prediction;

/// <summary>Treats one drawn piece after another.</summary>
internal sealed class PieceTreatment
{
    private readonly PredictionQuestion _question;
    private readonly FrontTable _solution;

    // Where the product stays that the solution brings; null where it goes as far as the solution.
    private readonly FrontTable? _product;
    private readonly IncisedReach? _sapwoodReach;
    private readonly IncisedReach? _heartwoodReach;
    private readonly LongWays _longWays;
    private readonly DrawnPiece _piece;
    private readonly DrawnWood[] _wood;
    private readonly LaidWay[] _laid;

    // From a face to where the fronts of the whole piece meet, and how much of its breadth is lost by then.
    private readonly double _endMm;
    private readonly double _narrowing;
    private readonly double _areaMm2;
    private readonly double _breadthMm;
    private readonly double _zoneMm2;

    // Permeability straight in from each place over that across the grain in the mean: of sapwood, of heartwood.
    private readonly (double Sapwood, double Heartwood)[] _inwards;

    public PieceTreatment(PredictionQuestion question, FrontTable solution, FrontTable? product, int placesPerFace)
    {
        (_question, _solution, _product) = (question, solution, product);
        Places = SectionPositions.Around(question.Section, question.Log, placesPerFace);
        _inwards =
        [
            .. Places.Select(place =>
                (question.Sapwood.InwardsTimes(place.RadialShare), question.Heartwood.InwardsTimes(place.RadialShare))
            ),
        ];
        _areaMm2 = Places.Sum(place => place.Own.AreaMm2);
        _breadthMm = Places.Sum(place => place.Own.BreadthMm);
        _zoneMm2 = Places.Sum(ZoneMm2);
        _endMm = question.Section.ThicknessMm / 2;
        // A breadth that falls evenly encloses the section's area: 1 for round and square, towards 0 for a plank.
        _narrowing = Math.Clamp(2 * (1 - question.Section.AreaMm2 / (question.Section.PerimeterMm * _endMm)), 0, 1);
        if (question.Incising is { } pattern)
        {
            _sapwoodReach = new IncisedReach(pattern, question.Sapwood.Directions.LongitudinalToLateral);
            _heartwoodReach = new IncisedReach(pattern, question.Heartwood.Directions.LongitudinalToLateral);
        }
        _longWays = LongWays.Of(question.Section, Places, _endMm);
        _piece = new DrawnPiece(new double[Places.Count], new double[Places.Count]);
        (_wood, _laid) = (new DrawnWood[Places.Count], new LaidWay[Places.Count]);
    }

    public IReadOnlyList<SectionPosition> Places { get; }

    /// <summary>The next piece. The same object each time: read it before asking again.</summary>
    public DrawnPiece Next(SeededRandom random, double batchSapwood, double batchHeartwood)
    {
        Draw(random, batchSapwood, batchHeartwood);
        for (var i = 0; i < Places.Count; i++)
            _laid[i] = Laid(_solution, Places[i], _wood[i]);
        _longWays.Settle(_laid);
        double least = double.MaxValue,
            sum = 0,
            border = 0,
            net = 0,
            kept = 0,
            inZone = 0;
        for (var i = 0; i < Places.Count; i++)
        {
            var place = Places[i];
            var filled = At(i);
            _piece.CoreMm[i] = filled.CoreMm;
            _piece.BorderMm[i] = filled.BorderMm;
            least = Math.Min(least, filled.BorderMm);
            sum += filled.MeanMm * place.Own.BreadthMm;
            border += filled.BorderMm * place.Own.BreadthMm;
            net += filled.NetMm2;
            kept += filled.KeptMm2;
            inZone += filled.InZoneMm2;
        }
        _piece.LeastMm = least;
        _piece.MeanMm = sum / _breadthMm;
        _piece.MeanBorderMm = border / _breadthMm;
        _piece.UptakeLPerM3 = 1000 * _question.VoidFraction * net / _areaMm2;
        _piece.KeptLPerM3 = 1000 * _question.VoidFraction * kept / _areaMm2;
        _piece.ZoneLPerM3 = 1000 * _question.VoidFraction * inZone / _zoneMm2;
        return _piece;
    }

    private void Draw(SeededRandom random, double batchSapwood, double batchHeartwood)
    {
        var sapwood = Drawn(_question.Sapwood, batchSapwood, random.NextNormal());
        var heartwood = Drawn(_question.Heartwood, batchHeartwood, random.NextNormal());
        for (var i = 0; i < _wood.Length; i++)
        {
            var here = random.NextNormal();
            var (times1, times2) = _inwards[i];
            _wood[i] = new(
                times1 * sapwood * Math.Exp(_question.Sapwood.WithinLnSpread * here),
                times2 * heartwood * Math.Exp(_question.Heartwood.WithinLnSpread * here),
                _question.Incising is null ? 0 : random.NextDouble()
            );
        }
    }

    // Permeability of sapwood and heartwood straight in from a place, m²; where between the cuts a core is taken there.
    private readonly record struct DrawnWood(double SapwoodM2, double HeartwoodM2, double Where);

    // Depth of a core, of the border between the cuts and on average; what the place's own strip holds.
    private readonly record struct Filled(
        double CoreMm,
        double BorderMm,
        double MeanMm,
        double NetMm2,
        double KeptMm2,
        double InZoneMm2
    );

    private Filled At(int i)
    {
        var (place, wood, solution) = (Places[i], _wood[i], _laid[i]);
        var plain = _product is null ? solution : Product(_product, place, wood, solution);
        // Where nothing got in at the face, there is nothing to share out between the cuts.
        if (_sapwoodReach is null || _heartwoodReach is null || solution.DepthMm <= 0)
            return new(plain.DepthMm, plain.DepthMm, plain.DepthMm, plain.NetMm2, plain.KeptMm2, plain.InZoneMm2);
        // Cuts that go through the sapwood open the heartwood: its own reach decides there.
        var open = place.SapwoodMm < _heartwoodReach.Pattern.DepthMm;
        var reach = open ? _heartwoodReach : _sapwoodReach;
        var (more, moreInZone) = Opened(reach, place, solution, Across(_solution));
        var across = _product is null ? Across(_solution) : Across(_product);
        var kept = Math.Min(more * plain.KeptMm2, place.Own.AreaMm2);
        return new(
            Deeper(reach.CoreMm(across, wood.Where)),
            Deeper(reach.UnbrokenMm(across)),
            Deeper(reach.MeanMm(across, place.WayMm)),
            Math.Min(more * plain.NetMm2, place.Own.AreaMm2 * (1 - _question.WaterShare)),
            kept,
            Math.Min(kept, moreInZone * plain.InZoneMm2)
        );

        double Across(FrontTable table) =>
            table.DepthMm(open ? wood.HeartwoodM2 : wood.SapwoodM2, _question.VoidFraction, _endMm);

        double Deeper(double depthMm) => Math.Max(plain.DepthMm, Math.Min(place.WayMm, depthMm));
    }

    // How many times as much comes in at a place for the cuts, and into its zone: the solution decides, wherever its product stays.
    private (double All, double InZone) Opened(
        IncisedReach reach,
        SectionPosition place,
        LaidWay solution,
        double acrossMm
    )
    {
        var (own, zone) = (place.Own, ZoneMm(place));
        var mean = Math.Max(solution.DepthMm, Math.Min(place.WayMm, reach.MeanMm(acrossMm, place.WayMm)));
        // Between the cuts the wood is as full as it is under the face, and never fuller than full.
        var all = own.AreaWithin(mean) / own.AreaWithin(solution.DepthMm);
        var inZone = Math.Max(1, reach.MeanMm(acrossMm, zone) / Math.Min(solution.DepthMm, zone));
        return (
            solution.KeptMm2 > 0 ? Math.Min(all, own.AreaMm2 / solution.KeptMm2) : all,
            solution.InZoneMm2 > 0 ? Math.Min(inZone, ZoneMm2(place) / solution.InZoneMm2) : inZone
        );
    }

    private double ZoneMm(SectionPosition place) =>
        Math.Min(place.WayMm, _question.ZoneDepthMm ?? (place.SapwoodMm > 0 ? place.SapwoodMm : place.WayMm));

    private double ZoneMm2(SectionPosition place) => place.Own.AreaWithin(ZoneMm(place));

    private LaidWay Laid(FrontTable table, SectionPosition place, DrawnWood wood)
    {
        var (voids, a, strip) = (_question.VoidFraction, place.SapwoodMm, place.Own);
        var shell = Shell(table, place, wood);
        if (a <= 0 || a >= _endMm)
            return shell with { DepthMm = Whole(place, LayeredWay.Whole(shell.DepthMm / _endMm, _endMm)) };
        var reached = LayeredWay.DepthMm(table, voids, (wood.SapwoodM2, a), (wood.HeartwoodM2, _endMm), _narrowing);
        if (reached < a)
            return shell with { DepthMm = Math.Min(reached, place.WayMm) };
        var way = table.At(wood.HeartwoodM2, voids, _endMm - a, 1);
        var (inZone, kept) = new Lane(a, _endMm - a, 1).Lay(way, strip, ZoneMm(place), strip.EndMm);
        var ownWater = (way.Net - way.KeptWithin(1)) * (strip.AreaMm2 - strip.AreaWithin(a));
        return new(
            Whole(place, reached),
            shell.NetMm2 + kept + ownWater,
            shell.KeptMm2 + kept,
            shell.InZoneMm2 + inZone
        );
    }

    // What the first kind of wood on the way in holds.
    private LaidWay Shell(FrontTable table, SectionPosition place, DrawnWood wood)
    {
        var (a, strip) = (place.SapwoodMm, place.Own);
        var (way, lane) = First(table, place, wood);
        var to = Math.Min(a > 0 ? Math.Min(a, lane.LengthMm) : lane.LengthMm, strip.EndMm);
        var (inZone, kept) = lane.Lay(way, strip, ZoneMm(place), to);
        var ownWater = (way.Net - way.KeptWithin(1)) * strip.AreaWithin(to);
        return new(way.Reached * lane.LengthMm, kept + ownWater, kept, inZone);
    }

    // The way through the first kind of wood. Before heartwood that is closed the fronts of the sapwood end; into open heartwood they go on.
    private (WayReading Way, Lane Lane) First(FrontTable table, SectionPosition place, DrawnWood wood)
    {
        var a = place.SapwoodMm;
        var ends = a > 0 && a < _endMm && LayeredWay.IsClosed(wood.SapwoodM2, wood.HeartwoodM2);
        var lane = ends ? new Lane(0, a, _narrowing * a / _endMm) : new Lane(0, _endMm, _narrowing);
        var m2 = a <= 0 ? wood.HeartwoodM2 : wood.SapwoodM2;
        return (table.At(m2, _question.VoidFraction, lane.LengthMm, lane.Narrowing), lane);
    }

    // As much product stays for each part of the solution that does as on the way through the first wood, and as near to the face.
    private LaidWay Product(FrontTable table, SectionPosition place, DrawnWood wood, LaidWay solution)
    {
        var ((way, lane), (carrier, _)) = (First(table, place, wood), First(_solution, place, wood));
        var depth = Math.Min(solution.DepthMm, Laid(table, place, wood).DepthMm);
        var (product, liquid) = (way.KeptWithin(1), carrier.KeptWithin(1));
        // Where the wood gave all solution back, the walls alone hold what is left.
        if (solution.KeptMm2 <= 0 || liquid <= 0)
        {
            var (inZone, all) = lane.Lay(way, place.Own, ZoneMm(place), Math.Min(lane.LengthMm, place.Own.EndMm));
            return new(depth, all, all, inZone);
        }
        // No more solution came into the strip than fills it.
        var kept = Math.Min(solution.KeptMm2 * product / liquid, place.Own.AreaMm2);
        var shareInZone = product > 0 ? way.KeptWithin(ZoneMm(place) / lane.LengthMm) / product : 0;
        return new(depth, kept, kept, kept * Math.Max(shareInZone, solution.InZoneMm2 / solution.KeptMm2));
    }

    // Fronts that fill the half thickness have met: the whole way is filled. How far a longer way is, its neighbours tell.
    private double Whole(SectionPosition place, double depthMm) =>
        depthMm >= _endMm ? place.WayMm : Math.Min(depthMm, place.WayMm);

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

    public double KeptLPerM3 { get; set; }

    public double ZoneLPerM3 { get; set; }
}
