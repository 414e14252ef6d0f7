using System.Diagnostics;
using Alburnum.Cli.Acceptance;
using Alburnum.Cli.Bundles;
using Alburnum.Cli.Cases;
using Alburnum.Cli.Charging;
using Alburnum.Cli.Completion;
using Alburnum.Cli.Handling;
using Alburnum.Cli.Impregnation;
using Alburnum.Cli.Ledger;
using Alburnum.Cli.Letters;
using Alburnum.Cli.Measuring;
using Alburnum.Cli.Requirements;
using Alburnum.Cli.Serving;
using Alburnum.Cli.Storing;
using Alburnum.Records;
using Alburnum.Records.Facts;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli;

/// <summary>The command line: which commands there are, and how each ending becomes an exit status.</summary>
public static partial class CommandLine
{
    /// <summary>Everything asked for was done.</summary>
    public const int Done = 0;

    /// <summary>The input was refused; nothing was written.</summary>
    public const int Refused = 2;

    /// <summary>A fault of the program itself.</summary>
    public const int Fault = 70;

    /// <summary>Stopped by the user.</summary>
    public const int Stopped = 130;

    /// <summary>Runs one command line.</summary>
    /// <param name="args">Words after the program's name.</param>
    /// <param name="facts">The facts that answers rest on.</param>
    /// <param name="console">Where results go.</param>
    /// <param name="errors">Where refusals go.</param>
    /// <param name="stop">Signalled when the user wants to stop.</param>
    /// <returns>0 done, 2 refused, 70 a fault of the program itself, 130 stopped.</returns>
    public static async Task<int> RunAsync(
        IReadOnlyList<string> args,
        FactLibrary facts,
        IAnsiConsole console,
        TextWriter errors,
        CancellationToken stop
    )
    {
        try
        {
            // The parser ends with a status of its own where a command was named that only has others below it.
            return await App(facts, console).RunAsync(args, stop) is Done ? Done : Refused;
        }
        catch (InputRefusedException refused)
        {
            await errors.WriteLineAsync(refused.Message.AsMemory(), stop);
            return Refused;
        }
        catch (CommandAppException misread)
        {
            var commands = await CommandTree.OfProgramAsync(facts, stop);
            foreach (var line in Misread.InWords(misread.Message, args, commands))
                await errors.WriteLineAsync($"alburnum: {InputProblem.Visible(line)}".AsMemory(), stop);
            return Refused;
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            await errors.WriteLineAsync($"alburnum: {Said("terminal.not-printed")}".AsMemory(), CancellationToken.None);
            return Refused;
        }
        catch (OperationCanceledException)
        {
            await errors.WriteLineAsync(Said("terminal.stopped").AsMemory(), CancellationToken.None);
            return Stopped;
        }
        // Whatever else: what was kept is whole, since each file is written and then named, and each run kept in one transaction.
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            var place = new StackTrace(fault).GetFrame(0)?.GetMethod();
            var says = Said(
                "terminal.fault",
                ("kind", fault.GetType().Name),
                ("place", $"{place?.DeclaringType?.Name}.{place?.Name}"),
                ("program", ProgramName.WithVersion)
            );
            await errors.WriteLineAsync($"alburnum: {says}".AsMemory(), CancellationToken.None);
            return Fault;
        }
    }

    private static CommandApp App(FactLibrary facts, IAnsiConsole console)
    {
        var app = new CommandApp();
        app.Configure(config =>
        {
            config.SetApplicationName("alburnum");
            config.ConfigureConsole(new ShownConsole(console));
            config.Settings.Registrar.RegisterInstance(facts);
            config.PropagateExceptions();
            config.UseStrictParsing();
            config.SetInterceptor(new MissingValues());
            // One line a command, in the order in which a case travels.
            RequirementCommands.AddTo(config);
            config
                .AddCommand<PredictCommand>("predict")
                .WithDescription("Predict what the vessel can achieve in a timber");
            config
                .AddCommand<SawCommand>("saw")
                .WithDescription(
                    "Find which pieces of a cutting pattern show heartwood, and what that does to conformity"
                );
            config.AddCommand<InciseCommand>("incise").WithDescription("Find the lightest incising that is enough");
            config
                .AddCommand<SweepCommand>("sweep")
                .WithDescription("Predict over a range of two inputs and map the result");
            config
                .AddCommand<BoronCommand>("boron")
                .WithDescription("Predict how far boron spreads in damp storage, and how much washes out");
            config
                .AddCommand<FixationCommand>("fixation")
                .WithDescription("Tell when a preservative has fixed, by strength and temperature");
            ChargeCommands.AddTo(config);
            MeasuringCommands.AddTo(config);
            config.AddCommand<CaseCommand>("case").WithDescription("Run a case folder from enquiry to report");
            AcceptanceCommands.AddTo(config);
            config
                .AddCommand<HandlingCommand>("handling")
                .WithDescription(
                    "Ask about fixings, moisture, fixation, leaching, burning, waste or storage of treated timber"
                );
            config
                .AddCommand<ExplainCommand>("explain")
                .WithDescription("Answer in plain words what lay clients ask most often");
            config.AddCommand<ServeCommand>("serve").WithDescription("Show the cases in a browser on this machine");
            StoreCommands.AddTo(config);
            LedgerCommands.AddTo(config);
            BundleCommands.AddTo(config);
            config
                .AddCommand<CompletionCommand>("completion")
                .WithDescription("Print a script that lets bash, zsh or fish complete commands and options");
        });
        return app;
    }
}
