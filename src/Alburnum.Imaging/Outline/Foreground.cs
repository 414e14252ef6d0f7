namespace Alburnum.Imaging.Outline;

/// <summary>What does not look like the picture's border: the largest such patch near the middle.</summary>
internal sealed class Foreground
{
    private readonly int w;
    private readonly int h;
    private readonly float[] strange;

    public Foreground(SmallPicture picture)
    {
        (w, h) = (picture.Width, picture.Height);
        strange = Strangeness(picture);
    }

    /// <summary>How much stranger it is just inside an outline than just outside it, on the mean: about 0 to 1.</summary>
    /// <param name="corners">Corners in upright pixels, clockwise.</param>
    /// <param name="uprightPerPx">Upright pixels per pixel of the small picture.</param>
    public double Apart(PointPx[] corners, double uprightPerPx)
    {
        const int Stations = 16;
        const double AsidePx = 2.2;
        double sum = 0;
        for (var k = 0; k < corners.Length; k++)
        {
            var (p, q) = (corners[k], corners[(k + 1) % corners.Length]);
            var length = double.Hypot(q.X - p.X, q.Y - p.Y);
            var (nx, ny) = ((q.Y - p.Y) / length * AsidePx, (p.X - q.X) / length * AsidePx);
            for (var i = 0; i < Stations; i++)
            {
                var t = (i + 0.5) / Stations;
                var (x, y) = ((p.X + (t * (q.X - p.X))) / uprightPerPx, (p.Y + (t * (q.Y - p.Y))) / uprightPerPx);
                sum += At(x - nx, y - ny) - At(x + nx, y + ny);
            }
        }
        return sum / (corners.Length * Stations * Most);
    }

    /// <summary>Marks the patch; false everywhere where there is none.</summary>
    public bool[] Patch()
    {
        var values = strange.Select(v => (double)v).ToArray();
        var one = new float[values.Length];
        Array.Fill(one, 1f);
        var limit = Colour.Otsu.Threshold(values, one);
        var mark = new bool[w * h];
        for (var i = 0; i < mark.Length; i++)
            mark[i] = strange[i] > limit;
        return Largest(Opened(mark, w, h, 2), w, h);
    }

    private const double Most = 6;

    private double At(double x, double y) => strange[(Math.Clamp((int)y, 0, h - 1) * w) + Math.Clamp((int)x, 0, w - 1)];

    // How far a colour is from the colours of the border, in shades of them.
    private static float[] Strangeness(SmallPicture picture)
    {
        const int Centres = 6;
        var (w, h) = (picture.Width, picture.Height);
        var border = new List<int>();
        var frame = Math.Max(2, Math.Min(w, h) / 20);
        for (var y = 0; y < h; y++)
        for (var x = 0; x < w; x++)
            if (x < frame || y < frame || x >= w - frame || y >= h - frame)
                border.Add((y * w) + x);
        var lab = new float[3 * w * h];
        for (var i = 0; i < w * h; i++)
        {
            var (r, g, b) = (picture.Rgb[3 * i], picture.Rgb[(3 * i) + 1], picture.Rgb[(3 * i) + 2]);
            // Brightness counts little, so that a shadow on the background is still background.
            (lab[3 * i], lab[(3 * i) + 1], lab[(3 * i) + 2]) = (0.35f * (r + g + b) / 3, r - g, 0.7f * (b - g));
        }
        var centre = new double[Centres, 3];
        var spread = new double[Centres];
        for (var c = 0; c < Centres; c++)
        for (var k = 0; k < 3; k++)
            centre[c, k] = lab[(3 * border[(int)((c + 0.5) / Centres * border.Count)]) + k];
        for (var turn = 0; turn < 8; turn++)
        {
            var sum = new double[Centres, 3];
            var count = new double[Centres];
            var square = new double[Centres];
            foreach (var i in border)
            {
                var (c, d) = Nearest(lab, i, centre, Centres);
                count[c]++;
                square[c] += d;
                for (var k = 0; k < 3; k++)
                    sum[c, k] += lab[(3 * i) + k];
            }
            for (var c = 0; c < Centres; c++)
            {
                if (count[c] == 0)
                    continue;
                spread[c] = Math.Sqrt(square[c] / count[c]);
                for (var k = 0; k < 3; k++)
                    centre[c, k] = sum[c, k] / count[c];
            }
        }
        var strange = new float[w * h];
        for (var i = 0; i < strange.Length; i++)
        {
            var (c, d) = Nearest(lab, i, centre, Centres);
            strange[i] = (float)Math.Min(Most, Math.Sqrt(d) / (spread[c] + 4));
        }
        return strange;
    }

    private static (int Centre, double Distance2) Nearest(float[] lab, int i, double[,] centre, int centres)
    {
        var best = 0;
        var least = double.MaxValue;
        for (var c = 0; c < centres; c++)
        {
            double d = 0;
            for (var k = 0; k < 3; k++)
                d += (lab[(3 * i) + k] - centre[c, k]) * (lab[(3 * i) + k] - centre[c, k]);
            if (d < least)
                (least, best) = (d, c);
        }
        return (best, least);
    }

    private static bool[] Opened(bool[] mark, int w, int h, int radius) =>
        Grown(Shrunk(mark, w, h, radius), w, h, radius);

    private static bool[] Shrunk(bool[] mark, int w, int h, int radius)
    {
        var inverse = mark.Select(m => !m).ToArray();
        return [.. Grown(inverse, w, h, radius).Select(m => !m)];
    }

    private static bool[] Grown(bool[] mark, int w, int h, int radius)
    {
        var rows = new bool[mark.Length];
        var grown = new bool[mark.Length];
        for (var y = 0; y < h; y++)
        for (var x = 0; x < w; x++)
            if (mark[(y * w) + x])
                for (var k = Math.Max(0, x - radius); k <= Math.Min(w - 1, x + radius); k++)
                    rows[(y * w) + k] = true;
        for (var y = 0; y < h; y++)
        for (var x = 0; x < w; x++)
            if (rows[(y * w) + x])
                for (var k = Math.Max(0, y - radius); k <= Math.Min(h - 1, y + radius); k++)
                    grown[(k * w) + x] = true;
        return grown;
    }

    // The patch with most area, weighed by nearness to the middle, its holes filled.
    private static bool[] Largest(bool[] mark, int w, int h)
    {
        var label = new int[mark.Length];
        var stack = new Stack<int>();
        var best = 0;
        double most = 0;
        var next = 0;
        for (var start = 0; start < mark.Length; start++)
        {
            if (!mark[start] || label[start] != 0)
                continue;
            next++;
            double weight = 0;
            label[start] = next;
            stack.Push(start);
            while (stack.Count > 0)
            {
                var i = stack.Pop();
                var (x, y) = (i % w, i / w);
                weight += Math.Exp(-2 * (Math.Pow((2.0 * x / w) - 1, 2) + Math.Pow((2.0 * y / h) - 1, 2)));
                foreach (var (dx, dy) in Neighbours)
                {
                    var (nx, ny) = (x + dx, y + dy);
                    if (nx < 0 || ny < 0 || nx >= w || ny >= h)
                        continue;
                    var n = (ny * w) + nx;
                    if (!mark[n] || label[n] != 0)
                        continue;
                    label[n] = next;
                    stack.Push(n);
                }
            }
            if (weight > most)
                (most, best) = (weight, next);
        }
        var patch = label.Select(l => l == best && best > 0).ToArray();
        return Filled(patch, w, h);
    }

    private static readonly (int Dx, int Dy)[] Neighbours = [(1, 0), (-1, 0), (0, 1), (0, -1)];

    private static bool[] Filled(bool[] patch, int w, int h)
    {
        var outside = new bool[patch.Length];
        var stack = new Stack<int>();
        void Enter(int x, int y)
        {
            var i = (y * w) + x;
            if (patch[i] || outside[i])
                return;
            outside[i] = true;
            stack.Push(i);
        }
        for (var x = 0; x < w; x++)
        {
            Enter(x, 0);
            Enter(x, h - 1);
        }
        for (var y = 0; y < h; y++)
        {
            Enter(0, y);
            Enter(w - 1, y);
        }
        while (stack.Count > 0)
        {
            var i = stack.Pop();
            var (x, y) = (i % w, i / w);
            foreach (var (dx, dy) in Neighbours)
                if (x + dx >= 0 && y + dy >= 0 && x + dx < w && y + dy < h)
                    Enter(x + dx, y + dy);
        }
        return [.. outside.Select(o => !o)];
    }
}
