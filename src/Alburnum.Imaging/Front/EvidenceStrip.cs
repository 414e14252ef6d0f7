using Alburnum.Imaging.Colour;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Rectification;

namespace Alburnum.Imaging.Front;

/// <summary>A face unrolled finely: what each cell's colour says. Column by column.</summary>
internal sealed class EvidenceStrip
{
    /// <summary>Lines inward that each column is the mean of. Our own choice.</summary>
    private const int SubColumns = 2;

    private EvidenceStrip(FaceStrip strip)
    {
        Strip = strip;
        Evidence = new float[strip.Columns * strip.Rows];
        Share = new float[strip.Columns * strip.Rows];
        Known = new float[strip.Columns * strip.Rows];
        Colour = new LogColour[strip.Columns * strip.Rows];
    }

    public FaceStrip Strip { get; }

    /// <summary>Mean evidence of the cell.</summary>
    public float[] Evidence { get; }

    /// <summary>Mean treated share of the cell's colours.</summary>
    public float[] Share { get; }

    /// <summary>How much of the cell shows a colour of either zone, 0 to 1.</summary>
    public float[] Known { get; }

    /// <summary>Mean colour of the cell, its light evened.</summary>
    public LogColour[] Colour { get; }

    public static EvidenceStrip Of(
        FaceStrip strip,
        RectifiedSection drawn,
        SectionPlan plan,
        EvidenceTable table,
        IReadOnlyList<(PointMm At, TouchKind Kind)> touches
    )
    {
        var result = new EvidenceStrip(strip);
        var light = table.Zones.Light;
        var (toX, toY) = (2 / (float)plan.WidthMm, 2 / (float)plan.HeightMm);
        Span<(PointMm At, PointMm Step)> lines = stackalloc (PointMm, PointMm)[SubColumns];
        for (var i = 0; i < strip.Columns; i++)
        {
            for (var k = 0; k < SubColumns; k++)
                lines[k] = Inward(strip, (i + ((k + 0.5) / SubColumns)) * strip.StepMm);
            for (var j = 0; j < strip.Rows; j++)
            {
                float evidence = 0;
                float share = 0;
                float known = 0;
                var (l, u, v) = (0f, 0f, 0f);
                for (var k = 0; k < SubColumns; k++)
                {
                    var (at, step) = lines[k];
                    var place = new PointMm(at.X + ((j + 0.5) * step.X), at.Y + ((j + 0.5) * step.Y));
                    var (fx, fy) = drawn.Index(place);
                    var x = Math.Clamp((int)(fx + 0.5), 0, drawn.Width - 1);
                    var y = Math.Clamp((int)(fy + 0.5), 0, drawn.Height - 1);
                    var p = 3 * ((y * drawn.Width) + x);
                    var colour = LogColour.Of(drawn.Rgb[p], drawn.Rgb[p + 1], drawn.Rgb[p + 2]);
                    var even = colour.L - light.At(((float)place.X * toX) - 1, ((float)place.Y * toY) - 1);
                    var entry = table.Look(even, colour.U, colour.V);
                    (l, u, v) = (l + even, u + colour.U, v + colour.V);
                    evidence += entry.Evidence;
                    share += entry.Share * entry.Known;
                    known += entry.Known;
                }
                var c = (i * strip.Rows) + j;
                result.Evidence[c] = strip.T(j) < WoodSamples.EdgeMm ? 0 : evidence / SubColumns;
                result.Share[c] = known > 0 ? share / known : 0.5f;
                result.Known[c] = known / SubColumns;
                result.Colour[c] = new(l / SubColumns, u / SubColumns, v / SubColumns);
            }
        }
        foreach (var (at, kind) in touches)
            result.Mark(at, kind);
        return result;
    }

    /// <summary>How much less the plainest colour leans than one that could be of either zone, as a share. Our own choice.</summary>
    private const float PlainlyLess = 0.35f;

    /// <summary>The same strip with every cell leaning: towards treated for a positive amount, towards untreated for a negative one.</summary>
    /// <remarks>Colours that are plainly of one zone are not in doubt: the less plain a cell, the more it leans.</remarks>
    /// <param name="by">Added to the evidence of a cell whose colour could be of either zone; less where it is plainer.</param>
    public EvidenceStrip Leaning(float by)
    {
        var leaning = new EvidenceStrip(this);
        for (var c = 0; c < Evidence.Length; c++)
            leaning.Evidence[c] =
                Evidence[c] == 0
                    ? 0
                    : Evidence[c] + (by * (1 - (PlainlyLess * Math.Abs(Evidence[c]) / EvidenceTable.MostEvidence)));
        return leaning;
    }

    private EvidenceStrip(EvidenceStrip other)
    {
        (Strip, Share, Known, Colour) = (other.Strip, other.Share, other.Known, other.Colour);
        Evidence = new float[other.Evidence.Length];
    }

    /// <summary>Less of the colours of a band known than this, or a less treated look than this on average, and it is not plainly treated. Our own choice.</summary>
    private const float PlainlyTreated = 0.6f;

    /// <summary>Whether the colours of a column down to a depth are plainly those of treated wood.</summary>
    public bool IsTreatedTo(int column, double depthMm)
    {
        var (known, share, cells) = (0f, 0f, 0);
        for (var j = 0; j < Strip.Rows && Strip.T(j) < depthMm; j++)
        {
            if (Strip.T(j) < WoodSamples.EdgeMm)
                continue;
            var c = (column * Strip.Rows) + j;
            (known, share, cells) = (known + Known[c], share + (Known[c] * Share[c]), cells + 1);
        }
        return cells == 0 || (known >= PlainlyTreated * cells && share >= PlainlyTreated * known);
    }

    /// <summary>Evidence of so much, a part of the most that a cell can give, and wood is plainly treated. Our own choice.</summary>
    private const float PlainPart = 0.5f;

    /// <summary>Where a column is plainly treated again beyond a depth, two cells or more of it, mm; the strip's end where it is not.</summary>
    public double TreatedAgainMm(int column, double beyondMm)
    {
        var cells = Evidence.AsSpan(column * Strip.Rows, Strip.Rows);
        for (var j = (int)Math.Max(0, beyondMm / Strip.RowMm); j < cells.Length - 1; j++)
            if (Math.Min(cells[j], cells[j + 1]) > PlainPart * EvidenceTable.MostEvidence)
                return j * Strip.RowMm;
        return cells.Length * Strip.RowMm;
    }

    // The face's point at a place along it, and one row inward.
    private static (PointMm At, PointMm Step) Inward(FaceStrip strip, double s)
    {
        var (at, inner) = (strip.Face.At(s, 0), strip.Face.At(s, strip.RowMm));
        return (at, new(inner.X - at.X, inner.Y - at.Y));
    }

    private void Mark(PointMm touched, TouchKind kind)
    {
        for (var i = 0; i < Strip.Columns; i++)
        {
            for (var j = 0; j < Strip.Rows; j++)
            {
                var place = Strip.Face.At(Strip.S(i), Strip.T(j));
                if (double.Hypot(touched.X - place.X, touched.Y - place.Y) > Touch.AboutMm)
                    continue;
                var c = (i * Strip.Rows) + j;
                Evidence[c] =
                    kind == TouchKind.Treated ? TwoZones.HandEvidence
                    : kind == TouchKind.Untreated ? -TwoZones.HandEvidence
                    : 0;
                if (kind == TouchKind.LeaveOut)
                    Known[c] = 0;
            }
        }
    }
}
