using System.ComponentModel;
using Spectre.Console.Cli;

namespace Alburnum.Cli;

/// <summary>Options of a command whose whole result can be had as JSON.</summary>
internal class JsonSettings : CommandSettings
{
    [CommandOption(Options.Json)]
    [Description("Print the result as JSON and nothing else")]
    public bool Json { get; init; }
}
