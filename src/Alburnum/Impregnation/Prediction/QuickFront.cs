namespace Alburnum.Impregnation.Prediction;

/// <summary>The sharp front carried through a whole schedule, with the air ahead of it: the quick model.</summary>
/// <remarks>
/// The share of the way that the front has gone depends on one number, k/(φL²), so it is worked out once on a table and read
/// from there afterwards. Each step is solved for the front's place at its end (implicit), which is exact while the
/// pressure difference holds. The vacuum reaches the air inside as diffusion does, at its slowest rate. What comes back at
/// release is slowed by an assumed factor, because nothing published says how much comes back.
/// </remarks>
public sealed class QuickFront
{
    /// <summary>Share of the frictionless kickback that is let through. Assumed.</summary>
    public const double Kickback = 0.5;

    private const double LeastLog = -50;
    private const double MostLog = -6;
    private const int Entries = 265;
    private const int StepsPerStage = 24;
    private readonly double[] _reached = new double[Entries];
    private readonly double[] _kept = new double[Entries];
    private readonly Schedule _schedule;
    private readonly double _viscosityPaS;
    private readonly double _capillaryKPa;
    private readonly bool _isRound;

    /// <summary>Works out the table.</summary>
    /// <param name="schedule">The vessel's pressure history.</param>
    /// <param name="liquid">The liquid.</param>
    /// <param name="isRound">True for a front closing in on the pith of a round piece, false for a flat face.</param>
    public QuickFront(Schedule schedule, TreatingLiquid liquid, bool isRound)
    {
        _schedule = schedule;
        _viscosityPaS = liquid.ViscosityMPaS / 1000;
        // Cavities that wet fully, seen at half saturation.
        _capillaryKPa = 2 * liquid.SurfaceTensionMNPerM / AssumedVoids.CavityRadiusMicrometres * (Math.Sqrt(2) - 1);
        _isRound = isRound;
        Impulse = Drive(schedule);
        for (var i = 0; i < Entries; i++)
            (_reached[i], _kept[i]) = Through(Math.Exp(LeastLog + (MostLog - LeastLog) * i / (Entries - 1)));
    }

    /// <summary>Pressure above a vacuum, summed over the time with liquid against the wood, Pa·s.</summary>
    public double Impulse { get; }

    /// <summary>Greatest depth the front reaches, mm.</summary>
    /// <param name="permeabilityM2">Permeability along the way, m². Above 0.</param>
    /// <param name="voidFraction">Void share, above 0, at most 1.</param>
    /// <param name="deadEndMm">Where the way ends: half the thickness, the radius, or the border of wood that lets nothing through, mm.</param>
    public double DepthMm(double permeabilityM2, double voidFraction, double deadEndMm) =>
        deadEndMm * Read(_reached, permeabilityM2, voidFraction, deadEndMm);

    /// <summary>Permeability that brings the front to a depth, m²: the inverse of <see cref="DepthMm(double, double, double)"/>.</summary>
    /// <param name="depthMm">Depth, mm. Above 0, below the end of the way.</param>
    /// <param name="voidFraction">Void share, above 0, at most 1.</param>
    /// <param name="deadEndMm">Where the way ends, mm.</param>
    public double PermeabilityM2(double depthMm, double voidFraction, double deadEndMm)
    {
        Require.InRange(depthMm, 1e-6, deadEndMm, "mm");
        double low = Math.Log(1e-30),
            high = Math.Log(1e-8);
        while (high - low > 1e-9)
        {
            var middle = (low + high) / 2;
            if (DepthMm(Math.Exp(middle), voidFraction, deadEndMm) >= depthMm)
                high = middle;
            else
                low = middle;
        }
        return Math.Exp(high);
    }

    /// <summary>Share of the liquid taken in at the greatest depth that is still there at the end, 0 to 1.</summary>
    /// <param name="permeabilityM2">Permeability along the way, m². Above 0.</param>
    /// <param name="voidFraction">Void share, above 0, at most 1.</param>
    /// <param name="deadEndMm">Where the way ends, mm.</param>
    public double KeptShare(double permeabilityM2, double voidFraction, double deadEndMm)
    {
        var reached = Read(_reached, permeabilityM2, voidFraction, deadEndMm);
        return reached > 0 ? Math.Clamp(Read(_kept, permeabilityM2, voidFraction, deadEndMm) / reached, 0, 1) : 0;
    }

    /// <summary>Depth into a second layer behind a first that is filled on the way, mm from the face.</summary>
    /// <param name="firstM2">Permeability of the first layer, m².</param>
    /// <param name="firstMm">Its thickness, mm.</param>
    /// <param name="secondM2">Permeability of the second, m².</param>
    /// <param name="voidFraction">Void share, above 0, at most 1.</param>
    /// <param name="deadEndMm">Where the way ends, mm; beyond the first layer.</param>
    /// <remarks>
    /// Where the second lets through less than a twentieth, the first is a dead end of its own: filled to within a hundredth
    /// of its air limit, it counts as reached throughout, and the front goes on with the pressure that is left.
    /// </remarks>
    public double DepthMm(double firstM2, double firstMm, double secondM2, double voidFraction, double deadEndMm)
    {
        if (firstMm <= 0)
            return DepthMm(secondM2, voidFraction, deadEndMm);
        if (firstMm >= deadEndMm)
            return WithFullEnd(DepthMm(firstM2, voidFraction, deadEndMm), deadEndMm);
        if (secondM2 >= firstM2 / 20)
        {
            var mean = firstMm >= DepthMm(firstM2, voidFraction, deadEndMm) ? firstM2 : secondM2;
            return mean == firstM2 ? DepthMm(firstM2, voidFraction, deadEndMm) : Math.Max(firstMm, Beyond());
        }
        var inFirst = WithFullEnd(DepthMm(firstM2, voidFraction, firstMm), firstMm);
        return inFirst < firstMm ? inFirst : Beyond();

        // What is left of the drive once the first layer is full; its resistance stays in the way.
        double Beyond()
        {
            var scale = voidFraction * _viscosityPaS;
            var first = firstMm / 1000;
            var drive = Impulse - first * first * scale / (2 * firstM2);
            if (drive <= 0)
                return firstMm;
            var b = first * secondM2 / firstM2;
            var x = Math.Sqrt(b * b + 2 * secondM2 * drive / scale) - b;
            return Math.Min(deadEndMm, firstMm + 1000 * x);
        }
    }

    // The air that is left at a dead end is spread through it; wood filled to the limit counts as reached to the end.
    private double WithFullEnd(double depthMm, double endMm)
    {
        // Air shut in is pressed together to p₀/p of its room.
        var peak = Math.Max(1, _schedule.PeakKPa);
        var limit = Math.Max(0, 1 - Math.Min(Schedule.AtmosphereKPa, _schedule.PeakKPa) / peak);
        return depthMm >= 0.99 * limit * endMm && limit > 0.5 ? endMm : depthMm;
    }

    private static double Read(double[] table, double permeabilityM2, double voidFraction, double deadEndMm)
    {
        var end = deadEndMm / 1000;
        var at =
            (Math.Log(permeabilityM2 / (voidFraction * end * end)) - LeastLog) / (MostLog - LeastLog) * (Entries - 1);
        // Below the table the front follows √k to nothing.
        if (!(at > 0))
            return table[0] * Math.Exp(at * (MostLog - LeastLog) / (Entries - 1) / 2);
        var i = Math.Min((int)at, Entries - 2);
        var f = Math.Min(1, at - i);
        return table[i] + f * (table[i + 1] - table[i]);
    }

    // Greatest and last share of the way for one k/(φL²), in 1/… of SI units.
    private (double Reached, double Kept) Through(double scaled)
    {
        var rate = (_isRound ? 4 : 2) * scaled / _viscosityPaS;
        var air = 1000 * InitialAirKPa(scaled);
        double way = 0,
            reached = 0;
        var wet = false;
        foreach (var stage in _schedule.Stages)
        {
            wet |= stage.Contact == Contact.Liquid;
            if (!wet)
                continue;
            double before = 0;
            for (var n = 1; n <= StepsPerStage; n++)
            {
                var share = (double)n / StepsPerStage;
                var minutes = stage.Minutes * share * share;
                var pressure =
                    1000
                    * (stage.KPaAt((minutes + before) / 2) + (stage.Contact == Contact.Liquid ? _capillaryKPa : 0));
                way = Step(way, 60 * (minutes - before) * rate, pressure, air, stage.Contact == Contact.Liquid);
                before = minutes;
                reached = Math.Max(reached, way);
            }
        }
        return (reached, VolumeShare(way) / Math.Max(1e-300, VolumeShare(reached)) * reached);
    }

    private double Step(double way, double stretch, double pressure, double air, bool liquidOutside)
    {
        var drop = pressure - air / AirShare(way);
        if (drop <= 0)
            stretch *= Kickback;
        if (drop > 0 && !liquidOutside)
            return way;
        double low = drop > 0 ? way : 0,
            high = drop > 0 ? 1 : way;
        var start = Coordinate(way);
        for (var i = 0; i < 34; i++)
        {
            var middle = (low + high) / 2;
            if (Coordinate(middle) - start - stretch * (pressure - air / AirShare(middle)) > 0)
                high = middle;
            else
                low = middle;
        }
        return (low + high) / 2;
    }

    // The coordinate that grows evenly under an even pressure difference; 0 to 1 over the way.
    private double Coordinate(double way)
    {
        if (!_isRound)
            return way * way;
        var u = 1 - way;
        if (way < 1e-4)
            return 2 * way * way;
        return u <= 0 ? 1 : u * u * (2 * Math.Log(u) - 1) + 1;
    }

    private double AirShare(double way) => Math.Max(1e-9, 1 - VolumeShare(way));

    private double VolumeShare(double way) => _isRound ? way * (2 - way) : way;

    // What air is left when the liquid comes: the stages before it, felt through the wood.
    private double InitialAirKPa(double scaled)
    {
        var air = Schedule.AtmosphereKPa;
        foreach (var stage in _schedule.Stages.TakeWhile(stage => stage.Contact == Contact.Air))
        {
            var outside = (stage.FromKPa + stage.ToKPa) / 2;
            var meanPa = 500 * (outside + air);
            var seconds = 4 / (Math.PI * Math.PI) * AssumedVoids.AirMPaS / 1000 / (scaled * meanPa);
            air = outside + (air - outside) * Math.Exp(-60 * stage.Minutes / seconds);
        }
        return air;
    }

    private static double Drive(Schedule schedule) =>
        schedule
            .Stages.Where(stage => stage.Contact == Contact.Liquid)
            .Sum(stage => stage.Minutes * 60 * 1000 * (stage.FromKPa + stage.ToKPa) / 2);
}
