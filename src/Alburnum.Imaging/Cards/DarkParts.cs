namespace Alburnum.Imaging.Cards;

/// <summary>A part of a picture whose pixels touch one another and are darker than what is around them.</summary>
/// <param name="Count">Its pixels.</param>
/// <param name="SumX">Sum of their columns.</param>
/// <param name="SumY">Sum of their rows.</param>
/// <param name="Left">First column.</param>
/// <param name="Top">First row.</param>
/// <param name="Right">Last column.</param>
/// <param name="Bottom">Last row.</param>
internal readonly record struct DarkPart(int Count, long SumX, long SumY, int Left, int Top, int Right, int Bottom)
{
    /// <summary>Middle, a pixel's middle at halves.</summary>
    public (double X, double Y) Middle => (((double)SumX / Count) + 0.5, ((double)SumY / Count) + 0.5);

    public int Width => Right - Left + 1;

    public int Height => Bottom - Top + 1;

    /// <summary>Both as one.</summary>
    public DarkPart With(DarkPart other) =>
        new(
            Count + other.Count,
            SumX + other.SumX,
            SumY + other.SumY,
            Math.Min(Left, other.Left),
            Math.Min(Top, other.Top),
            Math.Max(Right, other.Right),
            Math.Max(Bottom, other.Bottom)
        );
}

/// <summary>Finds the dark parts of a picture.</summary>
internal static class DarkParts
{
    /// <summary>Half the side of the square over which light is averaged: the picture's longer side over this. Our own choice.</summary>
    private const int HalfSquarePart = 24;

    /// <summary>A pixel is dark below this share of the light around it. Our own choice.</summary>
    private const double DarkShare = 0.7;

    /// <summary>Every dark part, by runs of dark pixels that touch at a side or a corner.</summary>
    public static IReadOnlyList<DarkPart> Of(GreenPicture picture)
    {
        var sums = Sums(picture);
        var half = Math.Max(picture.Width, picture.Height) / HalfSquarePart;
        var parts = new List<DarkPart>();
        var parents = new List<int>();
        var (above, now) = (new List<(int From, int To, int Part)>(), new List<(int From, int To, int Part)>());
        var isDark = new bool[picture.Width];
        for (var y = 0; y < picture.Height; y++)
        {
            Mark(picture, sums, half, y, isDark);
            now.Clear();
            var first = 0;
            for (var x = 0; x < picture.Width; x++)
            {
                if (!isDark[x])
                    continue;
                var from = x;
                while (x + 1 < picture.Width && isDark[x + 1])
                    x++;
                var length = x - from + 1;
                var part = parts.Count;
                parts.Add(new(length, (long)length * (from + x) / 2, (long)length * y, from, y, x, y));
                parents.Add(part);
                while (first < above.Count && above[first].To < from - 1)
                    first++;
                for (var k = first; k < above.Count && above[k].From <= x + 1; k++)
                    Join(part, above[k].Part);
                now.Add((from, x, part));
            }
            (above, now) = (now, above);
        }
        return [.. parts.Where((_, k) => parents[k] == k)];

        void Join(int a, int b)
        {
            (a, b) = (Root(a), Root(b));
            if (a == b)
                return;
            (var kept, parents[Math.Max(a, b)]) = (Math.Min(a, b), Math.Min(a, b));
            parts[kept] = parts[a].With(parts[b]);
        }

        int Root(int k)
        {
            while (parents[k] != k)
                k = parents[k] = parents[parents[k]];
            return k;
        }
    }

    private static void Mark(GreenPicture picture, int[] sums, int half, int y, bool[] isDark)
    {
        var (width, stride) = (picture.Width, picture.Width + 1);
        var (top, bottom) = (Math.Max(0, y - half), Math.Min(picture.Height, y + half + 1));
        var row = picture.Values.AsSpan(y * width, width);
        for (var x = 0; x < width; x++)
        {
            var (left, right) = (Math.Max(0, x - half), Math.Min(width, x + half + 1));
            var light =
                sums[(bottom * stride) + right]
                - sums[(bottom * stride) + left]
                - sums[(top * stride) + right]
                + sums[(top * stride) + left];
            isDark[x] = row[x] * (bottom - top) * (right - left) < DarkShare * light;
        }
    }

    // Light above and to the left of each corner of a pixel.
    private static int[] Sums(GreenPicture picture)
    {
        var stride = picture.Width + 1;
        var sums = new int[stride * (picture.Height + 1)];
        for (var y = 0; y < picture.Height; y++)
        {
            var row = 0;
            for (var x = 0; x < picture.Width; x++)
            {
                row += picture.Values[(y * picture.Width) + x];
                sums[((y + 1) * stride) + x + 1] = sums[(y * stride) + x + 1] + row;
            }
        }
        return sums;
    }
}
