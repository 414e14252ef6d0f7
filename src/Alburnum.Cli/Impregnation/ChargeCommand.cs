using System.ComponentModel;
using System.Globalization;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Diffusing;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Impregnation;

/// <summary>Plans one charge, and reckons it afterwards from its readings.</summary>
internal sealed class ChargeCommand(IAnsiConsole console, FactLibrary facts) : Command<ChargeCommand.Settings>
{
    // Across the grain, free and bound water together: the order remembered for softwoods in air drying.
    private const double DryingDiffusionM2PerS = 3e-10;

    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("Charge file (docs/how-to/plan-a-charge.md)")]
        public required string File { get; init; }

        [CommandOption("--json")]
        [Description("Print the plan and account as JSON")]
        public bool Json { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var order = ChargeFile.Read(settings.File);
        var species = facts.Species.Get(order.Species);
        var loads = order
            .Pieces.Select(pieces =>
                Load(
                    TreatingQuestion.Of(RequestOf(order, species, pieces.Section, settings.File), facts),
                    pieces,
                    cancellationToken
                )
            )
            .ToList();
        var volume = loads.Sum(load => load.VolumeM3);
        var question = new ChargeQuestion
        {
            VolumeM3 = volume,
            SurfaceM2 = loads.Sum(load => load.SurfaceM2),
            DensityKgPerM3 = loads.Sum(load => load.WeightKg) / volume,
            UptakeLPerM3 = Mean(loads, volume, load => load.Quick.UptakeLPerM3),
            ZoneLPerM3 = Mean(loads, volume, load => load.Quick.ZoneLPerM3),
            RetentionKgPerM3 = order.RetentionKgPerM3,
            SolutionDensityKgPerM3 = order.SolutionDensityKgPerM3,
        };
        var schedule = loads[0].Schedule;
        var document = new ChargeDocument(
            order.Name,
            order.Pieces.Sum(pieces => pieces.Count),
            volume,
            question.SurfaceM2,
            schedule.Name,
            schedule.Minutes,
            ChargePlan.For(question),
            new Estimate(
                loads.Sum(load => load.Quick.CoreShare.Value * load.VolumeM3) / volume,
                loads.Sum(load => load.Quick.CoreShare.StandardUncertainty * load.VolumeM3) / volume
            ),
            Drying(order, loads, settings.File),
            order.Readings is { } readings ? ChargeAccount.Of(readings(volume)) : null,
            TreatingWords.English.Say(loads.SelectMany(load => load.Assumptions).Distinct()),
            ChargeDocument.UsualCautions
        );
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(document.ToJson());
        else
            ChargeSummary.Print(console, document);
        return CommandLine.Done;
    }

    private static TreatingRequest RequestOf(ChargeOrder order, Species species, Section section, string file) =>
        new()
        {
            File = file,
            Species = species,
            Section = section,
            HeartRadiusMm = order.HeartRadiusMm,
            SapwoodMm = order.SapwoodMm,
            Position = order.Position,
            All = order.All,
            MoisturePercent = order.MoisturePercent,
            Schedule = order.Schedule,
            DepthMm = order.DepthMm,
            ZoneMm = order.ZoneMm,
            Incising = order.Incising,
        };

    private static LoadPart Load(TreatingQuestion input, ChargePieces pieces, CancellationToken stop)
    {
        var quick = QuickPrediction.Draw(input.Prediction, seed: 1, pieces: 5000, cancellation: stop);
        var section = input.Prediction.Section;
        var lengthM = pieces.LengthMm / 1000 * pieces.Count;
        var volume = section.AreaMm2 * 1e-6 * lengthM;
        var weight = volume * input.KgPerM3;
        return new LoadPart(
            section,
            volume,
            section.PerimeterMm / 1000 * lengthM,
            weight,
            quick,
            input.Prediction.Schedule,
            input.Assumptions
        );
    }

    // Pieces of a batch lean the same way: the charge's mean moves as the batches do, a third of a 90 % range here.
    private static Estimate Mean(List<LoadPart> loads, double volume, Func<LoadPart, Spread> spread) =>
        new(
            loads.Sum(load => spread(load).Middle * load.VolumeM3) / volume,
            loads.Sum(load => (spread(load).High - spread(load).Low) / 3.29 * load.VolumeM3) / volume
        );

    private static double? Drying(ChargeOrder order, List<LoadPart> loads, string file)
    {
        if (order.MoistureLimitPercent is not { } limit || order.MoisturePercent <= limit)
            return null;
        var air = EquilibriumMoisture.Percent(order.DryingCelsius, order.DryingHumidity);
        if (air >= limit)
        {
            var found = string.Create(
                CultureInfo.InvariantCulture,
                $"{limit:0.#} %, in air that keeps wood at {air:0.#} %"
            );
            throw new InputRefusedException(
                new InputProblem(
                    file,
                    0,
                    "",
                    "moistureLimitPercent",
                    found,
                    "drier or warmer air (dryingHumidityPercent, dryingCelsius)"
                )
            );
        }
        return DryingTime.Days(
            loads.Max(load => load.Section.ThicknessMm),
            order.MoisturePercent,
            limit,
            air,
            DryingDiffusionM2PerS
        );
    }

    private sealed record LoadPart(
        Section Section,
        double VolumeM3,
        double SurfaceM2,
        double WeightKg,
        QuickPrediction Quick,
        Schedule Schedule,
        IReadOnlyList<LogAssumption> Assumptions
    );
}
