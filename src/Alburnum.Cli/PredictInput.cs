using System.Globalization;
using Alburnum.Acceptance;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Cli;

/// <summary>A prediction's settings made into a question, or refused in words.</summary>
/// <param name="Question">The question.</param>
/// <param name="Species">The species.</param>
/// <param name="Schedule">The schedule with its source.</param>
/// <param name="Plan">The sampling plan; null where none was given.</param>
/// <param name="DemandMm">The one depth asked for, mm; null where it differs from place to place.</param>
internal sealed record PredictInput(
    PredictionQuestion Question,
    Species Species,
    Fact<Schedule> Schedule,
    SingleSamplingPlan? Plan,
    double? DemandMm
)
{
    public static PredictInput From(PredictSettings settings, FactLibrary facts, ImpregnationLibrary library)
    {
        var species = facts.Species.Get(settings.Species);
        if (!SectionText.TryParse(settings.Section, out var section))
            throw Refused("SECTION", settings.Section, SectionText.Expected);
        var moisture = InRange("--moisture", settings.MoisturePercent, 5, 200);
        var density =
            settings.DensityKgPerM3
            ?? species.Density?.Value.TypicalKgPerM3
            ?? throw Refused("--density", "nothing", $"a density: that of {species.Name} is not known");
        var schedule = ScheduleOf(settings, library);
        var rule = Rule(settings);
        var zone = settings.ZoneMm ?? settings.DepthMm;
        var question = new PredictionQuestion(
            section,
            Log(settings, section, species),
            library.Of(species, isHeartwood: false),
            library.Of(species, isHeartwood: true),
            Voids(InRange("--density", density, 100, 1300), moisture),
            TreatingLiquid.Water(InRange("--temperature", settings.Celsius, 0, 95)),
            schedule.Value,
            null,
            rule,
            zone is null ? null : InRange("--zone-depth", zone.Value, 0.1, 1000)
        );
        InRange("--pieces", settings.Pieces, 100, 1_000_000);
        InRange("--share", settings.SharePercent, 1, 100);
        if (settings.Cells != 0)
            InRange("--cells", settings.Cells, 4, 2000);
        if (settings.StrengthPercent is { } strength)
            InRange("--strength", strength, 0.01, 100);
        return new PredictInput(
            question,
            species,
            schedule,
            PlanOf(settings),
            settings.WholeSapwood ? null : settings.DepthMm
        );
    }

    public static InputRefusedException Refused(string field, string found, string expected) =>
        new(new InputProblem("predict", 0, "", field, found, expected));

    private static double InRange(string field, double value, double low, double high) =>
        value >= low && value <= high ? value : throw Refused(field, Text(value), $"{Text(low)} to {Text(high)}");

    private static double Voids(double densityKgPerM3, double moisturePercent)
    {
        var basic = WoodDensity.BasicFrom12(densityKgPerM3);
        var most = WoodDensity.GreatestMoisturePercent(basic);
        if (moisturePercent >= 0.9 * most)
            throw Refused(
                "--moisture",
                Text(moisturePercent),
                $"well below saturation, which is {Text(Math.Round(most))} % in this wood"
            );
        var gravity = WoodDensity.SpecificGravity(basic, WoodDensity.UsualShrinkagePercent(basic), moisturePercent);
        return VoidFraction.Of(gravity, moisturePercent);
    }

    private static LogGeometry Log(PredictSettings settings, Section section, Species species)
    {
        if (settings.All is { } all)
        {
            return all switch
            {
                "sapwood" => LogGeometry.AllSapwood,
                "heartwood" => LogGeometry.AllHeartwood,
                _ => throw Refused("--all", all, "sapwood or heartwood"),
            };
        }
        var (x, y) = Pith(settings.Pith);
        if (settings.HeartRadiusMm is { } heart)
            return new LogGeometry(x, y, InRange("--heart-radius", heart, 0, 2000), Outer(section, x, y));
        if (section is RoundSection round && settings.SapwoodMm is { } sapwood)
            return new LogGeometry(
                x,
                y,
                round.DiameterMm / 2 - InRange("--sapwood", sapwood, 0, round.DiameterMm / 2),
                1e4
            );
        if (species.SapwoodWidth is { Value.IsDistinct: false } || SameClass(species))
            return LogGeometry.AllSapwood;
        throw Refused(
            "--heart-radius",
            "nothing",
            "where the heartwood lies: --heart-radius (and --pith), --sapwood for round timber, or --all sapwood|heartwood"
        );
    }

    private static bool SameClass(Species species) =>
        species.SapwoodTreatability is { } sapwood
        && species.HeartwoodTreatability is { } heartwood
        && sapwood.Value == heartwood.Value;

    // Large enough that no corner is wane.
    private static double Outer(Section section, double x, double y) =>
        Math.Sqrt(x * x + y * y) + section.ThicknessMm + Math.Sqrt(section.AreaMm2) + section.PerimeterMm;

    private static (double X, double Y) Pith(string? text)
    {
        if (text is null)
            return (0, 0);
        var parts = text.Split(',');
        return parts.Length == 2 && Parse(parts[0], out var x) && Parse(parts[1], out var y)
            ? (InRange("--pith", x, -2000, 2000), InRange("--pith", y, -2000, 2000))
            : throw Refused("--pith", text, "two numbers such as -20,15");
    }

    private static Fact<Schedule> ScheduleOf(PredictSettings settings, ImpregnationLibrary library)
    {
        var schedules = settings.SchedulesFile is { } file
            ? ImpregnationLibrary.ReadSchedules(file)
            : library.Schedules;
        return schedules.FirstOrDefault(row =>
                string.Equals(row.Value.Name, settings.Schedule, StringComparison.OrdinalIgnoreCase)
            )
            ?? throw Refused(
                "--schedule",
                settings.Schedule,
                string.Join(", ", schedules.Select(row => row.Value.Name))
            );
    }

    private static DepthRule Rule(PredictSettings settings)
    {
        if (settings.WholeSapwood)
            return new ShareOfZone(WoodZone.Sapwood, 1);
        if (settings.DepthMm is not { } depth)
            return new NoDepth();
        var zone = settings.Zone switch
        {
            "lateral" => WoodZone.Lateral,
            "sapwood" => WoodZone.Sapwood,
            "heartwood" => WoodZone.ExposedHeartwood,
            _ => throw Refused("--in", settings.Zone, "lateral, sapwood or heartwood"),
        };
        return new LeastDepth(zone, InRange("--depth", depth, 0.1, 1000));
    }

    private static SingleSamplingPlan? PlanOf(PredictSettings settings)
    {
        if (settings.Plan is not { } text)
            return null;
        var parts = text.Split(',');
        return
            parts.Length == 2
            && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var n)
            && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var c)
            && n >= 1
            && c < n
            ? new SingleSamplingPlan(n, c)
            : throw Refused("--plan", text, "cores and acceptance number, such as 20,2");
    }

    private static bool Parse(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value);

    private static string Text(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
