using Spectre.Console.Cli;

namespace Alburnum.Cli.Requirements;

/// <summary>Commands that find what is required, and on what that rests.</summary>
internal static class RequirementCommands
{
    public static void AddTo(IConfigurator config)
    {
        config
            .AddCommand<NameCommand>("name")
            .WithDescription("Find what a name or a mark means: timber, component, preservative, class");
        config
            .AddCommand<UseClassCommand>("use-class")
            .WithDescription("Find the use class from where and how a piece of wood is used");
        config
            .AddCommand<RequirementCommand>("requirement")
            .WithDescription("Find what a code of practice requires of a piece of wood, and why");
        config.AddBranch(
            "rulebook",
            rulebook =>
            {
                rulebook.SetDescription("Codes of practice as tables: list, check, compare, fill in");
                rulebook.AddCommand<RulebookListCommand>("list").WithDescription("List the rulebooks supplied");
                rulebook
                    .AddCommand<RulebookCheckCommand>("check")
                    .WithDescription("Find gaps, overlaps, contradictions and rows that ask for less");
                rulebook
                    .AddCommand<RulebookCompareCommand>("compare")
                    .WithDescription("List, case by case, what changes between two editions");
                rulebook
                    .AddCommand<RulebookWorksheetCommand>("worksheet")
                    .WithDescription(
                        "List what is still to be read in the code itself, to be filled in from your copy"
                    );
                rulebook
                    .AddCommand<RulebookFillCommand>("fill")
                    .WithDescription("Read a worksheet that you filled in into a rulebook of your own");
            }
        );
        config
            .AddCommand<SourcesCommand>("sources")
            .WithDescription("List the documents that the facts are taken from, and how each was read");
    }
}
