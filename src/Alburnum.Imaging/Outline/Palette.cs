namespace Alburnum.Imaging.Outline;

/// <summary>A small picture's pixels in a few dozen groups of like colour and like texture.</summary>
internal sealed class Palette
{
    /// <summary>Number of groups.</summary>
    public const int Groups = 48;

    /// <summary>Shade, red against green, blue against green, and texture.</summary>
    private const int Features = 4;

    /// <summary>
    /// What a difference of one feature counts, as a logarithm: shade least, so that a shadow on the bench is still bench. Our own choice.
    /// </summary>
    private const float ShadeWeight = 0.35f;

    private const float RedWeight = 3;
    private const float BlueWeight = 2;
    private const float TextureWeight = 0.4f;

    /// <summary>Added to a channel, 0 to 255, and to the sum of all three, lest noise in the dark become colour. Our own choice.</summary>
    private const float ChannelFloor = 12;

    private const float LightFloor = 24;

    /// <summary>Texture is the standard deviation of shade within so many pixels, and this is added to it, lest noise become texture. Our own choice.</summary>
    private const int TexturePx = 2;

    private const float TextureFloor = 0.02f;

    /// <summary>Turns of the sorting. Our own choice.</summary>
    private const int Turns = 6;

    /// <summary>Seed of the starts: any, but always the same.</summary>
    private const int Seed = 1;

    /// <summary>The groups' middles are found from every so many-th pixel.</summary>
    private const int Stride = 5;

    private readonly float[] _centres;

    private Palette(int width, int height, byte[] group, float[] centres)
    {
        (Width, Height, Group, _centres) = (width, height, group, centres);
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>Group of each pixel, row by row.</summary>
    public byte[] Group { get; }

    /// <summary>How far what is learnt of one group holds for another, 0 to 1, row by row: a shadowed bench is much like a bench.</summary>
    /// <param name="reach">Distance of features at which two groups are still much alike.</param>
    public float[] Likeness(float reach)
    {
        var likeness = new float[Groups * Groups];
        for (var a = 0; a < Groups; a++)
        for (var b = 0; b < Groups; b++)
            likeness[(Groups * a) + b] = MathF.Exp(-0.5f * Distance2(_centres, a, _centres, b) / (reach * reach));
        return likeness;
    }

    /// <summary>Sorts the pixels into groups (Lloyd's iteration, from starts that lie far apart).</summary>
    public static Palette Of(SmallPicture picture)
    {
        var features = FeaturesOf(picture);
        var count = picture.Width * picture.Height;
        var centres = Starts(features, count);
        for (var turn = 0; turn < Turns; turn++)
            centres = Moved(features, count, centres);
        var group = new byte[count];
        var nearest = 0;
        for (var i = 0; i < count; i++)
        {
            nearest = Nearest(features, i, centres, nearest);
            group[i] = (byte)nearest;
        }
        return new(picture.Width, picture.Height, group, centres);
    }

    // The unrest of a place parts gravel and grass from wood.
    private static float[] FeaturesOf(SmallPicture picture)
    {
        var (w, h) = (picture.Width, picture.Height);
        var shade = new float[w * h];
        var features = new float[Features * w * h];
        for (var i = 0; i < w * h; i++)
        {
            var (r, g, b) = (picture.Rgb[3 * i], picture.Rgb[(3 * i) + 1], picture.Rgb[(3 * i) + 2]);
            shade[i] = MathF.Log(r + g + b + LightFloor);
            features[Features * i] = ShadeWeight * shade[i];
            features[(Features * i) + 1] = RedWeight * MathF.Log((r + ChannelFloor) / (g + ChannelFloor));
            features[(Features * i) + 2] = BlueWeight * MathF.Log((b + ChannelFloor) / (g + ChannelFloor));
        }
        for (var y = 0; y < h; y++)
        {
            for (var x = 0; x < w; x++)
            {
                float sum = 0;
                float square = 0;
                var n = 0;
                for (var v = Math.Max(0, y - TexturePx); v <= Math.Min(h - 1, y + TexturePx); v++)
                for (var u = Math.Max(0, x - TexturePx); u <= Math.Min(w - 1, x + TexturePx); u++)
                {
                    var s = shade[(v * w) + u];
                    (sum, square, n) = (sum + s, square + (s * s), n + 1);
                }
                var variance = Math.Max(0, (square / n) - (sum / n * (sum / n)));
                features[(Features * ((y * w) + x)) + 3] =
                    TextureWeight * MathF.Log(MathF.Sqrt(variance) + TextureFloor);
            }
        }
        return features;
    }

    private static float[] Starts(float[] features, int count)
    {
        var random = new Random(Seed);
        var centres = new float[Groups * Features];
        var nearest = new double[count];
        Array.Fill(nearest, double.MaxValue);
        var pick = count / 2;
        for (var c = 0; c < Groups; c++)
        {
            Array.Copy(features, Features * pick, centres, Features * c, Features);
            double total = 0;
            for (var i = 0; i < count; i += Stride)
            {
                nearest[i] = Math.Min(nearest[i], Distance2(features, i, centres, c));
                total += nearest[i];
            }
            var at = random.NextDouble() * total;
            for (var i = 0; i < count; i += Stride)
            {
                pick = i;
                if ((at -= nearest[i]) <= 0)
                    break;
            }
        }
        return centres;
    }

    private static float[] Moved(float[] features, int count, float[] centres)
    {
        var sum = new double[Groups * Features];
        var members = new int[Groups];
        var nearest = 0;
        for (var i = 0; i < count; i += Stride)
        {
            var c = nearest = Nearest(features, i, centres, nearest);
            members[c]++;
            for (var k = 0; k < Features; k++)
                sum[(Features * c) + k] += features[(Features * i) + k];
        }
        var moved = new float[centres.Length];
        for (var c = 0; c < Groups; c++)
        for (var k = 0; k < Features; k++)
            moved[(Features * c) + k] =
                members[c] > 0 ? (float)(sum[(Features * c) + k] / members[c]) : centres[(Features * c) + k];
        return moved;
    }

    // The neighbour's group is tried first; most others are farther in the first feature alone.
    private static int Nearest(float[] features, int i, float[] centres, int first)
    {
        var best = first;
        var least = Distance2(features, i, centres, first);
        var (a, b, c, d) = (features[4 * i], features[(4 * i) + 1], features[(4 * i) + 2], features[(4 * i) + 3]);
        for (var g = 0; g < Groups; g++)
        {
            var off = b - centres[(4 * g) + 1];
            var sum = off * off;
            if (sum >= least)
                continue;
            off = c - centres[(4 * g) + 2];
            sum += off * off;
            if (sum >= least)
                continue;
            off = d - centres[(4 * g) + 3];
            sum += off * off;
            off = a - centres[4 * g];
            sum += off * off;
            if (sum < least)
                (least, best) = (sum, g);
        }
        return best;
    }

    private static float Distance2(float[] features, int i, float[] centres, int c)
    {
        float sum = 0;
        for (var k = 0; k < Features; k++)
        {
            var d = features[(Features * i) + k] - centres[(Features * c) + k];
            sum += d * d;
        }
        return sum;
    }
}
