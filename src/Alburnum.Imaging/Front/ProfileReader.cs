using Alburnum.Imaging.Geometry;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Imaging.Front;

/// <summary>Turns fronts into a depth profile with its uncertainties.</summary>
internal static class ProfileReader
{
    /// <summary>Nearer to a corner than this the outline itself is in doubt, mm.</summary>
    private const double CornerMm = 1;

    /// <summary>Reads the profile; null where no position is left to read.</summary>
    public static DepthProfile? Read(
        Section section,
        SectionPlan plan,
        IReadOnlyList<FaceFront> fronts,
        FrontDoubt doubt,
        Estimate bleedMm,
        double outlineUncertaintyMm,
        double scaleShare,
        double viewShare,
        Func<double, double> read,
        double stepMm
    )
    {
        var shape = Sharpest(fronts, bleedMm.Value, read);
        // Where in the blur the front lies is known to about a seventh of it.
        var blur = 0.15 * shape.BlurMm;
        var common = Math.Sqrt(
            (outlineUncertaintyMm * outlineUncertaintyMm)
                + (bleedMm.StandardUncertainty * bleedMm.StandardUncertainty)
                + (blur * blur)
        );
        var odd = OddWood.Columns(fronts);
        var faces = fronts.Select((f, k) => Face(f, odd[k], shape, common, viewShare, stepMm, plan)).ToList();
        // What the unknown pose does to one side it undoes on the other: little of it is left in the mean.
        var view = 0.3 * viewShare * MeanDepth(faces);
        var scale = scaleShare * MeanDepth(faces);
        var statistics = SectionDepth.Of(faces, Math.Sqrt((common * common) + (view * view) + (scale * scale)));
        if (statistics is null)
            return null;
        statistics = statistics with
        {
            MeanMm = Doubted(statistics.MeanMm, doubt.OfMeanMm(faces)),
            MinimumMm = Doubted(statistics.MinimumMm, doubt.OfMinimumMm(faces)),
            FifthPercentileMm = Doubted(statistics.FifthPercentileMm, doubt.OfMeanMm(faces)),
            MedianMm = Doubted(statistics.MedianMm, doubt.OfMeanMm(faces)),
        };
        var share = TreatedShare(plan, faces, fronts);
        var uShare = Math.Min(
            0.5,
            statistics.MeanMm.StandardUncertainty * plan.Faces.Sum(f => f.LengthMm) / section.AreaMm2
        );
        var doubted = faces
            .Select((face, f) => Doubted(face, fronts[f].Strip, column => doubt.AtMm(f, column)))
            .ToList();
        return new(section, doubted, statistics, new(share, uShare), null);
    }

    private static Estimate Doubted(Estimate estimate, double doubtMm) =>
        new(estimate.Value, double.Hypot(estimate.StandardUncertainty, doubtMm));

    private static FaceProfile Doubted(FaceProfile face, FaceStrip strip, Func<int, double> doubtMm) =>
        face with
        {
            StandardUncertaintyMm =
            [
                .. face.StandardUncertaintyMm.Select(
                    (u, i) =>
                        double.Hypot(u, doubtMm(Math.Min(strip.Columns - 1, (int)(face.PositionsMm[i] / strip.StepMm))))
                ),
            ],
        };

    private static double MeanDepth(List<FaceProfile> faces) =>
        faces.SelectMany(f => f.DepthMm).DefaultIfEmpty(0).Average();

    private static FaceProfile Face(
        FaceFront front,
        bool[] odd,
        FrontShape shape,
        double common,
        double viewShare,
        double stepMm,
        SectionPlan plan
    )
    {
        var strip = front.Strip;
        var count = Math.Max(1, (int)Math.Ceiling((strip.Face.LengthMm / stepMm) - 1e-9));
        var step = strip.Face.LengthMm / count;
        var positions = new double[count];
        var depths = new double[count];
        var uncertainties = new double[count];
        var excluded = new bool[count];
        for (var i = 0; i < count; i++)
        {
            var s = (i + 0.5) * step;
            var column = Math.Min(strip.Columns - 1, (int)(s / strip.StepMm));
            positions[i] = Math.Round(s, 4);
            var rough = front.DepthMm[column];
            if (rough < 0.75 || rough > plan.ReachMm - 1)
            {
                // At the face and in the middle there is no front to fit: the reading stands at the bound.
                depths[i] = rough < 0.75 ? 0 : plan.ReachMm;
                uncertainties[i] = Math.Sqrt((common * common) + 0.16);
            }
            else
            {
                var fit = FrontFit.At(front.Evidence, front.DepthMm, s, 0.8, shape);
                depths[i] = fit.DepthMm;
                var view = viewShare * fit.DepthMm;
                uncertainties[i] = Math.Sqrt(
                    (common * common) + (fit.UncertaintyMm * fit.UncertaintyMm) + (view * view)
                );
                excluded[i] = fit.Known < 0.35;
            }
            excluded[i] |= front.Hidden[column] || odd[column];
            excluded[i] |= !strip.Face.Closed && (s < CornerMm || s > strip.Face.LengthMm - CornerMm);
        }
        return new(strip.Face.Number, step, positions, depths, uncertainties, excluded, new double?[count]);
    }

    // The blur is the photograph's own: the value that fits all places together best.
    private static FrontShape Sharpest(IReadOnlyList<FaceFront> fronts, double bleedMm, Func<double, double> read)
    {
        FrontShape? best = null;
        var least = double.MaxValue;
        foreach (var blur in (double[])[0.12, 0.2, 0.3, 0.45, 0.65, 0.95])
        {
            var shape = new FrontShape(blur, bleedMm, read);
            double sum = 0;
            foreach (var front in fronts)
            {
                for (var i = 4; i < front.Strip.Columns; i += 24)
                {
                    if (front.Hidden[i] || front.DepthMm[i] < 1)
                        continue;
                    var fit = FrontFit.At(front.Evidence, front.DepthMm, front.Strip.S(i), 0.8, shape);
                    sum += fit.Error;
                }
            }
            if (sum < least)
                (least, best) = (sum, shape);
        }
        return best!;
    }

    private static double TreatedShare(SectionPlan plan, List<FaceProfile> faces, IReadOnlyList<FaceFront> fronts)
    {
        // Fronts corrected to the fitted depths, then counted on a lattice.
        var corrected = fronts.Select((f, k) => f with { DepthMm = Corrected(f, faces[k]) }).ToList();
        const int Across = 250;
        var cell = Math.Max(plan.WidthMm, plan.HeightMm) / Across;
        var (columns, rows) = ((int)Math.Ceiling(plan.WidthMm / cell), (int)Math.Ceiling(plan.HeightMm / cell));
        var deepestMm = corrected.Max(front => front.DepthMm.Max());
        long inside = 0;
        long treated = 0;
        for (var j = 0; j < rows; j++)
        {
            for (var i = 0; i < columns; i++)
            {
                var place = new PointMm((i + 0.5) * plan.WidthMm / columns, (j + 0.5) * plan.HeightMm / rows);
                var inwardMm = plan.InwardMm(place);
                if (inwardMm <= 0)
                    continue;
                inside++;
                if (inwardMm > deepestMm)
                    continue;
                foreach (var front in corrected)
                {
                    if (!front.Covers(place, 0))
                        continue;
                    treated++;
                    break;
                }
            }
        }
        return (double)treated / inside;
    }

    private static double[] Corrected(FaceFront front, FaceProfile face)
    {
        var depth = (double[])front.DepthMm.Clone();
        for (var i = 0; i < depth.Length; i++)
            depth[i] = face.DepthMm[Math.Min(face.DepthMm.Count - 1, (int)(front.Strip.S(i) / face.StepMm))];
        return depth;
    }
}
