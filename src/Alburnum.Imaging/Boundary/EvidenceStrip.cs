using Alburnum.Imaging.Colour;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Rectifying;

namespace Alburnum.Imaging.Boundary;

/// <summary>A face unrolled finely: what each cell's colour says. Column by column.</summary>
internal sealed class EvidenceStrip
{
    private const int SubColumns = 3;

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
        for (var i = 0; i < strip.Columns; i++)
        {
            for (var j = 0; j < strip.Rows; j++)
            {
                float evidence = 0;
                float share = 0;
                float known = 0;
                var (l, u, v) = (0f, 0f, 0f);
                for (var k = 0; k < SubColumns; k++)
                {
                    var s = (i + ((k + 0.5) / SubColumns)) * strip.StepMm;
                    var place = strip.Face.At(s, strip.T(j));
                    var (fx, fy) = drawn.Index(place);
                    var x = Math.Clamp((int)Math.Round(fx), 0, drawn.Width - 1);
                    var y = Math.Clamp((int)Math.Round(fy), 0, drawn.Height - 1);
                    var p = 3 * ((y * drawn.Width) + x);
                    var colour = LogColour.Of(drawn.Rgb[p], drawn.Rgb[p + 1], drawn.Rgb[p + 2]);
                    var fall = light.At(
                        (float)((2 * place.X / plan.WidthMm) - 1),
                        (float)((2 * place.Y / plan.HeightMm) - 1)
                    );
                    var entry = table.Look(colour.L - fall, colour.U, colour.V);
                    (l, u, v) = (l + colour.L - fall, u + colour.U, v + colour.V);
                    evidence += entry.Evidence;
                    share += entry.Share * entry.Known;
                    known += entry.Known;
                }
                var c = (i * strip.Rows) + j;
                result.Evidence[c] = strip.T(j) < WoodSamples.EdgeMm ? 0 : evidence / SubColumns;
                result.Share[c] = known > 0 ? share / known : 0.5f;
                result.Known[c] = known / SubColumns;
                result.Colour[c] = new(l / SubColumns, u / SubColumns, v / SubColumns);
                foreach (var (at, kind) in touches)
                {
                    var place = strip.Face.At(strip.S(i), strip.T(j));
                    if (double.Hypot(at.X - place.X, at.Y - place.Y) > 2)
                        continue;
                    result.Evidence[c] =
                        kind == TouchKind.Treated ? 20
                        : kind == TouchKind.Untreated ? -20
                        : 0;
                    if (kind == TouchKind.LeaveOut)
                        result.Known[c] = 0;
                }
            }
        }
        return result;
    }
}
