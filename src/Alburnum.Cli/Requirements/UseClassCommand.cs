using Alburnum.Facts;
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
    internal sealed class Settings : ExposureSettings
    {
        [CommandOption("--hard-to-reach <YES|NO>")]
        [HelpOf(typeof(ExposureFields), nameof(ExposureFields.HardToReach))]
        public string? HardToReach { get; init; }

        [CommandOption("--could-hurt-people <YES|NO>")]
        [HelpOf(typeof(ExposureFields), nameof(ExposureFields.CouldHurtPeople))]
        public string? CouldHurtPeople { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var document = UseClassMapping.From(FindUseClass.Run(Read(settings, facts), facts));
        return console.Show(document, settings.Json, UseClassText.Lines(document));
    }

    private static Exposure Read(Settings settings, FactLibrary facts)
    {
        var problems = new List<InputProblem>();
        var fields = new OptionFields(settings, problems);
        var exposure = ExposureReader.Read(fields, facts) with
        {
            IsHardToReach = fields.YesNo(ExposureFields.HardToReach),
            CouldHurtPeople = fields.YesNo(ExposureFields.CouldHurtPeople),
        };
        return problems.Count == 0 ? exposure : throw new InputRefusedException(problems);
    }
}
