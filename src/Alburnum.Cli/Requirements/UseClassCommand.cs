using System.ComponentModel;
using Alburnum.Records.Facts;
using Alburnum.Reports.Requirements;
using Alburnum.Requirements;
using Alburnum.Workflows.Requirements;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Requirements;

/// <summary>The use class from where a piece stands.</summary>
internal sealed class UseClassCommand(IAnsiConsole console, FactLibrary facts) : Command<UseClassCommand.Settings>
{
    internal sealed class Settings : CommandSettings
    {
        [CommandOption("--salt-water <YES|NO>")]
        [Description("It stands in salt water")]
        public string? SaltWater { get; init; }

        [CommandOption("--ground-contact <YES|NO>")]
        [Description("It touches the ground or fresh water")]
        public string? GroundContact { get; init; }

        [CommandOption("--weather <YES|NO>")]
        [Description("It is outdoors and the weather reaches it")]
        public string? Weather { get; init; }

        [CommandOption("--water-stays <YES|NO>")]
        [Description("Water can stay on it, in joints or on end grain")]
        public string? WaterStays { get; init; }

        [CommandOption("--damp <YES|NO>")]
        [Description("Under cover, it can get damp now and then")]
        public string? Damp { get; init; }

        [CommandOption("--coated <YES|NO>")]
        [Description("A coating is applied and maintained")]
        public string? Coated { get; init; }

        [CommandOption("--hard-to-reach <YES|NO>")]
        [Description("It is hard to reach or replace")]
        public string? HardToReach { get; init; }

        [CommandOption("--could-hurt-people <YES|NO>")]
        [Description("People could be hurt if it fails")]
        public string? CouldHurtPeople { get; init; }

        [CommandOption("--termites <YES|NO>")]
        [Description("Termites are present where it is used")]
        public string? Termites { get; init; }

        [CommandOption("--beetles <YES|NO>")]
        [Description("Beetles that attack seasoned timber are present where it is used")]
        public string? Beetles { get; init; }

        [CommandOption("--json")]
        [Description("Print the answer as JSON")]
        public bool Json { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var document = UseClassMapping.From(FindUseClass.Run(Read(settings), facts));
        return console.Show(document, settings.Json, UseClassText.Lines(document));
    }

    private static Exposure Read(Settings settings)
    {
        var problems = new List<InputProblem>();
        var exposure = new Exposure
        {
            IsInSaltWater = YesNo("--salt-water", settings.SaltWater),
            TouchesGroundOrFreshWater = YesNo("--ground-contact", settings.GroundContact),
            IsExposedToWeather = YesNo("--weather", settings.Weather),
            LetsWaterStay = YesNo("--water-stays", settings.WaterStays),
            MayGetDamp = YesNo("--damp", settings.Damp),
            IsCoated = YesNo("--coated", settings.Coated),
            IsHardToReach = YesNo("--hard-to-reach", settings.HardToReach),
            CouldHurtPeople = YesNo("--could-hurt-people", settings.CouldHurtPeople),
            HasTermites = YesNo("--termites", settings.Termites),
            HasBeetles = YesNo("--beetles", settings.Beetles),
        };
        return problems.Count == 0 ? exposure : throw new InputRefusedException(problems);

        bool? YesNo(string option, string? text)
        {
            if (text is null or "yes" or "no")
                return text is null ? null : text == "yes";
            problems.Add(new InputProblem("command line", 0, "", option, $"\"{text}\"", "yes or no"));
            return null;
        }
    }
}
