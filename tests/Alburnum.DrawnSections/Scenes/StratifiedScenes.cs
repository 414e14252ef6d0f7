namespace Alburnum.DrawnSections;

/// <summary>Scenes of a stated difficulty, one for each seed, with everything else as varied as it is in life.</summary>
public static class StratifiedScenes
{
    /// <summary>The scene of a stratum and a seed.</summary>
    /// <param name="stratum">How difficult it is to read.</param>
    /// <param name="seed">Any number; the same number always gives the same scene.</param>
    /// <param name="photos">Photographs of real end grain to take colours from now and then; empty for drawn wood only.</param>
    /// <param name="megapixels">Size of the photograph, or null to let the seed decide (about 2 to 4).</param>
    public static SectionScene Of(Stratum stratum, int seed, IReadOnlyList<Raster> photos, double? megapixels = null)
    {
        var random = new Random(7919 * (int)stratum + seed * 104729 + 17);
        var hard = stratum == Stratum.Hard;
        var easy = stratum == Stratum.Easy;
        var shape = Shape(random, stratum, seed);
        var indicator = Colours(random, stratum);
        var grain = Grain(random, stratum, shape, seed, photos);
        var treatment = Penetration(random, stratum, shape, seed);
        grain = grain with { Blemishes = Blemishes(random, stratum, shape, grain, treatment, seed) };
        var lens = Camera(random, stratum, shape, megapixels);
        return new SectionScene(
            $"{stratum.ToString().ToLowerInvariant()}-{seed:000}",
            seed,
            shape,
            grain,
            treatment,
            indicator,
            Reagent(random, stratum, shape, treatment, seed),
            Underfoot(random, stratum),
            Lamp(random, stratum, shape, seed),
            lens,
            Chip(random, stratum, seed)
        )
        {
            ThicknessMm = random.Between(easy ? 12 : 15, hard ? 70 : 40),
            SawShade = easy ? random.Between(0.3, 0.8) : random.Between(0.5, hard ? 1.9 : 1.3),
            Thumb = hard && random.Chance(0.3) ? Holding(random, shape, seed) : null,
            JpegQuality = easy ? random.Next(90, 97) : random.Next(hard ? 68 : 82, hard ? 90 : 94),
            FullColour = random.Chance(easy ? 0.5 : 0.2),
            Orientation = easy ? 1 : random.OneOf([1, 1, 1, 3, 6, 8]),
        };
    }

    private static SectionShape Shape(Random random, Stratum stratum, int seed)
    {
        (double, double)[] sawn =
        [
            (100, 100),
            (75, 75),
            (125, 75),
            (150, 75),
            (150, 50),
            (100, 47),
            (90, 90),
            (70, 45),
            (195, 60),
        ];
        double[] poles = [50, 75, 100, 120, 140];
        SectionShape shape;
        var lot = random.NextDouble();
        if (lot < 0.62)
        {
            var (a, b) = random.OneOf(sawn);
            shape = random.Chance(0.6) ? SectionShape.Rectangle(a, b) : SectionShape.Rectangle(b, a);
        }
        else
        {
            shape = SectionShape.Round(random.OneOf(poles));
        }
        return shape with
        {
            Seed = seed * 13 + 5,
            ArrisMm = random.Between(0.2, stratum == Stratum.Hard ? 2.2 : 1.0),
            WavinessMm =
                shape.Name == "round"
                    ? random.Between(0.05, stratum == Stratum.Easy ? 0.15 : 0.35)
                    : random.Between(0.02, stratum == Stratum.Easy ? 0.06 : 0.15),
        };
    }

    private static Indicator Colours(Random random, Stratum stratum)
    {
        var indicator = stratum switch
        {
            Stratum.Easy => random.OneOf([
                Indicator.CopperBlue,
                Indicator.CopperBlue,
                Indicator.DarkGreen,
                Indicator.Magenta,
                Indicator.BoronRed,
            ]),
            Stratum.Ordinary => random.OneOf([
                Indicator.CopperBlue,
                Indicator.CopperBlue,
                Indicator.DarkGreen,
                Indicator.Magenta,
                Indicator.BoronRed,
                Indicator.CopperBlue,
                Indicator.None,
            ]),
            _ => random.OneOf(Indicator.All),
        };
        return indicator.Strayed(
            stratum == Stratum.Easy ? 0.15
                : stratum == Stratum.Ordinary ? 0.25
                : 0.35,
            random
        );
    }

    private static EndGrain Grain(
        Random random,
        Stratum stratum,
        SectionShape shape,
        int seed,
        IReadOnlyList<Raster> photos
    )
    {
        var timber = random.Chance(0.75)
            ? random.OneOf([Timber.Pine, Timber.Spruce, Timber.Larch, Timber.DouglasFir])
            : random.OneOf(Timber.All);
        var round = shape.Name == "round";
        var pith = round
            ? Point.Towards(random.Angle()) * random.Between(0, 0.12 * shape.ReachMm)
            : Point.Towards(random.Angle()) * random.Between(0, 1.6 * shape.ReachMm);
        var photo =
            photos.Count > 0 && random.Chance(0.45)
                ? WoodPhoto.Lay(
                    random.OneOf(photos),
                    (round ? shape.ReachMm : shape.HalfExtent.Length) * 1.03,
                    0.82,
                    random
                )
                : null;
        // Heartwood starts well inside, so that the front is liquid's own doing in most places.
        var heart =
            photo is not null ? 0
            : round ? shape.ReachMm * random.Between(0.2, 0.55)
            : random.Chance(0.35) ? Math.Max(0, shape.ReachMm * random.Between(0.1, 0.5) - 0.3 * pith.Length)
            : 0;
        return new(
            timber,
            photo?.PithMm ?? pith,
            random.Between(0.9, 4.5),
            heart,
            random.Between(stratum == Stratum.Easy ? 0.15 : 0.3, stratum == Stratum.Hard ? 1.0 : 0.7),
            seed * 17 + 3
        )
        {
            Photo = photo,
            Stain = stratum == Stratum.Hard && random.Chance(0.45) ? (float)random.Between(0.3, 1.0) : 0,
            Lightness = (float)random.Between(0.78, 1.1),
            SawAngle = random.Angle(),
            SawPitchMm = random.Between(0.8, 3.2),
        };
    }

    private static Treatment Penetration(Random random, Stratum stratum, SectionShape shape, int seed)
    {
        var half = Math.Min(shape.HalfExtent.X, shape.HalfExtent.Y);
        var depth = random.Between(2.2, Math.Min(0.48 * half, 17));
        var easy = stratum == Stratum.Easy;
        var rough = random.Between(
            0.05,
            easy ? 0.14
                : stratum == Stratum.Ordinary ? 0.2
                : 0.3
        );
        var patches = new List<ShallowPatch>();
        if (!easy && random.Chance(stratum == Stratum.Hard ? 0.5 : 0.3))
        {
            var face = random.Next(shape.Faces.Count);
            var length = shape.Faces[face].LengthMm;
            patches.Add(
                new(
                    face,
                    random.Between(0.25, 0.75) * length,
                    random.Between(0.08, 0.2) * length,
                    random.Between(0.1, 0.65)
                )
            );
        }
        var incised = !easy && shape.Name != "round" && random.Chance(0.15);
        return new(
            depth,
            rough * depth,
            random.Between(0.015, easy ? 0.04 : 0.06) * depth,
            random.Between(0.5, 2.5),
            seed * 19 + 7
        )
        {
            FaceShares = [.. shape.Faces.Select(_ => random.Between(easy ? 0.9 : 0.75, easy ? 1.1 : 1.2))],
            RingStepMm = random.Between(0, easy ? 0.1 : 0.3),
            StreakMm = random.Between(0, easy ? 0.3 : 1.2),
            CornerMm = random.Between(0, 0.3 * depth),
            Patches = patches,
            Incising = incised
                ? new(random.Between(8, 14), random.Between(depth + 1, depth + 6), random.Between(2.5, 5))
                : null,
        };
    }

    private static List<Blemish> Blemishes(
        Random random,
        Stratum stratum,
        SectionShape shape,
        EndGrain grain,
        Treatment treatment,
        int seed
    )
    {
        var blemishes = new List<Blemish>();
        Point Within(double share) =>
            new(shape.HalfExtent.X * random.Between(-share, share), shape.HalfExtent.Y * random.Between(-share, share));
        if (stratum == Stratum.Easy)
            return blemishes;
        var hard = stratum == Stratum.Hard;
        if (random.Chance(hard ? 0.4 : 0.25))
        {
            var radius = random.Between(3, 8);
            var at = Within(0.8);
            var away = at - grain.PithMm;
            blemishes.Add(new Knot(at, radius * random.Between(1, 2.2), radius, Math.Atan2(away.Y, away.X)));
        }
        // Checks run along rays, from the pith or from the surface.
        var checks = random.Next(0, hard ? 4 : 3);
        for (var k = 0; k < checks; k++)
        {
            var start =
                random.Chance(0.5) && shape.RoughlyInsideMm(grain.PithMm.X, grain.PithMm.Y) > 5
                    ? grain.PithMm
                    : Within(0.97);
            var away = start - grain.PithMm;
            var angle = away.Length < 1 ? random.Angle() : Math.Atan2(away.Y, away.X) + Math.PI;
            blemishes.Add(
                new Check(
                    start,
                    angle,
                    random.Between(10, 0.6 * shape.ReachMm + 12),
                    random.Between(0.15, hard ? 1.1 : 0.5),
                    hard && random.Chance(0.5) ? random.Between(0.3, 1.6) : 0,
                    seed * 23 + k
                )
            );
        }
        if (random.Chance(hard ? 0.2 : 0.1) && grain.Timber.RayStrength < 0.1f)
        {
            var at = Within(0.8);
            var away = at - grain.PithMm;
            blemishes.Add(
                new ResinPocket(
                    at,
                    Math.Atan2(away.Y, away.X) + Math.PI / 2,
                    random.Between(5, 16),
                    random.Between(0.8, 2.2)
                )
            );
        }
        return blemishes;
    }

    private static Spray Reagent(Random random, Stratum stratum, SectionShape shape, Treatment treatment, int seed)
    {
        var hard = stratum == Stratum.Hard;
        var drips = new List<Drip>();
        var down = random.Angle();
        var count = stratum == Stratum.Easy ? 0 : random.Next(0, hard ? 4 : 2);
        for (var k = 0; k < count; k++)
        {
            var face = random.Next(shape.Faces.Count);
            var along = random.NextDouble() * shape.Faces[face].LengthMm;
            var inward = shape.Faces[face].Inward(along);
            var start =
                shape.Faces[face].At(along) + inward * random.Between(1, Math.Max(1.5, 0.6 * treatment.DepthMm));
            var angle =
                Point.Dot(Point.Towards(down), inward) > 0.2
                    ? down
                    : Math.Atan2(inward.Y, inward.X) + random.Between(-0.5, 0.5);
            drips.Add(
                new(
                    start,
                    angle,
                    random.Between(8, 0.9 * shape.ReachMm),
                    random.Between(1.5, hard ? 4.5 : 3),
                    (float)random.Between(0.1, hard ? 0.7 : 0.4),
                    seed * 29 + k
                )
            );
        }
        (Point, double)? missed = null;
        if (hard && random.Chance(0.25))
        {
            var angle = random.Angle();
            missed = (Point.Towards(angle) * (random.Between(0.45, 0.9) * shape.ReachMm), angle);
        }
        return new(
            random.Between(hard ? 0.55 : 0.85, 1.25),
            stratum == Stratum.Easy ? random.Between(0.05, 0.15) : random.Between(0.15, hard ? 0.7 : 0.4),
            random.Between(0.1, 0.25),
            random.Between(
                0.2,
                hard ? 1.0
                    : stratum == Stratum.Easy ? 0.4
                    : 0.6
            ),
            seed * 31 + 9
        )
        {
            Drips = drips,
            Missed = missed,
        };
    }

    private static Ground Underfoot(Random random, Stratum stratum) =>
        stratum switch
        {
            Stratum.Easy => random.OneOf([Ground.WhiteCard, Ground.GreyCard, Ground.DarkCloth, Ground.WhiteCard]),
            Stratum.Ordinary => random.OneOf([
                Ground.WhiteCard,
                Ground.GreyCard,
                Ground.DarkCloth,
                Ground.BenchBoard,
                Ground.Concrete,
                Ground.BenchBoard,
            ]),
            _ => random.OneOf([
                Ground.BenchBoard,
                Ground.Concrete,
                Ground.Gravel,
                Ground.Grass,
                Ground.Grass,
                Ground.Sawdust,
            ]),
        };

    private static Light Lamp(Random random, Stratum stratum, SectionShape shape, int seed)
    {
        var hard = stratum == Stratum.Hard;
        var easy = stratum == Stratum.Easy;
        Colour Tint(double warmth) => new((float)(1 + 0.07 * warmth), 1, (float)(1 - 0.13 * warmth));
        Point Anywhere() =>
            new(shape.HalfExtent.X * random.Between(-0.9, 0.9), shape.HalfExtent.Y * random.Between(-0.9, 0.9));
        var glares = new List<Glare>();
        if (!easy)
        {
            var count = random.Next(0, hard ? 4 : 2);
            for (var k = 0; k < count; k++)
                glares.Add(
                    new(Anywhere(), random.Between(2, hard ? 10 : 6), (float)random.Between(0.3, hard ? 1.3 : 0.6))
                );
        }
        CastShadow? shadow = null;
        if (
            random.Chance(
                hard ? 0.55
                : easy ? 0
                : 0.3
            )
        )
            shadow = new(
                Anywhere(),
                random.Angle(),
                random.Between(1.5, 25),
                (float)random.Between(0.3, hard ? 0.85 : 0.6)
            );
        return new(
            random.Angle(),
            random.Between(0.45, 1.2),
            (float)
                random.Between(
                    easy ? 0.25 : 0.35,
                    easy ? 0.5
                        : hard ? 0.85
                        : 0.7
                ),
            Tint(random.Between(-0.4, hard ? 1.2 : 0.7)),
            Tint(random.Between(hard ? -1.0 : -0.5, 0.4)),
            random.Between(
                0,
                easy ? 0.12
                    : hard ? 0.7
                    : 0.4
            ),
            seed * 37 + 1
        )
        {
            Glares = glares,
            Shadow = shadow,
        };
    }

    private static Lens Camera(Random random, Stratum stratum, SectionShape shape, double? megapixels)
    {
        var hard = stratum == Stratum.Hard;
        var easy = stratum == Stratum.Easy;
        var size = megapixels ?? random.Between(1.2, hard ? 2.0 : 2.3);
        var upright = random.Chance(0.4);
        var wide = (int)(Math.Sqrt(size * 1e6 * 4 / 3) / 16) * 16;
        var narrow = wide * 3 / 4;
        var (width, height) = upright ? (narrow, wide) : (wide, narrow);
        var roll = (easy ? 0.06 : 0.6) * random.Between(-1, 1) + (random.Chance(easy ? 0 : 0.3) ? random.Angle() : 0);
        // The rolled section's extent decides the scale at which it fills its share of the frame.
        var (sin, cos) = Math.SinCos(Math.Abs(roll));
        var half = shape.HalfExtent;
        var round = shape.Name == "round";
        var across = round ? half.X : Math.Abs(half.X * cos) + Math.Abs(half.Y * sin);
        var down = round ? half.Y : Math.Abs(half.X * sin) + Math.Abs(half.Y * cos);
        var fill = random.Between(hard ? 0.5 : 0.65, hard ? 0.82 : 0.86);
        var scale = fill * Math.Min(width / (2 * across), height / (2 * down));
        var focal = random.Between(0.75, 1.5) * wide;
        return new(
            width,
            height,
            focal,
            scale,
            random.Between(
                0,
                easy ? 4
                    : hard ? 25
                    : 12
            )
                * Math.PI
                / 180,
            random.Angle(),
            roll,
            random.Between(-0.03, 0.03) * (easy ? 0.3 : 1),
            new(random.Between(-0.06, 0.06) * shape.ReachMm, random.Between(-0.06, 0.06) * shape.ReachMm)
        );
    }

    private static Sensor Chip(Random random, Stratum stratum, int seed)
    {
        var hard = stratum == Stratum.Hard;
        var easy = stratum == Stratum.Easy;
        var cast =
            easy ? 0.04
            : hard ? 0.16
            : 0.09;
        return new(
            random.Between(
                0.6,
                easy ? 0.9
                    : hard ? 2.6
                    : 1.4
            ),
            hard && random.Chance(0.4) ? random.Between(1.5, 6) : 0,
            random.Angle(),
            (float)
                random.Between(
                    0.004,
                    easy ? 0.009
                        : hard ? 0.035
                        : 0.018
                ),
            (float)random.Between(0.05, hard ? 0.5 : 0.3),
            (float)
                random.Between(
                    easy ? -0.2 : -0.5,
                    easy ? 0.2
                        : hard ? 0.7
                        : 0.35
                ),
            new((float)random.Between(1 - cast, 1 + cast), 1, (float)random.Between(1 - cast, 1 + cast)),
            (float)random.Between(0.2, 0.9),
            (float)random.Between(0, 0.35),
            (float)random.Between(0.85, 1.15),
            seed * 41 + 5
        );
    }

    private static Thumb Holding(Random random, SectionShape shape, int seed)
    {
        var face = random.Next(shape.Faces.Count);
        var along = shape.Faces[face].LengthMm * random.Between(0.2, 0.8);
        var inward = shape.Faces[face].Inward(along);
        var skin = Colour.Of("#D9A583").Towards(Colour.Of("#7A4B33"), (float)random.NextDouble());
        return new(
            shape.Faces[face].At(along) + inward * random.Between(0, 5),
            Math.Atan2(-inward.Y, -inward.X) + random.Between(-0.5, 0.5),
            random.Between(17, 22),
            skin,
            seed * 43 + 3
        );
    }
}
