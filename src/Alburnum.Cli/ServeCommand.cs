using System.ComponentModel;
using Alburnum.Records.Store;
using Alburnum.Web;
using Microsoft.Extensions.Hosting;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli;

/// <summary>Serves the local web application until it is stopped.</summary>
internal sealed class ServeCommand(IAnsiConsole console) : AsyncCommand<ServeCommand.Settings>
{
    internal sealed class Settings : StoreSettings
    {
        [CommandOption("--port <PORT>")]
        [Description("Port on 127.0.0.1; 0 takes a free one")]
        [DefaultValue(5227)]
        public int Port { get; init; }

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
        var store = CaseStore.Open(settings.StorePath);
        await using var app = WebServer.Create(store, settings.Port);
        try
        {
            await app.StartAsync(cancellationToken);
        }
        catch (IOException taken)
        {
            throw new InputRefusedException(
                new InputProblem("alburnum serve", 0, "", "--port", taken.Message, "a free port")
            );
        }
        console.WriteLine($"Cases in {store.Path}");
        console.WriteLine($"Open {app.Urls.First()} in a browser; stop with Ctrl+C.");
        // Ctrl+C, and a request to end from the system, both stop it in good order.
        await app.WaitForShutdownAsync(cancellationToken);
        return CommandLine.Done;
    }
}
