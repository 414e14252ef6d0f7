using System.Numerics;
using Alburnum.Imaging.Colour;

namespace Alburnum.Imaging.Front;

/// <summary>One depth read to a fraction of a pixel.</summary>
/// <param name="DepthMm">Depth of the front.</param>
/// <param name="UncertaintyMm">Standard uncertainty from texture and noise alone.</param>
/// <param name="Error">Mean squared misfit.</param>
/// <param name="Known">Share of the colours about the front that belong to either zone.</param>
internal readonly record struct FittedDepth(double DepthMm, double UncertaintyMm, double Known, double Error);

/// <summary>Fits the shape of a front to the treated share along the inward normal, near a rough front.</summary>
/// <remarks>Its figures are our own choice.</remarks>
internal static class FrontFit
{
    /// <summary>The shape is laid over so much to either side of the rough front, mm.</summary>
    private const double WindowMm = 2.5;

    /// <summary>The front is looked for so far to either side of the rough one, mm.</summary>
    private const double SearchMm = 1.0;

    /// <summary>Within this of the rough front it is asked how many colours are known, mm.</summary>
    private const double NearMm = 1.0;

    /// <summary>Neighbouring rows and columns share texture: about one in so many is news.</summary>
    private const double AlikeRows = 9;

    /// <summary>No front is read more surely than this from texture and noise, mm.</summary>
    private const double LeastUncertaintyMm = 0.02;

    /// <summary>Weight, in rows, with which the levels are held to 0 (untreated) and 1 (treated).</summary>
    private const double Hold = 1.5;

    /// <summary>Cost of leaving the rough front, a row and mm²: it gathered evidence from a wider stretch, so leaving it must be worth while.</summary>
    private const double LeaveCost = 0.02;

    /// <summary>Less curvature of the cost than this, or less weight, is none.</summary>
    private const double Least = 1e-9;

    private const int Trials = (int)(2 * SearchMm / FrontShape.StepMm) + 1;

    /// <summary>Fits at one place, from the columns within a distance of it, each laid with its rough front at the same height.</summary>
    public static FittedDepth At(
        EvidenceStrip strip,
        ReadOnlySpan<double> rough,
        double s,
        double halfWidthMm,
        FrontShape shape
    )
    {
        var (layout, rowMm) = (strip.Strip, strip.Strip.RowMm);
        var window = (int)(WindowMm / rowMm);
        Span<double> value = stackalloc double[(2 * window) + 1];
        Span<double> weight = stackalloc double[(2 * window) + 1];
        var here = Math.Clamp(s / layout.StepMm - 0.5, 0, layout.Columns - 1);
        var (columns, offset) = Gather(strip, rough, here, halfWidthMm, value, weight);
        // Row k stands (k + ½)·row from the rough front, but for the rounding to whole rows.
        var roughHere = Interpolate(rough, here, layout.Face.Closed);
        var shift = columns > 0 ? offset / columns : 0;
        var (best, error, second) = Search(value, weight, window, rowMm, shape);
        double known = 0;
        var near = (int)(NearMm / rowMm);
        for (var k = -near; k <= near; k++)
            known += weight[k + window] / Math.Max(Least, columns) / ((2 * near) + 1);
        var u = second > Least ? Math.Sqrt(AlikeRows * error / second) : SearchMm;
        return new(
            Math.Max(0, roughHere + shift + best),
            Math.Clamp(u, LeastUncertaintyMm, SearchMm),
            Math.Min(1, known),
            error
        );
    }

    // Mean treated share of each row about the front, its weight, how many columns it is from, and what rounding to whole rows has moved them by.
    private static (double Columns, double Offset) Gather(
        EvidenceStrip strip,
        ReadOnlySpan<double> rough,
        double here,
        double halfWidthMm,
        Span<double> value,
        Span<double> weight
    )
    {
        var layout = strip.Strip;
        var (rowMm, window) = (layout.RowMm, value.Length / 2);
        value.Clear();
        weight.Clear();
        var low = (int)Math.Floor(here - (halfWidthMm / layout.StepMm));
        var high = (int)Math.Ceiling(here + (halfWidthMm / layout.StepMm));
        double columns = 0;
        double offset = 0;
        for (var raw = low; raw <= high; raw++)
        {
            var i = raw;
            if (layout.Face.Closed)
                i = (i % layout.Columns + layout.Columns) % layout.Columns;
            else if (i < 0 || i >= layout.Columns)
                continue;
            var share = 1 - (Math.Abs(raw - here) * layout.StepMm / (halfWidthMm + layout.StepMm));
            if (share <= 0)
                continue;
            var centre = (int)Math.Round(rough[i] / rowMm);
            columns += share;
            offset += share * ((centre * rowMm) - rough[i]);
            for (var k = -window; k <= window; k++)
            {
                var j = centre + k;
                if (j < 0 || j >= layout.Rows || layout.T(j) < WoodSamples.EdgeMm)
                    continue;
                var c = (i * layout.Rows) + j;
                var w = share * strip.Known[c];
                value[k + window] += w * strip.Share[c];
                weight[k + window] += w;
            }
        }
        for (var k = 0; k < value.Length; k++)
            if (weight[k] > 0)
                value[k] /= weight[k];
        return (columns, offset);
    }

    private static (double Best, double Error, double Second) Search(
        ReadOnlySpan<double> value,
        ReadOnlySpan<double> weight,
        int window,
        double rowMm,
        FrontShape shape
    )
    {
        Span<double> cost = stackalloc double[Trials];
        Span<double> sf = stackalloc double[Trials];
        Span<double> sff = stackalloc double[Trials];
        Span<double> sfy = stackalloc double[Trials];
        double sw = 0,
            sy = 0,
            syy = 0;
        sf.Clear();
        sff.Clear();
        sfy.Clear();
        for (var k = 0; k < value.Length; k++)
        {
            var (y, w) = (value[k], weight[k]);
            if (w == 0)
                continue;
            (sw, sy, syy) = (sw + w, sy + (w * y), syy + (w * y * y));
            // The shape with its front at every trial, farthest outward first.
            Tally(shape.Along(((k - window + 0.5) * rowMm) + SearchMm, Trials), w, y, sf, sff, sfy);
        }
        if (sw <= 0)
            return (0, 1, 0);
        for (var n = 0; n < Trials; n++)
        {
            var at = (n * FrontShape.StepMm) - SearchMm;
            cost[n] = Misfit(sw, sy, syy, (sf[n], sff[n], sfy[n])) + (LeaveCost * sw * at * at);
        }
        var best = 0;
        for (var n = 1; n < Trials; n++)
            if (cost[n] < cost[best])
                best = n;
        var (move, second) = Parabola(cost, best);
        return ((best * FrontShape.StepMm) - SearchMm + move, Math.Max(0, cost[best]) / sw, second);
    }

    // Levels a (untreated) and a + c (treated) by least squares; the misfit that they leave.
    private static double Misfit(double sw, double sy, double syy, (double F, double FF, double FY) shape)
    {
        var (sf, sff, sfy) = shape;
        var (a11, a12, a22, b1, b2) = (sw + Hold, sf, sff + Hold, sy, sfy + Hold);
        var det = (a11 * a22) - (a12 * a12);
        var a = ((b1 * a22) - (b2 * a12)) / det;
        var c = ((a11 * b2) - (a12 * b1)) / det;
        return syy
            - (2 * a * sy)
            - (2 * c * sfy)
            + (a * a * sw)
            + (2 * a * c * sf)
            + (c * c * sff)
            + (Hold * ((a * a) + ((c - 1) * (c - 1))));
    }

    // How far the least lies from the best trial, mm, by a parabola through its neighbours; half the cost's second derivative there.
    private static (double MoveMm, double HalfBend) Parabola(ReadOnlySpan<double> cost, int best)
    {
        if (best <= 0 || best >= cost.Length - 1)
            return (0, 0);
        var (p, q, r) = (cost[best - 1], cost[best], cost[best + 1]);
        var bend = (p - (2 * q) + r) / (FrontShape.StepMm * FrontShape.StepMm);
        var move = bend > 0 ? Math.Clamp((p - r) / (2 * (p - (2 * q) + r)), -0.5, 0.5) * FrontShape.StepMm : 0;
        return (move, bend / 2);
    }

    /// <summary>Adds w·f, w·f² and w·f·y to three sums for each of many f.</summary>
    internal static void Tally(
        ReadOnlySpan<double> f,
        double w,
        double y,
        Span<double> sf,
        Span<double> sff,
        Span<double> sfy
    )
    {
        var (ws, ys) = (new Vector<double>(w), new Vector<double>(y));
        var n = 0;
        for (; n <= f.Length - Vector<double>.Count; n += Vector<double>.Count)
        {
            var fs = new Vector<double>(f[n..]);
            var wf = ws * fs;
            (new Vector<double>(sf[n..]) + wf).CopyTo(sf[n..]);
            (new Vector<double>(sff[n..]) + (wf * fs)).CopyTo(sff[n..]);
            (new Vector<double>(sfy[n..]) + (wf * ys)).CopyTo(sfy[n..]);
        }
        TallyPlainly(f[n..], w, y, sf[n..], sff[n..], sfy[n..]);
    }

    /// <summary>The same one by one: the last few of <see cref="Tally"/>, and what it is compared with in tests.</summary>
    internal static void TallyPlainly(
        ReadOnlySpan<double> f,
        double w,
        double y,
        Span<double> sf,
        Span<double> sff,
        Span<double> sfy
    )
    {
        for (var n = 0; n < f.Length; n++)
        {
            sf[n] += w * f[n];
            sff[n] += w * f[n] * f[n];
            sfy[n] += w * f[n] * y;
        }
    }

    private static double Interpolate(ReadOnlySpan<double> rough, double at, bool closed)
    {
        var i = (int)Math.Floor(at);
        var next = closed ? (i + 1) % rough.Length : Math.Min(i + 1, rough.Length - 1);
        return rough[i] + ((at - i) * (rough[next] - rough[i]));
    }
}
