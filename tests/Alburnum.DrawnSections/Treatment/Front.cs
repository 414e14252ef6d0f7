namespace Alburnum.DrawnSections;

/// <summary>Where treated wood ends: a field over the section, positive in treated wood, about 1 per mm across the front.</summary>
public sealed class Front
{
    private const double TableStepMm = 0.1;
    private readonly SectionShape _shape;
    private readonly Treatment _treatment;
    private readonly EndGrain _grain;
    private readonly double[][] _depths;

    public Front(SectionShape shape, Treatment treatment, EndGrain grain)
    {
        _shape = shape;
        _treatment = treatment;
        _grain = grain;
        _depths = [.. shape.Faces.Select((_, face) => Table(face))];
    }

    /// <summary>How much farther in than preservative went its front is taken to lie, mm.</summary>
    public double FartherMm { get; init; }

    /// <summary>The field at a point of the section, mm.</summary>
    public double At(double x, double y) => AtWithFace(x, y).Field;

    /// <summary>The field, and how far this face alone would have it, mm: less where a neighbour's zone rules.</summary>
    public (double Field, double ByFace) AtWithFace(double x, double y, int face = 0)
    {
        var field = double.MinValue;
        var byFace = double.MinValue;
        var depthBelow = double.MaxValue;
        for (var k = 0; k < _depths.Length; k++)
        {
            var (along, depth) = _shape.Faces[k].Locate(x, y);
            depthBelow = Math.Min(depthBelow, depth);
            if (!_shape.TreatedFaces[k])
                continue;
            var own = DepthMm(k, along) - depth;
            if (k == face)
                byFace = own;
            field = k == 0 || field == double.MinValue ? own : Smooth.Max(field, own, 3);
        }
        if (Math.Abs(field) < 3 && _treatment.RingStepMm > 0)
            field += _treatment.RingStepMm * (_grain.Latewood(_grain.Ring(x, y), 0.1) - 0.4);
        if (_treatment.Ragged is { } ragged && Math.Abs(field) < 2 * ragged.ReachMm)
        {
            var by = ragged.At(x, y, _grain);
            (field, byFace) = (field + by, byFace + by);
        }
        foreach (var tongue in _treatment.Tongues)
            (field, byFace) = (tongue.In(field, x, y), tongue.In(byFace, x, y));
        var sapwood = _grain.SapwoodMm(x, y);
        if (sapwood < 3)
            field = Smooth.Min(field, Math.Max(sapwood, _treatment.HeartwoodDepthMm - depthBelow), 0.4);
        return (Blemished(field, x, y, depthBelow) + FartherMm, byFace + FartherMm);
    }

    /// <summary>How much latewood lies at a point, 0 to 1.</summary>
    public float Latewood(double x, double y) => _grain.Latewood(_grain.Ring(x, y), 0.1);

    private double Blemished(double field, double x, double y, double depthBelow)
    {
        foreach (var blemish in _grain.Blemishes)
        {
            switch (blemish)
            {
                case Knot knot when knot.Reach(x, y) is var reach && reach < 1.05:
                    // A knot drinks little: a third of the depth, fading in over its rim.
                    var inKnot = Math.Min(field, 0.35 * _treatment.DepthMm - depthBelow);
                    field += (inKnot - field) * (1 - Smooth.Step(0.85, 1.05, reach));
                    break;
                case Check { SoakMm: > 0 } check when check.OutsideMm(x, y) is { } outside:
                    field = Smooth.Max(field, check.SoakMm - outside, 0.3);
                    break;
                case ResinPocket pocket when pocket.Reach(x, y) is var reach && reach < 1.05:
                    field += (Math.Min(field, -0.5) - field) * (1 - Smooth.Step(0.9, 1.05, reach));
                    break;
                default:
                    break;
            }
        }
        return field;
    }

    private double DepthMm(int face, double alongMm)
    {
        var table = _depths[face];
        var place = Math.Clamp(alongMm / TableStepMm, 0, table.Length - 1.001);
        var k = (int)place;
        return table[k] + (place - k) * (table[k + 1] - table[k]);
    }

    /// <summary>Depths from the ideal face line: the true surface's own straying is added.</summary>
    private double[] Table(int face) =>
        [
            .. Enumerable
                .Range(0, (int)(_shape.Faces[face].LengthMm / TableStepMm) + 2)
                .Select(k => k * TableStepMm)
                .Select(s => _treatment.FaceDepthMm(_shape, face, s) + _shape.SurfaceMm(face, s)),
        ];
}
