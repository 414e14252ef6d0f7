using System.Globalization;
using Alburnum.Acceptance;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Incising;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Cli.Impregnation;

/// <summary>A request made into a question, or refused in words.</summary>
/// <param name="Question">The question; its cuts are those of a pattern named, none where one is to be designed.</param>
/// <param name="Species">The species.</param>
/// <param name="Schedule">The schedule with its source.</param>
/// <param name="Plan">The sampling plan; null where none was given.</param>
/// <param name="DemandMm">The one depth asked for, mm; null where it differs from place to place.</param>
/// <param name="KgPerM3">Weight of the timber with its water, kg/m³.</param>
/// <param name="Assumptions">What was assumed for want of anything said, one sentence each.</param>
internal sealed record PredictInput(
    PredictionQuestion Question,
    Species Species,
    Fact<Schedule> Schedule,
    SingleSamplingPlan? Plan,
    double? DemandMm,
    double KgPerM3,
    IReadOnlyList<string> Assumptions
)
{
    public static PredictInput From(PredictRequest request, FactLibrary facts, ImpregnationLibrary library)
    {
        var species = facts.Species.Get(request.Species);
        var section = SectionOf(request.Section);
        var moisture = InRange("--moisture", request.MoisturePercent, 5, 200);
        var density = InRange(
            "--density",
            request.DensityKgPerM3
                ?? species.Density?.Value.TypicalKgPerM3
                ?? throw Refused("--density", "nothing", $"a density: that of {species.Name} is not known"),
            100,
            1300
        );
        var gravity = Gravity(density, moisture);
        var schedule = ScheduleOf(request, library);
        var zone = request.ZoneMm ?? request.DepthMm;
        var log = Log(request, section, species);
        var question = new PredictionQuestion
        {
            Section = section,
            Log = log.Log,
            Sapwood = library.Of(species, isHeartwood: false),
            Heartwood = library.Of(species, isHeartwood: true),
            VoidFraction = VoidFraction.Of(gravity, moisture),
            Liquid = TreatingLiquid.Water(InRange("--temperature", request.Celsius, 0, 95)),
            Schedule = schedule.Value,
            Incising = PatternOf(request, library),
            Rule = Rule(request, section),
            ZoneMm = zone is null ? null : InRange("--zone-depth", zone.Value, 0.1, 1000),
        };
        if (request.StrengthPercent is { } strength)
            InRange("--strength", strength, 0.01, 100);
        return new PredictInput(
            question,
            species,
            schedule,
            PlanOf(request),
            request.DepthMm,
            WoodDensity.KgPerM3(gravity, moisture),
            log.Assumptions
        );
    }

    public static InputRefusedException Refused(string field, string found, string expected) =>
        new(new InputProblem("predict", 0, "", field, found, expected));

    public static double InRange(string field, double value, double low, double high) =>
        value >= low && value <= high ? value : throw Refused(field, Text(value), $"{Text(low)} to {Text(high)}");

    private static Section SectionOf(string text)
    {
        var trimmed = text.Trim();
        if (
            trimmed.StartsWith("half", StringComparison.OrdinalIgnoreCase)
            && SectionText.TryParse(trimmed[4..].TrimStart(' ', '-'), out var whole)
            && whole is RoundSection round
        )
            return new HalfRoundSection(round.DiameterMm);
        return SectionText.TryParse(text, out var section)
            ? section
            : throw Refused("SECTION", text, $"{SectionText.Expected}, or \"half round 120\"");
    }

    // Ovendry mass over volume at the moisture; refused where the cavities are nearly full of water.
    private static double Gravity(double densityKgPerM3, double moisturePercent)
    {
        var basic = WoodDensity.BasicFrom12(densityKgPerM3);
        var most = WoodDensity.GreatestMoisturePercent(basic);
        if (moisturePercent >= 0.9 * most)
            throw Refused(
                "--moisture",
                Text(moisturePercent),
                $"well below saturation, which is {Text(Math.Round(most))} % in this wood"
            );
        return WoodDensity.SpecificGravity(basic, WoodDensity.UsualShrinkagePercent(basic), moisturePercent);
    }

    private static UsualLog Log(PredictRequest request, Section section, Species species)
    {
        if (request.All is { } all)
        {
            return all switch
            {
                "sapwood" => new(LogGeometry.AllSapwood, []),
                "heartwood" => new(LogGeometry.AllHeartwood, []),
                _ => throw Refused("--all", all, "sapwood or heartwood"),
            };
        }
        if (request.HeartRadiusMm is { } heart)
        {
            var (x, y) = Pith(request.Pith, section);
            return new(new LogGeometry(x, y, InRange("--heart-radius", heart, 0, 2000), Outer(section, x, y)), []);
        }
        if (request.Pith is not null)
            throw Refused("--pith", "no --heart-radius", "both, or --position and --sapwood");
        SawingPosition? position = request.Position switch
        {
            null => null,
            "boxed" => SawingPosition.Boxed,
            "halved" => SawingPosition.Halved,
            "quartered" => SawingPosition.Quartered,
            "side" => SawingPosition.Side,
            _ => throw Refused("--position", request.Position, "boxed, halved, quartered or side"),
        };
        double? sapwood = request.SapwoodMm is { } width ? InRange("--sapwood", width, 0, 2000) : null;
        double? log = request.LogDiameterMm is { } diameter ? InRange("--log-diameter", diameter, 10, 4000) : null;
        return UsualLog.Of(section, species, position, sapwood, log)
            ?? throw Refused(
                "--sapwood",
                "nothing",
                $"the width of the sapwood: that of {species.Name} is not known (or --heart-radius, or --all sapwood or heartwood)"
            );
    }

    // Large enough that no corner is wane.
    private static double Outer(Section section, double x, double y) =>
        Math.Sqrt(x * x + y * y) + section.ThicknessMm + Math.Sqrt(section.AreaMm2) + section.PerimeterMm;

    private static (double X, double Y) Pith(string? text, Section section)
    {
        if (text is null)
            return (0, SectionBox.CentreYMm(section));
        var parts = text.Split(',');
        return parts.Length == 2 && Parse(parts[0], out var x) && Parse(parts[1], out var y)
            ? (InRange("--pith", x, -2000, 2000), InRange("--pith", y, -2000, 2000))
            : throw Refused("--pith", text, "two numbers such as -20,15");
    }

    public static Fact<Schedule> ScheduleOf(PredictRequest request, ImpregnationLibrary library)
    {
        var schedules = request.SchedulesFile is { } file ? ImpregnationLibrary.ReadSchedules(file) : library.Schedules;
        var found =
            schedules.FirstOrDefault(row =>
                string.Equals(row.Value.Name, request.Schedule, StringComparison.OrdinalIgnoreCase)
            )
            ?? throw Refused(
                "--schedule",
                request.Schedule,
                string.Join(", ", schedules.Select(row => row.Value.Name))
            );
        var schedule = found.Value;
        if (request.PeakKPa is { } kPa)
            schedule = schedule.WithPeak(InRange("--pressure", kPa, 0.5, 5000));
        if (request.PressureMinutes is { } minutes)
            schedule = schedule.WithPressurePeriod(InRange("--minutes", minutes, 0.1, 1e5));
        return found with { Value = schedule };
    }

    private static IncisingPattern? PatternOf(PredictRequest request, ImpregnationLibrary library)
    {
        if (request.Incise is null)
            return null;
        return library
                .Patterns.FirstOrDefault(row =>
                    string.Equals(row.Name, request.Incise, StringComparison.OrdinalIgnoreCase)
                )
                .Pattern?.Value
            ?? throw Refused(
                "--incise",
                request.Incise,
                string.Join(", ", library.Patterns.Select(row => row.Name))
                    + "; alburnum incise finds the lightest that will do"
            );
    }

    private static DepthRule Rule(PredictRequest request, Section section)
    {
        if (request is { WholeSapwood: true, DepthMm: not null })
            throw Refused("--whole-sapwood", "--depth beside it", "the one or the other");
        if (request.WholeSapwood)
            return new ShareOfZone(WoodZone.Sapwood, 1);
        if (request.DepthMm is not { } depth)
            return new NoDepth();
        var zone = request.Zone switch
        {
            "lateral" => WoodZone.Lateral,
            "sapwood" => WoodZone.Sapwood,
            "heartwood" => WoodZone.ExposedHeartwood,
            _ => throw Refused("--in", request.Zone, "lateral, sapwood or heartwood"),
        };
        // No depth is greater than to the middle of the piece.
        return new LeastDepth(zone, InRange("--depth", depth, 0.1, section.ThicknessMm / 2));
    }

    private static SingleSamplingPlan? PlanOf(PredictRequest request)
    {
        if (request.Plan is not { } text)
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
