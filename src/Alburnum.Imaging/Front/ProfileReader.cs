using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Reading;
using Alburnum.Measures;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Imaging.Front;

/// <summary>What is uncertain of every depth of a section alike.</summary>
/// <param name="Outline">Standard uncertainty of the outline's place, mm, and where it comes from.</param>
/// <param name="DyeCreepMm">How far the half-way point of the indicator's main change of colour lies past the front, mm.</param>
/// <param name="DyeCreep">Who says so.</param>
/// <param name="SizeShare">Standard uncertainty of the section's size, as a share.</param>
/// <param name="Size">Who says so.</param>
/// <param name="PoseShare">Standard uncertainty of a depth on one side that a disc's pose leaves, as a share.</param>
internal sealed record DepthErrors(
    UncertaintyComponent Outline,
    Estimate DyeCreepMm,
    UncertaintyCause DyeCreep,
    double SizeShare,
    UncertaintyCause Size,
    double PoseShare
);

/// <summary>A depth profile with its budget.</summary>
internal sealed record ReadProfile(DepthProfile Profile, DepthBudget Budget);

/// <summary>Turns fronts into a depth profile with its uncertainties.</summary>
/// <param name="front">The front along every face.</param>
/// <param name="errors">What is uncertain of all depths alike.</param>
/// <param name="stepMm">Distance between positions, mm.</param>
/// <remarks>Its figures are our own choice.</remarks>
internal sealed class ProfileReader(SectionFront front, DepthErrors errors, double stepMm)
{
    /// <summary>Nearer to a corner than this the outline itself is uncertain, mm.</summary>
    private const double CornerMm = 1;

    /// <summary>Nearer to a corner than so many times the usual depth of the other faces, treated wood is theirs.</summary>
    private const double BesideBands = 2;

    /// <summary>A rough front nearer to the face, or to the middle, than this cannot be fitted, mm: the reading stands at the bound.</summary>
    private const double FaceMm = 0.75;

    private const double MiddleMm = 1;

    /// <summary>Standard uncertainty of a depth that stands at a bound, mm.</summary>
    private const double AtBoundMm = 0.4;

    /// <summary>Bands that meet within this follow one another; treated wood is followed inward in such steps, mm.</summary>
    private const double ThroughStepMm = 0.5;

    /// <summary>Columns so far to either side of a position are fitted together, mm.</summary>
    private const double HalfWidthMm = 0.8;

    /// <summary>With less of the colours about the front known than this share, a position is left out.</summary>
    private const double LeastKnown = 0.35;

    /// <summary>Blurs tried, standard deviation in mm: from sharp to hardly readable.</summary>
    private static readonly double[] BlursMm = [0.12, 0.2, 0.3, 0.45, 0.65, 0.95];

    /// <summary>Haloes tried: none, and from faint to nearly half the treated colour, from narrow to wide.</summary>
    private static readonly Halo[] Haloes =
    [
        .. from share in new[] { 0.15, 0.3, 0.45 }
        from widthMm in new[] { 0.4, 0.8, 1.6 }
        select new Halo(share, widthMm),
    ];

    /// <summary>The blur is looked for at every so many columns, the first so many from the face's end, where the front is so deep at least, mm.</summary>
    private const int BlurEvery = 24;

    private const int BlurFirst = 4;
    private const double BlurLeastMm = 1;

    /// <summary>Treated share is counted on so many cells along the longer side.</summary>
    private const int CellsAcross = 250;

    /// <summary>Treated share is not known worse than this.</summary>
    private const double MostShareUncertainty = 0.5;

    /// <summary>A face of a whole number of steps, but for rounding, has that many.</summary>
    private const double Rounding = 1e-9;

    /// <summary>Decimals of a position, mm.</summary>
    private const int PositionDecimals = 4;

    /// <summary>Reads the profile, where a position is left to read.</summary>
    /// <param name="section">The section's size.</param>
    public Outcome<ReadProfile, NothingLeft> Read(Section section)
    {
        var shape = Sharpest();
        var blurMm = DepthCauses.Blur.Of(shape.BlurMm);
        var haloMm = DepthCauses.Halo.Of(shape.Halo.HoldsMm);
        var alikeMm = UncertaintyBudget.Combine(
            errors.Outline.Contribution,
            errors.DyeCreepMm.StandardUncertainty,
            blurMm,
            haloMm
        );
        var odd = OddWood.Columns(front.Fronts);
        var faces = front.Fronts.Select((f, k) => Face(f, odd[k], shape, alikeMm)).ToList();
        var meanMm = faces.SelectMany(f => f.DepthMm).DefaultIfEmpty(0).Average();
        var common = new UncertaintyBudget([
            errors.Outline,
            new(errors.DyeCreep, errors.DyeCreepMm.StandardUncertainty),
            new(DepthCauses.Blur, blurMm),
            new(DepthCauses.Halo, haloMm),
            new(DepthCauses.Pose, DepthCauses.Pose.Of(errors.PoseShare * meanMm)),
            new(errors.Size, errors.SizeShare * meanMm),
            new(DepthCauses.Flattening, DepthCauses.Flattening.Of(meanMm)),
        ]);
        return SectionDepth.Of(faces, common.Combined) is { } statistics
            ? WithColours(section, faces, statistics, common, DepthCauses.LeastPlace.Of(shape.BlurMm))
            : new NothingLeft();
    }

    // What unclear colours leave uncertain, and which place is the least, is laid over everything else.
    private ReadProfile WithColours(
        Section section,
        List<FaceProfile> faces,
        DepthStatistics read,
        UncertaintyBudget common,
        double placeMm
    )
    {
        var unclear = new UnclearColours(front);
        var (ofMean, ofLeast) = (unclear.OfMeanMm(faces), unclear.OfMinimumMm(faces));
        var stretchesMm = DepthCauses.Stretches.Of(SpreadMm(faces));
        var statistics = read with
        {
            MeanMm = Widened(read.MeanMm, double.Hypot(ofMean, stretchesMm)),
            MinimumMm = Widened(read.MinimumMm, double.Hypot(ofLeast, placeMm)),
            FifthPercentileMm = Widened(read.FifthPercentileMm, ofMean),
            MedianMm = Widened(read.MedianMm, ofMean),
        };
        var perimeterMm = front.Plan.Faces.Sum(f => f.LengthMm);
        var share = new Estimate(
            TreatedShare(faces),
            Math.Min(MostShareUncertainty, statistics.MeanMm.StandardUncertainty * perimeterMm / section.AreaMm2)
        );
        var widened = faces
            .Select((face, f) => Widened(face, front.Fronts[f].Strip, column => unclear.AtMm(f, column)))
            .ToList();
        return new(
            new(section, widened, statistics, share, null),
            new(
                Budget(common, read.MeanMm, (0, stretchesMm, ofMean)),
                Budget(common, read.MinimumMm, (placeMm, 0, ofLeast))
            )
        );
    }

    private static UncertaintyBudget Budget(
        UncertaintyBudget common,
        Estimate read,
        (double LeastPlace, double Stretches, double Colours) ownMm
    ) =>
        new([
            .. common.Components,
            new(DepthCauses.LeastPlace, ownMm.LeastPlace),
            new(DepthCauses.Stretches, ownMm.Stretches),
            new(DepthCauses.Texture, UncertaintyBudget.Without(read.StandardUncertainty, common.Combined)),
            new(DepthCauses.Colours, ownMm.Colours),
        ]);

    // Standard deviation of depth along the faces, mm; 0 where no position is readable.
    private static double SpreadMm(List<FaceProfile> faces)
    {
        double[] depths = [.. faces.SelectMany(face => face.DepthMm.Where((_, i) => !face.Excluded[i]))];
        if (depths.Length == 0)
            return 0;
        var meanMm = depths.Average();
        return Math.Sqrt(depths.Average(depth => (depth - meanMm) * (depth - meanMm)));
    }

    private static Estimate Widened(Estimate estimate, double byMm) =>
        new(estimate.Value, double.Hypot(estimate.StandardUncertainty, byMm));

    private static FaceProfile Widened(FaceProfile face, FaceStrip strip, Func<int, double> byMm) =>
        face with
        {
            StandardUncertaintyMm =
            [
                .. face.StandardUncertaintyMm.Select(
                    (u, i) =>
                        double.Hypot(u, byMm(Math.Min(strip.Columns - 1, (int)(face.PositionsMm[i] / strip.StepMm))))
                ),
            ],
        };

    private FaceProfile Face(FaceFront of, bool[] odd, FrontShape shape, double alikeMm)
    {
        var strip = of.Strip;
        var count = Math.Max(1, (int)Math.Ceiling((strip.Face.LengthMm / stepMm) - Rounding));
        var step = strip.Face.LengthMm / count;
        var positions = new double[count];
        var depths = new Estimate[count];
        var excluded = new bool[count];
        var atLeast = new double?[count];
        var besideMm = BesideCornerMm(of);
        for (var i = 0; i < count; i++)
        {
            var s = (i + 0.5) * step;
            var column = Math.Min(strip.Columns - 1, (int)(s / strip.StepMm));
            positions[i] = Math.Round(s, PositionDecimals);
            (depths[i], excluded[i]) = Position(of, s, of.DepthMm[column], shape, alikeMm);
            var isOdd = odd[column] || !of.Evidence.IsTreatedTo(column, of.DepthMm[column]);
            if (of.Hidden[column] && !isOdd && Math.Min(s, strip.Face.LengthMm - s) >= besideMm)
            {
                atLeast[i] = Math.Max(of.DepthMm[column], ThroughMm(strip.Face, s));
                depths[i] = new(depths[i].Value, UncertaintyBudget.Combine(alikeMm, AtBoundMm));
            }
            excluded[i] |= of.Hidden[column] || odd[column];
            excluded[i] |= !strip.Face.Closed && (s < CornerMm || s > strip.Face.LengthMm - CornerMm);
        }
        return new(
            strip.Face.Number,
            step,
            positions,
            [.. depths.Select(depth => depth.Value)],
            [.. depths.Select(depth => depth.StandardUncertainty)],
            excluded,
            new double?[count]
        )
        {
            AtLeastMm = atLeast.Any(mm => mm is not null) ? atLeast : [],
        };
    }

    // Beside a corner the treated wood along the normal is the band of the face round the corner: it says nothing of this one, unless hardly any of it shows a front.
    private double BesideCornerMm(FaceFront of)
    {
        if (of.Strip.Face.Closed || 2 * of.Hidden.Count(isHidden => isHidden) > of.Strip.Columns)
            return 0;
        double[] others =
        [
            .. front
                .Fronts.Where(other => other != of)
                .SelectMany(other => other.DepthMm.Where((_, column) => !other.Hidden[column])),
        ];
        return others.Length > 0 ? (BesideBands * Quantiles.UpperMedian(others)) + CornerMm : 0;
    }

    // How far inward from a place on a face the bands of all faces follow one another, mm: to half the way to the other side at most.
    private double ThroughMm(PlanFace face, double s)
    {
        var mm = 0.0;
        while (
            front.Plan.InwardMm(face.At(s, mm + ThroughStepMm)) >= 0
            && IsCovered(face.At(s, mm), front.Fronts, ThroughStepMm)
        )
            mm += ThroughStepMm;
        var acrossMm = mm;
        while (front.Plan.InwardMm(face.At(s, acrossMm + ThroughStepMm)) >= 0)
            acrossMm += ThroughStepMm;
        return Math.Min(mm, acrossMm / 2);
    }

    private (Estimate DepthMm, bool IsUnknown) Position(
        FaceFront of,
        double s,
        double roughMm,
        FrontShape shape,
        double alikeMm
    )
    {
        var reachMm = front.Plan.ReachMm;
        if (roughMm < FaceMm || roughMm > reachMm - MiddleMm)
            return (new(roughMm < FaceMm ? 0 : reachMm, UncertaintyBudget.Combine(alikeMm, AtBoundMm)), false);
        var fit = FrontFit.At(of.Evidence, of.DepthMm, s, HalfWidthMm, shape);
        var u = UncertaintyBudget.Combine(
            alikeMm,
            fit.UncertaintyMm,
            errors.PoseShare * fit.DepthMm,
            errors.SizeShare * fit.DepthMm
        );
        return (new(Math.Max(0, fit.DepthMm - errors.DyeCreepMm.Value), u), fit.Known < LeastKnown);
    }

    // Blur and halo are the photograph's own: the values that fit all places together best.
    private FrontShape Sharpest()
    {
        var sharpest = BlursMm.Select(blur => Tried(blur, Halo.None)).MinBy(tried => tried.Misfit);
        return BlursMm
            .Where(blur => blur <= sharpest.Shape.BlurMm)
            .TakeLast(2)
            .SelectMany(blur => Haloes.Select(halo => Tried(blur, halo)))
            .Append(sharpest)
            .MinBy(tried => tried.Misfit)
            .Shape;
    }

    private (FrontShape Shape, double Misfit) Tried(double blurMm, Halo halo)
    {
        var shape = new FrontShape(blurMm, halo, front.Table.Discriminant.ShareOfMixture);
        double sum = 0;
        foreach (var of in front.Fronts)
        {
            for (var i = BlurFirst; i < of.Strip.Columns; i += BlurEvery)
            {
                if (of.Hidden[i] || of.DepthMm[i] < BlurLeastMm)
                    continue;
                sum += FrontFit.At(of.Evidence, of.DepthMm, of.Strip.S(i), HalfWidthMm, shape).Error;
            }
        }
        return (shape, sum);
    }

    // Fronts corrected to the fitted depths, then counted on a lattice.
    private double TreatedShare(List<FaceProfile> faces)
    {
        var plan = front.Plan;
        var corrected = front.Fronts.Select((f, k) => f with { DepthMm = Corrected(f, faces[k]) }).ToList();
        var cell = Math.Max(plan.WidthMm, plan.HeightMm) / CellsAcross;
        var (columns, rows) = ((int)Math.Ceiling(plan.WidthMm / cell), (int)Math.Ceiling(plan.HeightMm / cell));
        var deepestMm = corrected.Max(of => of.DepthMm.Max());
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
                if (inwardMm <= deepestMm && IsCovered(place, corrected))
                    treated++;
            }
        }
        return (double)treated / inside;
    }

    private static bool IsCovered(PointMm place, IReadOnlyList<FaceFront> fronts, double marginMm = 0)
    {
        foreach (var of in fronts)
            if (of.Covers(place, marginMm))
                return true;
        return false;
    }

    private static double[] Corrected(FaceFront front, FaceProfile face)
    {
        var depth = (double[])front.DepthMm.Clone();
        for (var i = 0; i < depth.Length; i++)
            depth[i] = face.DepthMm[Math.Min(face.DepthMm.Count - 1, (int)(front.Strip.S(i) / face.StepMm))];
        return depth;
    }
}
