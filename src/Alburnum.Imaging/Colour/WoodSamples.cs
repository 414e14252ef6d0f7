using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Rectification;

namespace Alburnum.Imaging.Colour;

/// <summary>Colours gathered on a coarse lattice over the section, face by face, column by column.</summary>
internal sealed class WoodSamples
{
    /// <summary>Nearer to the outline than this, colours are mixed with the background's, mm. Our own choice.</summary>
    public const double EdgeMm = 0.5;

    /// <summary>Some three thousand samples, whatever the size of the piece: so many columns round the section, of so many rows each. Our own choice.</summary>
    private const double Columns = 140;

    private const double Rows = 48;

    /// <summary>Distance between columns, and between rows, within which this holds, mm. Our own choice.</summary>
    private static readonly (double Least, double Most) StepMm = (0.5, 4);

    private static readonly (double Least, double Most) RowMm = (0.25, 2);

    /// <summary>Half the side of the patch that a sample is the mean of: a share of the rows' distance, and no more than so many pixels. Our own choice.</summary>
    private const double PatchShare = 0.5;

    private const int MostPatchPx = 2;

    /// <summary>Distance over which the area of a sample is taken along the face, mm. Any small one does.</summary>
    private const double AlongMm = 0.5;

    private WoodSamples(IReadOnlyList<FaceStrip> strips, int count)
    {
        Strips = strips;
        (L, U, V) = (new float[count], new float[count], new float[count]);
        (X, Y) = (new float[count], new float[count]);
        (Column, Row, Face) = (new int[count], new int[count], new int[count]);
        Weight = new float[count];
        DepthMm = new float[count];
        Treated = new sbyte[count];
    }

    public IReadOnlyList<FaceStrip> Strips { get; }

    public int Count => L.Length;

    /// <summary>Brightness, ln(red ⁄ green), ln(blue ⁄ green).</summary>
    public float[] L { get; }

    public float[] U { get; }

    public float[] V { get; }

    /// <summary>Place on the section, −1 to 1 across it.</summary>
    public float[] X { get; }

    public float[] Y { get; }

    public int[] Face { get; }

    public int[] Column { get; }

    public int[] Row { get; }

    public float[] DepthMm { get; }

    /// <summary>Area that the sample stands for, 1 on average; 0 where it is not to be used.</summary>
    public float[] Weight { get; }

    /// <summary>What the user said of the place: 1 treated, −1 untreated, 0 nothing.</summary>
    public sbyte[] Treated { get; }

    /// <summary>Gathers the samples, each the mean of a small patch.</summary>
    public static WoodSamples Gather(
        RectifiedSection drawn,
        SectionPlan plan,
        IReadOnlyList<(PointMm At, TouchKind Kind)> touches
    )
    {
        var perimeter = plan.Faces.Sum(f => f.LengthMm);
        var step = Math.Clamp(perimeter / Columns, StepMm.Least, StepMm.Most);
        var row = Math.Clamp(plan.ReachMm / Rows, RowMm.Least, RowMm.Most);
        var strips = plan.Faces.Select(f => FaceStrip.Over(plan, f, step, row)).ToList();
        var count = strips.Sum(s => s.ReachRows.Sum());
        var samples = new WoodSamples(strips, count);
        var patch = Math.Clamp((int)(PatchShare * row * drawn.PxPerMm), 0, MostPatchPx);
        var n = 0;
        for (var f = 0; f < strips.Count; f++)
        {
            var strip = strips[f];
            for (var i = 0; i < strip.Columns; i++)
            {
                for (var j = 0; j < strip.ReachRows[i]; j++, n++)
                {
                    var place = strip.Face.At(strip.S(i), strip.T(j));
                    samples.Take(n, drawn, place, patch);
                    samples.X[n] = (float)((2 * place.X / plan.WidthMm) - 1);
                    samples.Y[n] = (float)((2 * place.Y / plan.HeightMm) - 1);
                    (samples.Face[n], samples.Column[n], samples.Row[n]) = (f, i, j);
                    samples.DepthMm[n] = (float)strip.T(j);
                    var inner = strip.Face.At(strip.S(i) + AlongMm, strip.T(j));
                    var area = double.Hypot(inner.X - place.X, inner.Y - place.Y) / AlongMm;
                    samples.Weight[n] = strip.T(j) < EdgeMm ? 0 : (float)Math.Min(1, area);
                    foreach (var (at, kind) in touches)
                    {
                        if (double.Hypot(at.X - place.X, at.Y - place.Y) > Touch.AboutMm)
                            continue;
                        samples.Treated[n] = (sbyte)(
                            kind == TouchKind.Treated ? 1
                            : kind == TouchKind.Untreated ? -1
                            : 0
                        );
                        if (kind == TouchKind.LeaveOut)
                            samples.Weight[n] = 0;
                    }
                }
            }
        }
        return samples;
    }

    /// <summary>Points along a rough front, one for each column that it crosses.</summary>
    public IEnumerable<PointMm> FrontPoints(int[][] rows)
    {
        for (var f = 0; f < Strips.Count; f++)
        for (var i = 0; i < Strips[f].Columns; i++)
            if (rows[f][i] > 0 && rows[f][i] < Strips[f].ReachRows[i])
                yield return Strips[f].Face.At(Strips[f].S(i), rows[f][i] * Strips[f].RowMm);
    }

    /// <summary>Greatest depth of a rough front, mm.</summary>
    public double DeepestMm(int[][] rows)
    {
        double deepest = 0;
        for (var f = 0; f < Strips.Count; f++)
        for (var i = 0; i < Strips[f].Columns; i++)
            deepest = Math.Max(deepest, Math.Min(rows[f][i], Strips[f].ReachRows[i]) * Strips[f].RowMm);
        return deepest;
    }

    private void Take(int n, RectifiedSection drawn, PointMm place, int patch)
    {
        var (fx, fy) = drawn.Index(place);
        var x = Math.Clamp((int)Math.Round(fx), patch, drawn.Width - 1 - patch);
        var y = Math.Clamp((int)Math.Round(fy), patch, drawn.Height - 1 - patch);
        float r = 0;
        float g = 0;
        float b = 0;
        for (var dy = -patch; dy <= patch; dy++)
        {
            for (var dx = -patch; dx <= patch; dx++)
            {
                var i = 3 * (((y + dy) * drawn.Width) + x + dx);
                r += LogColour.LnLinear[drawn.Rgb[i]];
                g += LogColour.LnLinear[drawn.Rgb[i + 1]];
                b += LogColour.LnLinear[drawn.Rgb[i + 2]];
            }
        }
        float area = ((2 * patch) + 1) * ((2 * patch) + 1);
        L[n] = (r + g + b) / (3 * area);
        U[n] = (r - g) / area;
        V[n] = (b - g) / area;
    }
}
