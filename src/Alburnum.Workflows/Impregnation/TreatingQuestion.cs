using Alburnum.Acceptance;
using Alburnum.Facts;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Heating;
using Alburnum.Impregnation.Incising;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Workflows.Impregnation;

/// <summary>A request about treating, checked against the facts and made into a question for the models.</summary>
public sealed record TreatingQuestion
{
    /// <summary>Timber wetter than this is not ready for a pressure treatment, %: free water stands in the way of the solution.</summary>
    public const double WetFromPercent = 28;

    /// <summary>Whether timber is too wet for a treatment.</summary>
    /// <param name="moisturePercent">Its moisture content, %.</param>
    public static bool IsTooWet(double moisturePercent) => moisturePercent > WetFromPercent;

    /// <summary>The question; its cuts are those of the pattern named, none where none is.</summary>
    public required PredictionQuestion Prediction { get; init; }

    /// <summary>The timber.</summary>
    public required Species Species { get; init; }

    /// <summary>The schedule with its source, at the pressure and for the minutes asked for.</summary>
    public required Fact<Schedule> Schedule { get; init; }

    /// <summary>The one required depth, mm; null where there is none, or it differs from place to place.</summary>
    public required double? DepthMm { get; init; }

    /// <summary>Strength of the solution, % of product by mass; null where not given.</summary>
    public required double? StrengthPercent { get; init; }

    /// <summary>Sampling plan; null where none was given.</summary>
    public required SingleSamplingPlan? Plan { get; init; }

    /// <summary>Moisture content before treatment, %.</summary>
    public required double MoisturePercent { get; init; }

    /// <summary>Weight of the timber with its water, kg/m³.</summary>
    public required double KgPerM3 { get; init; }

    /// <summary>Oven-dry wood in its volume at that moisture, kg/m³.</summary>
    public double DryKgPerM3 => KgPerM3 / (1 + MoisturePercent / 100);

    /// <summary>What was assumed because nobody said it.</summary>
    public required IReadOnlyList<LogAssumption> Assumptions { get; init; }

    /// <summary>Checks a request and puts the question together.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="facts">Permeabilities, schedules and incising patterns.</param>
    /// <exception cref="InputRefusedException">Something asked cannot be, or is not known of the species; names the field as it is called where the request was written.</exception>
    public static TreatingQuestion Of(TreatingRequest request, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(facts);
        var (species, library, file) = (request.Species, facts.Impregnation, request.File);
        if (request.Section is QuarteredSection quarter)
            throw TreatmentFields.Section.Refused(file, quarter.Label, "a sawn, round or half-round piece");
        var moisture = TreatmentFields.Moisture.InRange(request.MoisturePercent, file);
        var basic = BasicGravity(request, moisture);
        var shrinkage = WoodDensity.UsualShrinkagePercent(basic);
        var cavities = Cavities.Of(basic, shrinkage, moisture);
        if (cavities.Share < Cavities.LeastShare)
            throw TreatmentFields.Density.Refused(
                file,
                InputProblem.Number(
                    request.DensityKgPerM3 ?? request.Species.Density?.Value.TypicalKgPerM3 ?? double.NaN
                ),
                "a density at which the wood has cavities: here next to none of it is left for a solution"
            );
        var schedule = ScheduleOf(request, library);
        var log = LogOf(request);
        var (sapwood, heartwood) = (library.Of(species, isHeartwood: false), library.Of(species, isHeartwood: true));
        // Nobody can see where the heartwood begins: the whole piece is taken to be as hard to treat as the harder of the two.
        if (
            log.Assumptions.Any(assumption => assumption is SapwoodNotDistinct)
            && heartwood.LateralMedianM2 < sapwood.LateralMedianM2
        )
            sapwood = heartwood;
        return new()
        {
            Prediction = new()
            {
                Section = request.Section,
                Log = log.Log,
                Sapwood = sapwood.Times(cavities.OverSaturated),
                Heartwood = heartwood.Times(cavities.OverSaturated),
                VoidFraction = cavities.Share,
                WaterShare = cavities.WaterShare,
                Liquid = TreatingLiquid.Water(TreatmentFields.Temperature.InRange(request.Celsius, file)),
                Warming = WarmingOf(request, schedule.Value, WoodDensity.SpecificGravity(basic, shrinkage, moisture)),
                Schedule = schedule.Value,
                Incising = PatternOf(request, library),
                Rule = RuleOf(request),
                ZoneDepthMm = TreatmentFields.ZoneDepth.InRange(request.ZoneDepthMm ?? request.DepthMm, file),
            },
            Species = species,
            Schedule = schedule,
            DepthMm = request.DepthMm,
            StrengthPercent = TreatmentFields.Strength.InRange(request.StrengthPercent, file),
            Plan = request.Plan,
            MoisturePercent = moisture,
            KgPerM3 = WoodDensity.KgPerM3(WoodDensity.SpecificGravity(basic, shrinkage, moisture), moisture),
            Assumptions = log.Assumptions,
        };
    }

    /// <summary>The same of pieces that lay in the log as the request says, of which the demand must ask something.</summary>
    /// <inheritdoc cref="Of"/>
    public static TreatingQuestion OfPieces(TreatingRequest request, FactLibrary facts)
    {
        var asked = Of(request, facts);
        // A code's demand may well ask nothing of these pieces; whoever writes one wants to know of it.
        return request.Demand is null && asked.Prediction is { Rule: not NoDepth, AsksOfAnyPlace: false }
            ? throw AsksOfNothing(request)
            : asked;
    }

    private static InputRefusedException AsksOfNothing(TreatingRequest request)
    {
        var (isHeartwood, file) = (request.Zone == WoodZone.ExposedHeartwood && !request.IsWholeSapwood, request.File);
        var (wood, field) = isHeartwood
            ? ("heartwood", TreatmentFields.Zone)
            : ("sapwood", request.IsWholeSapwood ? TreatmentFields.WholeSapwood : TreatmentFields.Zone);
        return field.Refused(
            file,
            $"{wood}, which reaches no face of these pieces",
            $"{wood} at a face: {TreatmentFields.All.NameIn(file)} {wood}, or a log that shows it ({TreatmentFields.HeartwoodRadius.NameIn(file)}, {TreatmentFields.Position.NameIn(file)}, {TreatmentFields.LogDiameter.NameIn(file)})"
        );
    }

    /// <summary>The schedule of a name, at the pressure and for the minutes asked for.</summary>
    /// <exception cref="InputRefusedException">There is no such schedule, or it cannot be run so.</exception>
    private static Fact<Schedule> ScheduleOf(TreatingRequest request, ImpregnationLibrary library)
    {
        var schedules = request.OwnSchedules ?? library.Schedules;
        var found =
            schedules.FirstOrDefault(row =>
                string.Equals(row.Value.Name, request.Schedule, StringComparison.OrdinalIgnoreCase)
            )
            ?? throw TreatmentFields.Schedule.Refused(
                request.File,
                request.Schedule,
                string.Join(", ", schedules.Select(row => row.Value.Name))
            );
        var schedule = found.Value;
        if (TreatmentFields.Pressure.InRange(request.PeakKPa, request.File) is { } kPa)
            schedule = schedule.IsUnderPressure
                ? WithPeak(schedule, kPa)
                : throw TreatmentFields.Pressure.Refused(
                    request.File,
                    InputProblem.Number(kPa),
                    FormattableString.Invariant(
                        $"no pressure: \"{schedule.Name}\" works without any, and with one it is another schedule"
                    )
                );
        if (TreatmentFields.Minutes.InRange(request.PressureMinutes, request.File) is { } minutes)
            schedule = schedule.WithPressurePeriod(minutes);
        return found with { Value = schedule };
    }

    private static Schedule WithPeak(Schedule schedule, double kPa)
    {
        if (kPa > schedule.BelowPeakKPa && Ranges.PressureKPa.Holds(kPa))
            return schedule.WithPeak(kPa);
        throw new InputRefusedException(
            new InputProblem(
                "schedule",
                0,
                schedule.Name,
                "peak pressure",
                FormattableString.Invariant($"{kPa:0.#} kPa"),
                FormattableString.Invariant(
                    $"above {schedule.BelowPeakKPa:0.#} kPa, where the schedule already works, to {Ranges.PressureKPa.High:0.#} kPa"
                )
            )
        );
    }

    private static Warming? WarmingOf(TreatingRequest request, Schedule schedule, double specificGravity)
    {
        var wood = TreatmentFields.WoodTemperature.InRange(request.WoodCelsius, request.File);
        if (wood == request.Celsius && !schedule.IsHeated)
            return null;
        var inWalls = Math.Min(request.MoisturePercent, WoodDensity.FibreSaturationPercent);
        return new(new(1000 * specificGravity, inWalls), wood, request.Celsius);
    }

    // Ovendry mass over green volume; refused where the cavities are nearly full of water.
    private static double BasicGravity(TreatingRequest request, double moisturePercent)
    {
        var density = TreatmentFields.Density.InRange(
            request.DensityKgPerM3
                ?? request.Species.Density?.Value.TypicalKgPerM3
                ?? throw TreatmentFields.Density.Refused(
                    request.File,
                    "nothing",
                    $"a density: that of {request.Species.Name} is not known"
                ),
            request.File
        );
        var basic = WoodDensity.BasicFrom12(density);
        var most = WoodDensity.GreatestMoisturePercent(basic);
        if (moisturePercent >= Cavities.Most * most)
            throw TreatmentFields.Moisture.Refused(
                request.File,
                InputProblem.Number(moisturePercent),
                $"well below saturation, which is {InputProblem.Number(Math.Round(most))} % in this wood"
            );
        return basic;
    }

    private static UsualLog LogOf(TreatingRequest request)
    {
        var (section, file) = (request.Section, request.File);
        if (request.All is { } all)
            return new(all == WoodThroughout.Sapwood ? LogGeometry.AllSapwood : LogGeometry.AllHeartwood, []);
        if (TreatmentFields.HeartwoodRadius.InRange(request.HeartwoodRadiusMm, file) is { } heart)
        {
            var pith = request.Pith ?? new(0, SectionBox.CentreYMm(section));
            var x = TreatmentFields.Pith.InRange(pith.XMm, file);
            var y = TreatmentFields.Pith.InRange(pith.YMm, file);
            return new(new LogGeometry(x, y, heart, Outer(section, x, y)), []);
        }
        if (request.Pith is not null)
            throw TreatmentFields.Pith.Refused(
                file,
                $"no {TreatmentFields.HeartwoodRadius.NameIn(file)}",
                $"both, or {TreatmentFields.Position.NameIn(file)} and {TreatmentFields.Sapwood.NameIn(file)}"
            );
        return Usual(request, SapwoodOf(request), TreatmentFields.LogDiameter.InRange(request.LogDiameterMm, file))
            ?? throw TreatmentFields.Sapwood.Refused(
                file,
                "nothing",
                $"the width of the sapwood: that of {request.Species.Name} is not known (or {TreatmentFields.HeartwoodRadius.NameIn(file)}, or {TreatmentFields.All.NameIn(file)} sapwood or heartwood)"
            );
    }

    /// <summary>The width of the sapwood as it was stated, mm; null where it was not.</summary>
    /// <param name="request">What is asked.</param>
    /// <exception cref="InputRefusedException">It is out of range, or wider than the log that was stated.</exception>
    internal static double? SapwoodOf(TreatingRequest request)
    {
        var sapwood = TreatmentFields.Sapwood.InRange(request.SapwoodMm, request.File);
        return sapwood is { } wide && request.LogDiameterMm / 2 is { } radius && wide > radius
            ? throw TreatmentFields.Sapwood.Refused(
                request.File,
                InputProblem.Number(wide),
                $"at most {InputProblem.Number(radius)} mm, half of {TreatmentFields.LogDiameter.NameIn(request.File)}"
            )
            : sapwood;
    }

    private static UsualLog? Usual(TreatingRequest request, double? sapwoodMm, double? diameterMm)
    {
        LogFault fault;
        try
        {
            return UsualLog.Of(request.Section, request.Species, request.Position, sapwoodMm, diameterMm);
        }
        catch (LogFaultException refused)
        {
            fault = refused.Fault;
        }
        throw new InputRefusedException(
            new InputProblem(
                "log",
                0,
                "",
                "diameter",
                diameterMm is { } given ? InputProblem.Number(given) : "nothing",
                fault switch
                {
                    SideWithoutDiameter => "the diameter of the log, which says how far out a side piece lies",
                    LogTooSmall small =>
                        $"at least {InputProblem.Number(Math.Ceiling(small.LeastMm))} mm, to hold {request.Section.Label} sawn that way",
                    var other => throw new InvalidOperationException($"{other} is no fault of a log."),
                }
            )
        );
    }

    // Large enough that no corner is wane.
    private static double Outer(Section section, double x, double y) =>
        Math.Sqrt(x * x + y * y) + section.ThicknessMm + Math.Sqrt(section.AreaMm2) + section.PerimeterMm;

    private static IncisingPattern? PatternOf(TreatingRequest request, ImpregnationLibrary library)
    {
        if (request.Incising is not { } name)
            return null;
        return library
                .Patterns.FirstOrDefault(row => string.Equals(row.Name, name, StringComparison.OrdinalIgnoreCase))
                .Pattern?.Value
            ?? throw TreatmentFields.Incising.Refused(
                request.File,
                name,
                string.Join(", ", library.Patterns.Select(row => row.Name))
            );
    }

    private static DepthRule RuleOf(TreatingRequest request)
    {
        if (request.Demand is { } demand)
            return demand;
        if (request is { IsWholeSapwood: true, DepthMm: not null })
            throw TreatmentFields.WholeSapwood.Refused(
                request.File,
                $"{TreatmentFields.Depth.NameIn(request.File)} as well",
                "one of the two"
            );
        if (request.IsWholeSapwood)
            return new ShareOfZone(WoodZone.Sapwood, 1);
        if (request.DepthMm is not { } depth)
            return new NoDepth();
        // No depth is greater than to the middle of the piece.
        var range = TreatmentFields.Depth.Range! with
        {
            High = request.Section.ThicknessMm / 2,
        };
        return new LeastDepth(
            request.Zone,
            (TreatmentFields.Depth with { Range = range }).InRange(depth, request.File)
        );
    }
}
