namespace Alburnum.DrawnSections;

/// <summary>One look of the camera at the scene: face, side of the piece, shadow, ground, thumb, card.</summary>
internal sealed class Exposure(SectionScene scene, SprayedFace face)
{
    // A pixel nearer to the outline than this is sampled many times.
    private const double NearOutlinePx = 2.0;
    private readonly (Space Eye, Space Right, Space Down, Space Forward) _pose = scene.Lens.Pose();
    private readonly double _texelsPerMm = Math.Clamp(1.05 * scene.Lens.PixelsPerMm, 5, 30);
    private const double MarginMm = 1.0;

    private Raster? _texture;

    /// <summary>A look at a scene whose face is drawn once.</summary>
    public static Exposure Of(SectionScene scene)
    {
        var face = new SprayedFace(
            scene.Shape,
            scene.Grain,
            scene.Treatment,
            scene.Indicator,
            scene.Spray,
            scene.SawShade
        );
        var exposure = new Exposure(scene, face);
        exposure._texture = face.Rendered(exposure._texelsPerMm, MarginMm, scene.Light.Towards);
        return exposure;
    }

    /// <summary>The piece's face or side where the ray through a pixel meets it; null where it passes by.</summary>
    public Colour? Wood(double px, double py, out double fromOutlineMm)
    {
        var ray = scene.Lens.Ray(px, py, _pose.Right, _pose.Down, _pose.Forward);
        var onFace = _pose.Eye + ray * (-_pose.Eye.Z / ray.Z);
        var rough = scene.Shape.RoughlyInsideMm(onFace.X, onFace.Y);
        fromOutlineMm = Math.Abs(rough) < 3 ? scene.Shape.InsideMm(onFace.X, onFace.Y) : rough;
        return fromOutlineMm > 0 ? OnFace(_texture!, onFace) : SideOf(ray, onFace, fromOutlineMm);
    }

    /// <summary>What the piece leaves of the light at the place of the ground that a pixel shows.</summary>
    public (float Open, float Near) Shade(double px, double py)
    {
        var ray = scene.Lens.Ray(px, py, _pose.Right, _pose.Down, _pose.Forward);
        var at = _pose.Eye + ray * ((scene.ThicknessMm - _pose.Eye.Z) / ray.Z);
        return Openness(at.X, at.Y);
    }

    /// <summary>Linear light on the sensor: red, green, blue.</summary>
    public Plane[] Take()
    {
        var lens = scene.Lens;
        var texture = face.Rendered(_texelsPerMm, MarginMm, scene.Light.Towards);
        var ground = new Background(scene.Ground, GroundReachMm(), scene.Seed + 301);
        Plane[] planes =
        [
            new(lens.WidthPx, lens.HeightPx),
            new(lens.WidthPx, lens.HeightPx),
            new(lens.WidthPx, lens.HeightPx),
        ];
        Parallel.For(
            0,
            lens.HeightPx,
            y =>
            {
                var red = planes[0].Row(y);
                var green = planes[1].Row(y);
                var blue = planes[2].Row(y);
                for (var x = 0; x < lens.WidthPx; x++)
                {
                    var colour = Seen(texture, ground, x + 0.5, y + 0.5, out var fromOutlineMm);
                    if (Math.Abs(fromOutlineMm) * lens.PixelsPerMm < NearOutlinePx)
                        colour = Averaged(texture, ground, x, y);
                    red[x] = colour.Red;
                    green[x] = colour.Green;
                    blue[x] = colour.Blue;
                }
            }
        );
        return planes;
    }

    private double GroundReachMm()
    {
        var lens = scene.Lens;
        var diagonal = Math.Sqrt((double)lens.WidthPx * lens.WidthPx + (double)lens.HeightPx * lens.HeightPx) / 2;
        return Math.Min(
            900,
            (diagonal / lens.PixelsPerMm + lens.AimMm.Length) * (1.15 + 1.2 * Math.Sin(lens.Tilt)) + 30
        );
    }

    private Colour Averaged(Raster texture, Background ground, int x, int y)
    {
        const int Across = 4;
        Colour sum = default;
        for (var j = 0; j < Across; j++)
        {
            for (var i = 0; i < Across; i++)
                sum += Seen(texture, ground, x + (i + 0.5) / Across, y + (j + 0.5) / Across, out _);
        }
        return sum * (1f / (Across * Across));
    }

    private Colour Seen(Raster texture, Background ground, double px, double py, out double fromOutlineMm)
    {
        var ray = scene.Lens.Ray(px, py, _pose.Right, _pose.Down, _pose.Forward);
        var onFace = _pose.Eye + ray * (-_pose.Eye.Z / ray.Z);
        var shape = scene.Shape;
        var rough = shape.RoughlyInsideMm(onFace.X, onFace.Y);
        fromOutlineMm = Math.Abs(rough) < 3 ? shape.InsideMm(onFace.X, onFace.Y) : rough;
        Colour colour;
        if (fromOutlineMm > 0)
        {
            colour = OnFace(texture, onFace);
        }
        else
        {
            colour = OnCard(ray, ref fromOutlineMm) ?? Below(ground, ray, onFace, ref fromOutlineMm);
        }
        if (scene.Thumb is { } thumb)
        {
            var inside = thumb.InsideMm(onFace.X, onFace.Y);
            if (inside > -6)
            {
                var shadow = Smooth.Step(
                    -6,
                    0,
                    thumb.InsideMm(onFace.X + 2 * scene.Light.Towards.X, onFace.Y + 2 * scene.Light.Towards.Y)
                );
                colour *= 1 - 0.5f * scene.Light.Direct * shadow;
                var share = Smooth.Step(-0.6 / scene.Lens.PixelsPerMm, 0.6 / scene.Lens.PixelsPerMm, inside);
                colour = colour.Towards(thumb.At(onFace.X, onFace.Y) * scene.Light.On(onFace.X, onFace.Y, 1), share);
            }
        }
        return colour;
    }

    private Colour OnFace(Raster texture, Space onFace)
    {
        var half = scene.Shape.HalfExtent;
        var texels = texture.At(
            (onFace.X + half.X + MarginMm) * _texelsPerMm,
            (onFace.Y + half.Y + MarginMm) * _texelsPerMm
        );
        return (texels.Colour * scene.Light.On(onFace.X, onFace.Y, 1))
            + (scene.Light.Source * scene.Light.Mirrored(onFace.X, onFace.Y, texels.Fourth));
    }

    /// <summary>The card where a ray meets it; null where it does not. Print is fine: all of it is sampled many times.</summary>
    private Colour? OnCard(Space ray, ref double fromOutlineMm)
    {
        if (scene.Card is not { } card)
            return null;
        var at = _pose.Eye + ray * ((card.BelowMm - _pose.Eye.Z) / ray.Z);
        var inside = card.InsideMm(at.X, at.Y);
        if (inside > -NearOutlinePx / scene.Lens.PixelsPerMm)
            fromOutlineMm = 0;
        return inside < 0 ? null : card.At(at.X, at.Y) * scene.Light.On(at.X, at.Y, 1);
    }

    /// <summary>What a ray that misses the face meets: the side of the piece, or the ground with the piece's shadow.</summary>
    private Colour Below(Background ground, Space ray, Space onFace, ref double fromOutlineMm)
    {
        if (SideOf(ray, onFace, fromOutlineMm) is { } side)
            return side;
        var groundX = onFace.X + ray.X / ray.Z * scene.ThicknessMm;
        var groundY = onFace.Y + ray.Y / ray.Z * scene.ThicknessMm;
        var (open, near0) = Openness(groundX, groundY);
        var light = scene.Light.On(groundX, groundY, open);
        return ground.At(groundX, groundY) * light * near0;
    }

    /// <summary>The side of the piece where a ray that misses the face meets it; null where it passes by.</summary>
    private Colour? SideOf(Space ray, Space onFace, double fromOutlineMm)
    {
        var shape = scene.Shape;
        var thickness = scene.ThicknessMm;
        var drift = new Point(ray.X / ray.Z, ray.Y / ray.Z);
        var reach = drift.Length * thickness;
        if (fromOutlineMm > -reach - 0.5)
        {
            const int Steps = 24;
            for (var step = 1; step <= Steps; step++)
            {
                var z = thickness * step / Steps;
                var x = onFace.X + drift.X * z;
                var y = onFace.Y + drift.Y * z;
                var inside = shape.RoughlyInsideMm(x, y);
                if (inside < 0)
                    continue;
                // Step back to the surface itself.
                var near = z - Math.Min(thickness / Steps, inside / Math.Max(drift.Length, 1e-6));
                return Side(onFace.X + drift.X * near, onFace.Y + drift.Y * near, near);
            }
        }
        return null;
    }

    /// <summary>Share of the source that a ground point sees past the piece, and the dimming close beside it.</summary>
    private (float Open, float Near) Openness(double x, double y)
    {
        var shape = scene.Shape;
        var outside = -shape.RoughlyInsideMm(x, y);
        var near = 0.45f + 0.55f * Smooth.Step(-2, 0.6 * scene.ThicknessMm, outside);
        var towards = scene.Light.Towards;
        var run = scene.ThicknessMm / Math.Tan(scene.Light.Elevation);
        if (outside > run + 12)
            return (1, near);
        var closest = double.MaxValue;
        var steps = Math.Clamp((int)(run / 1.2), 6, 60);
        for (var step = 0; step <= steps; step++)
        {
            var t = run * step / steps;
            var clear = -shape.RoughlyInsideMm(x + towards.X * t, y + towards.Y * t);
            closest = Math.Min(closest, clear / (0.6 + 0.16 * t));
        }
        return (Smooth.Step(-1, 1, closest), near);
    }

    private Colour Side(double x, double y, double z)
    {
        var shape = scene.Shape;
        const double Step = 0.2;
        Point slope = new(
            shape.RoughlyInsideMm(x + Step, y) - shape.RoughlyInsideMm(x - Step, y),
            shape.RoughlyInsideMm(x, y + Step) - shape.RoughlyInsideMm(x, y - Step)
        );
        var length = Math.Max(slope.Length, 1e-9);
        var facing = -(slope.X * scene.Light.Towards.X + slope.Y * scene.Light.Towards.Y) / length;
        var round = x * slope.Y / length - y * slope.X / length;
        var grain =
            Noise.At(round * 1.6, z / 18, scene.Seed + 401) + 0.5f * Noise.At(round * 4.1, z / 7, scene.Seed + 402);
        var wood = scene.Grain.Timber.Earlywood.Towards(scene.Grain.Timber.Latewood, 0.45f + 0.3f * grain);
        wood = scene.Indicator.Preservative.Over(wood, 1.2f, 0.42f);
        wood = wood.Towards(Colour.Of("#7F7A6E"), 0.25f + 0.2f * Noise.At(round / 8, z / 12, scene.Seed + 403));
        var sun = (float)Math.Max(0, facing) * scene.Light.Direct;
        var down = 1 - 0.35f * (float)(z / scene.ThicknessMm);
        return wood * (scene.Light.Source * sun + scene.Light.Ambient * ((1 - scene.Light.Direct) * 0.75f * down));
    }
}
