using Alburnum.Web.Guarding;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;

namespace Alburnum.Web.Tests.Guarding;

/// <summary>What is logged, with something in it that came with a request.</summary>
public sealed class LogLinesTests
{
    private const string Hostile = "x\r\n2026-01-01 00:00:00 UTC Error: all is well\u001b[2J\u202e\u2028y";

    [Fact]
    public void Nothing_of_a_request_begins_a_line_or_steers_a_terminal()
    {
        using var written = new StringWriter();
        var lines = new LogLines();
        var fault = new InvalidOperationException(Hostile, new FormatException(Hostile));

        lines.Write(
            new LogEntry<string>(LogLevel.Error, "category", default, Hostile, fault, (state, _) => state),
            scopeProvider: null,
            written
        );

        var text = written.ToString().TrimEnd('\n');
        Assert.Equal(3, text.Split('\n').Length);
        Assert.DoesNotContain(text, letter => letter is '\r' or '\u001b' or '\u202e' or '\u2028');
        Assert.Contains("\\u000D\\u000A2026-01-01", text, StringComparison.Ordinal);
    }
}
