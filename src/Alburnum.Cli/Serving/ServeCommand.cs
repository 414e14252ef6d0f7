using System.ComponentModel;
using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Web;
using Microsoft.AspNetCore.Connections;
using Microsoft.Extensions.Hosting;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Serving;

/// <summary>Serves the local web application until it is stopped.</summary>
internal sealed class ServeCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<ServeCommand.Settings>
{
    internal sealed class Settings : KeepingSettings
    {
        [CommandOption("--port <PORT>")]
        [Description("Port on 127.0.0.1; default: 5227; 0 takes any free port")]
        public int Port { get; init; } = 5227;

        public override ValidationResult Validate() =>
            Port is >= 0 and <= 65535
                ? ValidationResult.Success()
                : ValidationResult.Error($"--port: found {Port}, expected 0 to 65535.");
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var store = await CaseStore.KeepOrLookAsync(
            settings.StorePath,
            settings.Person,
            console.WriteLine,
            cancellationToken
        );
        await using var app = WebServer.Create(store, facts, settings.Port);
        try
        {
            await app.StartAsync(cancellationToken);
        }
        catch (IOException taken)
        {
            // Kestrel wraps what the system says; a port may be in use, or kept for others.
            var found =
                taken.InnerException is AddressInUseException
                    ? $"{settings.Port}, which another program uses"
                    : $"{settings.Port}, which this user may not use";
            throw Options.Refused("--port", found, "a free port; 0 picks one");
        }
        console.WriteLine(Said("terminal.store", ("place", store.Place)));
        console.WriteLine(Said("terminal.open", ("address", app.Urls.First())));
        // Ctrl+C, and a request to end from the system, both stop it in good order.
        await app.WaitForShutdownAsync(cancellationToken);
        return CommandLine.Done;
    }
}
