using System.ComponentModel;
using System.Text;
using Alburnum.Records;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Sheets;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Measuring;

/// <summary>Draws the card that is printed and laid beside a cut end.</summary>
internal sealed class CardCommand(IAnsiConsole console) : AsyncCommand<CardCommand.Settings>
{
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("File to write the card to: a sheet to print (.pdf), or a drawing (.svg)")]
        public required string File { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var ending = Path.GetExtension(settings.File);
        ReadOnlyMemory<byte> bytes = ending.ToUpperInvariant() switch
        {
            ".PDF" => CardSheet.Pdf(),
            ".SVG" => Encoding.UTF8.GetBytes(Svg.Write(CardDrawing.Draw())),
            _ => throw new InputRefusedException(
                new InputProblem(
                    settings.File,
                    0,
                    "",
                    "",
                    ending.Length > 0 ? ending : "no ending",
                    "a name that ends in .pdf or .svg"
                )
            ),
        };
        await WholeFile.WriteAsync(settings.File, bytes, cancellationToken);
        console.WriteLine(Said("terminal.card-written", ("file", InputProblem.Visible(settings.File))));
        return CommandLine.Done;
    }
}
