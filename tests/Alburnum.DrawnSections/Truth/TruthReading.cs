namespace Alburnum.DrawnSections;

/// <summary>Reads the true depths off a scene's own fields, by the same rule that a reader of photographs must follow.</summary>
internal static class TruthReading
{
    private const double StepMm = 0.5;
    private const double MarchMm = 0.05;
    private const double AreaStepMm = 0.2;

    /// <summary>Untreated wood along a shorter stretch of the inward normal than this is a speck, and no front.</summary>
    private const double RunMm = 0.3;

    public static SectionTruth Of(SectionScene scene)
    {
        var front = MainColour(scene);
        var faces = scene.Shape.Faces.Select((_, face) => Face(scene, front, face)).ToList();
        var (treated, sapwood) = Shares(scene, front);
        return new(
            scene.Name,
            scene.Seed,
            scene.Shape.Name,
            scene.Shape.SizesMm,
            scene.Indicator.Name,
            scene.Grain.Timber.Name,
            scene.Lens.PixelsPerMm,
            scene.Lens.WidthPx,
            scene.Lens.HeightPx,
            scene.Orientation,
            [.. scene.Shape.Outline.Select(scene.Lens.Project)],
            faces,
            Statistics(faces),
            treated,
            sapwood
        );
    }

    /// <summary>Only the statistics of the depths.</summary>
    public static DepthTruth? DepthOf(SectionScene scene)
    {
        var front = MainColour(scene);
        return Statistics(scene.Shape.Faces.Select((_, face) => Face(scene, front, face)));
    }

    /// <summary>Where the main colour changes half-way: the dye that runs out of treated wood takes the front with it, a fainter halo does not.</summary>
    private static Front MainColour(SectionScene scene) =>
        new(scene.Shape, scene.Treatment, scene.Grain)
        {
            FartherMm = scene.Indicator.Treated.Cover > 0 ? scene.Spray.BleedMm : 0,
        };

    private static FaceTruth Face(SectionScene scene, Front front, int face)
    {
        var side = scene.Shape.Faces[face];
        var count = (int)Math.Floor(side.LengthMm / StepMm);
        var positions = new double[count];
        var depths = new double[count];
        var leftOut = new LeftOut[count];
        for (var k = 0; k < count; k++)
        {
            positions[k] = (k + 0.5) * StepMm;
            (depths[k], leftOut[k]) = Depth(scene, front, face, positions[k]);
        }
        return new(StepMm, positions, depths, leftOut);
    }

    private static (double DepthMm, LeftOut LeftOut) Depth(SectionScene scene, Front front, int face, double alongMm)
    {
        if (!scene.Shape.TreatedFaces[face])
            return (0, LeftOut.End);
        var side = scene.Shape.Faces[face];
        var from = side.At(alongMm);
        var inward = side.Inward(alongMm);
        var surface = scene.Shape.SurfaceMm(face, alongMm);
        // Just under the surface, so that a face line that grazes the outline does not decide.
        var low = surface + 0.01;
        if (IsRun(front, from, inward, low))
            return (0, Reason(scene, front, face, from, inward, surface));
        var high = low;
        while (true)
        {
            high += MarchMm;
            var x = from.X + inward.X * high;
            var y = from.Y + inward.Y * high;
            // Out on the other side; near its start a wavy surface may lie outside the ideal one.
            if (high > 2 && scene.Shape.RoughlyInsideMm(x, y) < 0)
                return (high - surface, LeftOut.End);
            if (front.At(x, y) < 0 && IsRun(front, from, inward, high))
                break;
            low = high;
        }
        for (var k = 0; k < 12; k++)
        {
            var middle = (low + high) / 2;
            if (front.At(from.X + inward.X * middle, from.Y + inward.Y * middle) < 0)
                high = middle;
            else
                low = middle;
        }
        return (low - surface, Reason(scene, front, face, from, inward, low));
    }

    // Whether untreated wood follows along the inward normal without a break.
    private static bool IsRun(Front front, Point from, Point inward, double depthMm)
    {
        for (var along = 0.0; along <= RunMm; along += MarchMm)
            if (front.At(from.X + inward.X * (depthMm + along), from.Y + inward.Y * (depthMm + along)) >= 0)
                return false;
        return true;
    }

    private static LeftOut Reason(SectionScene scene, Front front, int face, Point from, Point inward, double depthMm)
    {
        var end = from + inward * depthMm;
        // The field is above what this face alone would give: a neighbour has carried the line on.
        if (scene.Shape.TreatedFaces[face] && front.AtWithFace(end.X, end.Y, face).ByFace < -0.6)
            return LeftOut.End;
        for (var depth = 0.0; depth <= depthMm + 1; depth += 0.25)
        {
            var p = from + inward * depth;
            foreach (var blemish in scene.Grain.Blemishes)
            {
                switch (blemish)
                {
                    case Knot knot when knot.Reach(p.X, p.Y) < 1.2:
                        return LeftOut.Knot;
                    case Check check when check.OutsideMm(p.X, p.Y) is { } outside && outside < check.SoakMm + 0.4:
                        return LeftOut.Split;
                    case ResinPocket pocket when pocket.Reach(p.X, p.Y) < 1.2:
                        return LeftOut.Resin;
                    default:
                        break;
                }
            }
            if (scene.Thumb is { } thumb && thumb.InsideMm(p.X, p.Y) > -0.5)
                return LeftOut.Hidden;
        }
        if (scene.Indicator.Treated.Cover > 0 && scene.Spray.Amount(end.X, end.Y) < 0.2)
            return LeftOut.Hidden;
        return scene.Light.Mirrored(end.X, end.Y, 1) > 0.9f ? LeftOut.Hidden : LeftOut.No;
    }

    private static (double Treated, double? Sapwood) Shares(SectionScene scene, Front front)
    {
        double area = 0;
        double treated = 0;
        double sapwood = 0;
        double sapwoodTreated = 0;
        var half = scene.Shape.HalfExtent;
        for (var y = -half.Y + AreaStepMm / 2; y < half.Y; y += AreaStepMm)
        {
            for (var x = -half.X + AreaStepMm / 2; x < half.X; x += AreaStepMm)
            {
                if (scene.Shape.RoughlyInsideMm(x, y) <= 0)
                    continue;
                area++;
                var share = Math.Clamp(front.At(x, y) / AreaStepMm + 0.5, 0, 1);
                treated += share;
                if (scene.Grain.SapwoodMm(x, y) > 0)
                {
                    sapwood++;
                    sapwoodTreated += share;
                }
            }
        }
        return (treated / area, sapwood > 0 ? sapwoodTreated / sapwood : null);
    }

    private static DepthTruth? Statistics(IEnumerable<FaceTruth> faces)
    {
        var depths = faces
            .SelectMany(face => face.DepthMm.Where((_, k) => face.LeftOut[k] == LeftOut.No))
            .Order()
            .ToList();
        return depths.Count == 0
            ? null
            : new(depths[0], Quantile(depths, 0.05), Quantile(depths, 0.5), depths.Average(), depths[^1]);
    }

    private static double Quantile(List<double> sorted, double share)
    {
        var place = share * (sorted.Count - 1);
        var low = (int)place;
        var high = Math.Min(low + 1, sorted.Count - 1);
        return sorted[low] + (place - low) * (sorted[high] - sorted[low]);
    }
}
