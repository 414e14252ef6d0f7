using System.Globalization;

namespace Alburnum.DrawnSections;

/// <summary>What makes a bench of several sections hard.</summary>
public enum BenchTrouble
{
    /// <summary>Nothing: every piece lies by itself, whole in the picture.</summary>
    None,

    /// <summary>Two neighbours touch.</summary>
    Touching,

    /// <summary>A piece, or one of each row, lies half out of the picture.</summary>
    HalfOut,

    /// <summary>An offcut of another size lies among them.</summary>
    Offcut,

    /// <summary>A rule lies below them.</summary>
    Tool,
}

/// <summary>Scenes of several sections on one bench, one for each seed.</summary>
public static class BenchScenes
{
    /// <summary>Ends a search for pieces of one size: far more than are ever needed.</summary>
    private const int MostTried = 5000;

    /// <summary>Room about all pieces, as a share of their extent.</summary>
    private const double Margin = 1.12;

    /// <summary>Millimetres of the bench that the camera must see, and where each piece lies.</summary>
    private sealed record Layout(IReadOnlyList<Point> Centres, IReadOnlyList<double> Turns, Point Middle, Point Extent);

    /// <summary>Pieces of one size and different treatment, laid in rows.</summary>
    /// <param name="seed">Any number; the same number always gives the same scene.</param>
    /// <param name="isRound">Whether they are round or sawn.</param>
    /// <param name="ground">What they lie on.</param>
    /// <param name="trouble">What is hard about it.</param>
    /// <param name="megapixels">Size of the photograph.</param>
    public static BenchScene Of(int seed, bool isRound, Ground ground, BenchTrouble trouble, double megapixels)
    {
        var random = new Random((seed * 6007) + 41);
        var count = random.Next(4, 9);
        var rows = count > 5 && random.Chance(0.6) ? 2 : 1;
        var pieces = Alike(seed, isRound, count);
        var layout = Laid(random, pieces[0].Shape.HalfExtent, count, rows, trouble == BenchTrouble.Touching);
        var light = new Light(
            random.Angle(),
            random.Between(0.7, 1.2),
            (float)random.Between(0.25, 0.5),
            new(1.03f, 1, 0.96f),
            new(0.98f, 1, 1.03f),
            random.Between(0, 0.03),
            (seed * 11) + 4
        );
        var lens = Over(random, layout, trouble, megapixels);
        var first = pieces[0];
        var thicknessMm = random.Between(12, 30);
        IEnumerable<(SectionScene Scene, Point Centre, double Turn)> all =
        [
            .. pieces.Select((piece, k) => (piece, layout.Centres[k], layout.Turns[k])),
            .. Besides(random, seed, layout, trouble, first),
        ];
        return new(
            string.Create(
                CultureInfo.InvariantCulture,
                $"bench-{(isRound ? "round" : "sawn")}-{ground}-{trouble}-{seed}-{megapixels:0.0}"
            ),
            seed,
            [
                .. all.Select(each =>
                    LaidPiece.On(
                        each.Scene with
                        {
                            Indicator = first.Indicator,
                            ThicknessMm = thicknessMm,
                            SawShade = first.SawShade,
                        },
                        each.Centre,
                        each.Turn,
                        lens,
                        light
                    )
                ),
            ],
            count,
            ground,
            light,
            lens,
            first.Sensor
        );
    }

    // Easy and ordinary pieces by turns, of the size of the first.
    private static List<SectionScene> Alike(int seed, bool isRound, int count)
    {
        var found = new List<SectionScene>();
        for (var k = 0; found.Count < count && k < MostTried; k++)
        {
            var stratum = k % 2 == 0 ? Stratum.Easy : Stratum.Ordinary;
            var scene = StratifiedScenes.Of(stratum, (seed * MostTried) + k, []);
            var isFirst =
                found.Count == 0 && scene.Shape.Name == "round" == isRound && scene.Indicator.Treated.Cover > 0;
            if (isFirst || (found.Count > 0 && scene.Shape.SizesMm.SequenceEqual(found[0].Shape.SizesMm)))
                found.Add(scene);
        }
        return found;
    }

    private static Layout Laid(Random random, Point half, int count, int rows, bool isTouching)
    {
        var perRow = (count + rows - 1) / rows;
        var centres = new List<Point>();
        double width = 0;
        for (var k = 0; k < count; k++)
        {
            var column = k % perRow;
            var gap = random.Between(0.25, 0.7) * half.Length * 0.5 + 8;
            // The last two touch: their turns are none.
            var x =
                column == 0 ? half.X
                : isTouching && k == count - 1 ? centres[^1].X + (2 * half.X) - 0.4
                : centres[^1].X + (2 * half.X) + gap;
            var y = (k / perRow * ((2.5 * half.Y) + 12)) + (random.Between(-0.06, 0.06) * half.Y);
            centres.Add(new(x, isTouching && k == count - 1 && column > 0 ? centres[^1].Y : y));
            width = Math.Max(width, x + half.X);
        }
        var top = centres.Min(at => at.Y) - half.Y;
        var bottom = centres.Max(at => at.Y) + half.Y;
        return new(
            centres,
            [.. Enumerable.Range(0, count).Select(k => isTouching && k >= count - 2 ? 0 : random.Between(-0.09, 0.09))],
            new(width / 2, (top + bottom) / 2),
            new(width, bottom - top)
        );
    }

    private static Lens Over(Random random, Layout layout, BenchTrouble trouble, double megapixels)
    {
        var isWide = layout.Extent.X > layout.Extent.Y;
        var longPx = (int)Math.Round(Math.Sqrt(megapixels * 1e6 * 4 / 3));
        var (width, height) = isWide ? (longPx, longPx * 3 / 4) : (longPx * 3 / 4, longPx);
        var scale = Math.Min(width / (Margin * layout.Extent.X), height / (Margin * layout.Extent.Y));
        var isCut = trouble == BenchTrouble.HalfOut;
        scale *= isCut ? 1 : random.Between(0.86, 0.95);
        // The picture's edge runs through the middle of the farthest piece.
        var aim = isCut
            ? new Point(layout.Centres.Max(at => at.X) - (width / (2 * scale)), layout.Middle.Y)
            : layout.Middle;
        return new(
            width,
            height,
            0.95 * longPx,
            scale,
            isCut ? 0 : random.Between(0, 7) * Math.PI / 180,
            random.Angle(),
            isCut ? 0 : random.Between(-0.04, 0.04),
            random.Between(-0.005, 0.005),
            aim
        );
    }

    private static IEnumerable<(SectionScene, Point, double)> Besides(
        Random random,
        int seed,
        Layout layout,
        BenchTrouble trouble,
        SectionScene first
    )
    {
        var half = first.Shape.HalfExtent;
        var below = layout.Centres.Max(at => at.Y) + half.Y + 10;
        if (trouble == BenchTrouble.Offcut)
        {
            var offcut = first with
            {
                Shape = SectionShape.Rectangle(0.8 * half.X, 0.9 * half.Y) with { Seed = seed },
                Treatment = first.Treatment with { FaceShares = [1, 1, 1, 1], Patches = [], Incising = null },
                Grain = first.Grain with { Blemishes = [] },
            };
            yield return (offcut, new(layout.Middle.X, below + (0.45 * half.Y)), random.Between(-0.5, 0.5));
        }
        if (trouble == BenchTrouble.Tool)
        {
            var rule = first with
            {
                Shape = SectionShape.Rectangle(0.6 * layout.Extent.X, 14) with { Seed = seed },
                Treatment = first.Treatment with
                {
                    DepthMm = 1,
                    FaceShares = [1, 1, 1, 1],
                    Patches = [],
                    Incising = null,
                },
                Grain = first.Grain with { Blemishes = [] },
            };
            yield return (rule, new(layout.Middle.X, below + 7), random.Between(-0.03, 0.03));
        }
    }
}
