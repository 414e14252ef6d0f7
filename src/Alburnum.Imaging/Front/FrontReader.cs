using Alburnum.Imaging.Colour;
using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Front;

/// <summary>The front along one face, column by column of its strip.</summary>
/// <param name="Evidence">The strip it was read from.</param>
/// <param name="DepthMm">Depth in each column, to whole rows.</param>
/// <param name="Hidden">True where the front lies inside another face's treated band, so that it cannot be seen.</param>
internal sealed record FaceFront(EvidenceStrip Evidence, double[] DepthMm, bool[] Hidden)
{
    public FaceStrip Strip => Evidence.Strip;

    /// <summary>Whether a place lies between this face and its front, grown by a margin.</summary>
    public bool Covers(PointMm place, double marginMm)
    {
        var (s, t) = Strip.Face.Locate(place);
        if (t < 0 || s < 0 || s > Strip.Face.LengthMm)
            return false;
        return t < DepthMm[Math.Min(Strip.Columns - 1, (int)(s / Strip.StepMm))] + marginMm;
    }
}

/// <summary>Finds the front of every face on the fine strips.</summary>
/// <remarks>Its figures are our own choice.</remarks>
internal static class FrontReader
{
    /// <summary>Turns in which each face's front is found anew beside the others'.</summary>
    private const int Turns = 2;

    /// <summary>Change of depth along the face that costs nothing, mm a mm: a slope of some 40° passes freely.</summary>
    private const double FreeSlope = 0.8;

    /// <summary>What each further row of change costs, in evidence, times the distance of columns in mm; and the most that any change costs.</summary>
    private const double SlopePrice = 2;

    private const double JumpPrice = 4;

    /// <summary>Shorter runs of untreated wood along the normal are specks, mm.</summary>
    private const double RunMm = 0.3;

    /// <summary>What a return to treated wood beyond a run costs, in evidence times mm inward: that of 0.3 mm of plain colour.</summary>
    private const double ReturnPrice = 1.2;

    /// <summary>A place is another face's where it lies within that one's front and this margin, mm.</summary>
    private const double MarginMm = 0.5;

    /// <summary>A front is hidden where the place so far beyond it is another face's, mm.</summary>
    private const double BeyondMm = 0.3;

    /// <summary>More evidence than a cell can give, for wood outside the face: no front lies there.</summary>
    private const float OutsideFace = 2 * EvidenceTable.MostEvidence;

    public static IReadOnlyList<FaceFront> Read(SectionPlan plan, IReadOnlyList<EvidenceStrip> strips) =>
        Read(plan, strips, (weighed, reach, face) => Along(strips[face], weighed, reach));

    /// <summary>The fronts of strips whose evidence leans, as they lie from those read without: a streak too narrow to be a shift of the front is none.</summary>
    /// <param name="plan">The section.</param>
    /// <param name="strips">Its faces, leaning.</param>
    /// <param name="from">The fronts as they were read.</param>
    public static IReadOnlyList<FaceFront> Shifted(
        SectionPlan plan,
        IReadOnlyList<EvidenceStrip> strips,
        IReadOnlyList<FaceFront> from
    ) => Read(plan, strips, (weighed, reach, face) => ShiftedAlong(strips[face], weighed, reach, from[face]));

    private static IReadOnlyList<FaceFront> Read(
        SectionPlan plan,
        IReadOnlyList<EvidenceStrip> strips,
        Func<float[], int[], int, FaceFront> along
    )
    {
        // First each face up to where another one is nearer; then all the way, leaving out what the others' bands explain.
        FaceFront[] fronts =
        [
            .. strips.Select((s, f) => along(Weighed(s, s.Strip.ReachRows, s.Evidence), s.Strip.ReachRows, f)),
        ];
        if (strips.Count == 1)
            return fronts;
        for (var turn = 0; turn < Turns; turn++)
        {
            var last = fronts;
            fronts =
            [
                .. strips.Select(
                    (s, f) =>
                    {
                        var full = Full(s.Strip, plan);
                        return along(Weighed(s, full, WithoutOthers(s, f, last)), full, f);
                    }
                ),
            ];
        }
        return [.. fronts.Select((front, f) => front with { Hidden = HiddenBy(front, f, fronts) })];
    }

    // Rows of each column that lie on the section at all.
    private static int[] Full(FaceStrip strip, SectionPlan plan)
    {
        var full = new int[strip.Columns];
        for (var i = 0; i < full.Length; i++)
        {
            full[i] = strip.Rows;
            while (full[i] > 0 && plan.InwardMm(strip.Face.At(strip.S(i), strip.T(full[i] - 1))) < 0)
                full[i]--;
        }
        return full;
    }

    private static float[] Weighed(EvidenceStrip strip, int[] reach, float[] evidence) =>
        FirstRun.Weigh(
            evidence,
            strip.Strip.Rows,
            reach,
            (int)Math.Ceiling(RunMm / strip.Strip.RowMm),
            (float)(ReturnPrice / strip.Strip.RowMm)
        );

    private static FaceFront Along(EvidenceStrip strip, float[] weighed, int[] reach)
    {
        var layout = strip.Strip;
        var slope = Slope(layout, (float)(JumpPrice / layout.StepMm));
        var rows = DepthPath.Find(weighed, layout.Rows, reach, layout.Face.Closed, slope);
        return new(strip, [.. rows.Select(r => r * layout.RowMm)], new bool[layout.Columns]);
    }

    // The columns are moved so that the front as it was read lies in one row: a path across them is a shift, and no change of it jumps.
    private static FaceFront ShiftedAlong(EvidenceStrip strip, float[] weighed, int[] reach, FaceFront from)
    {
        var layout = strip.Strip;
        int[] read = [.. from.DepthMm.Select(mm => (int)Math.Round(mm / layout.RowMm))];
        var deepest = read.Max();
        int[] outside = [.. read.Select(row => deepest - row)];
        var rows = layout.Rows + outside.Max();
        var moved = new float[layout.Columns * rows];
        for (var i = 0; i < layout.Columns; i++)
        {
            moved.AsSpan(i * rows, outside[i]).Fill(OutsideFace);
            weighed.AsSpan(i * layout.Rows, layout.Rows).CopyTo(moved.AsSpan((i * rows) + outside[i]));
        }
        int[] movedReach = [.. reach.Select((r, i) => r + outside[i])];
        var slope = Slope(layout, float.PositiveInfinity);
        var path = DepthPath.Find(moved, rows, movedReach, layout.Face.Closed, slope);
        return new(
            strip,
            [.. path.Select((row, i) => Math.Max(0, row - outside[i]) * layout.RowMm)],
            new bool[layout.Columns]
        );
    }

    private static SlopeCost Slope(FaceStrip layout, float jump) =>
        new(
            Math.Max(1, (int)Math.Round(FreeSlope * layout.StepMm / layout.RowMm)),
            (float)(SlopePrice / layout.StepMm),
            jump
        );

    private static float[] WithoutOthers(EvidenceStrip strip, int face, FaceFront[] fronts)
    {
        var layout = strip.Strip;
        var evidence = (float[])strip.Evidence.Clone();
        for (var i = 0; i < layout.Columns; i++)
        for (var j = layout.ReachRows[i]; j < layout.Rows; j++)
            if (CoveredByOther(layout.Face.At(layout.S(i), layout.T(j)), face, fronts))
                evidence[(i * layout.Rows) + j] = 0;
        return evidence;
    }

    private static bool[] HiddenBy(FaceFront front, int face, FaceFront[] fronts)
    {
        var hidden = new bool[front.Strip.Columns];
        for (var i = 0; i < hidden.Length; i++)
            hidden[i] = CoveredByOther(
                front.Strip.Face.At(front.Strip.S(i), front.DepthMm[i] + BeyondMm),
                face,
                fronts
            );
        return hidden;
    }

    private static bool CoveredByOther(PointMm place, int face, FaceFront[] fronts)
    {
        for (var f = 0; f < fronts.Length; f++)
            if (f != face && fronts[f].Covers(place, MarginMm))
                return true;
        return false;
    }
}
