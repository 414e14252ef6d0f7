using System.Globalization;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Logging.Console;

namespace Alburnum.Web.Guarding;

/// <summary>
/// Writes what is logged, one line for one line: nothing that came with a request can begin a line of its own or steer a terminal.
/// </summary>
internal sealed class LogLines() : ConsoleFormatter(FormatName)
{
    public const string FormatName = "alburnum";

    public override void Write<TState>(
        in LogEntry<TState> logEntry,
        IExternalScopeProvider? scopeProvider,
        TextWriter textWriter
    )
    {
        var at = DateTime.UtcNow.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);
        var said = logEntry.Formatter(logEntry.State, logEntry.Exception);
        textWriter.WriteLine($"{at} UTC {logEntry.LogLevel}: {InputProblem.Visible(said)}");
        for (var fault = logEntry.Exception; fault is not null; fault = fault.InnerException)
        {
            textWriter.WriteLine(
                $"    {InputProblem.Visible(fault.GetType().FullName!)}: {InputProblem.Visible(fault.Message)}"
            );
            // Where it arose: names of this program's own parts.
            foreach (var place in (fault.StackTrace ?? "").Split('\n', StringSplitOptions.RemoveEmptyEntries))
                textWriter.WriteLine($"    {InputProblem.Visible(place.TrimEnd('\r'))}");
        }
    }
}
