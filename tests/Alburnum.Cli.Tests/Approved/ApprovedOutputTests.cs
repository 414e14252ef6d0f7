using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Approved;

/// <summary>
/// What every command prints, held as text: an approved file shows change, it proves nothing right. Where one differs, find out why before it is
/// written anew with ALBURNUM_WRITE_APPROVED=1.
/// </summary>
public sealed partial class ApprovedOutputTests
{
    private static string Folder => ListedCommands.Folder;

    public static TheoryData<string> Runs => [.. ListedCommands.All.Select(line => line.Name)];

    [Theory]
    [MemberData(nameof(Runs))]
    public async Task A_command_prints_what_was_approved(string name)
    {
        using var folder = new TemporaryFolder();
        var typed = ListedCommands.All.Single(line => line.Name == name).Typed;
        var printed = await Printed(typed, folder);
        // A fault of the program is nothing to approve.
        Assert.DoesNotContain("this is a fault in Alburnum", printed, StringComparison.Ordinal);
        var approved = Path.Combine(Folder, "output", name + ".txt");
        if (Environment.GetEnvironmentVariable("ALBURNUM_WRITE_APPROVED") == "1")
            await File.WriteAllTextAsync(approved, printed, TestContext.Current.CancellationToken);

        Assert.Equal(await File.ReadAllTextAsync(approved, TestContext.Current.CancellationToken), printed);
    }

    [Fact]
    public void Every_approved_text_belongs_to_a_command_in_the_list() =>
        Assert.Equal(
            ListedCommands.All.Select(line => line.Name).Order(StringComparer.Ordinal),
            Directory
                .GetFiles(Path.Combine(Folder, "output"))
                .Select(file => Path.GetFileNameWithoutExtension(file)!)
                .Order(StringComparer.Ordinal)
        );

    private static async Task<string> Printed(string typed, TemporaryFolder folder)
    {
        var (status, output, errors) = await ListedCommands.RunAsync(typed, folder);
        var text = new StringBuilder($"alburnum {typed}\nstatus {status}\n\n{output}");
        if (errors.Length > 0)
            text.Append("\nrefused\n").Append(errors);
        foreach (var file in Directory.GetFiles(folder.Path, "*.json").Order(StringComparer.Ordinal))
            text.Append(CultureInfo.InvariantCulture, $"\n{Path.GetFileName(file)}\n")
                .Append(await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken))
                .Append('\n');
        return Steady(text.ToString(), folder);
    }

    // The names of all rulebooks go, so that one more changes nothing here. Long rows of numbers stand as their count and mean, digits beyond the fourth significant one go, so that a processor's last bit changes nothing.
    private static string Steady(string text, TemporaryFolder folder)
    {
        text = text.Replace("\r\n", "\n", StringComparison.Ordinal)
            .Replace(folder.Path, "{out}", StringComparison.Ordinal)
            .Replace(Folder + "/", "", StringComparison.Ordinal)
            .Replace(Repository.Root + "/", "", StringComparison.Ordinal)
            .Replace(string.Join(", ", AlburnumRun.Facts.Rulebooks.Names), "…", StringComparison.Ordinal);
        text = ProgressLine().Replace(text, "");
        text = RunAt().Replace(text, "$1…");
        text = Points().Replace(text, points => Summed("points", points.Value));
        text = Numbers().Replace(text, numbers => Summed("numbers", numbers.Value));
        text = LongNumber().Replace(text, number => Short(number.Value));
        return TrailingBlanks().Replace(text, "");
    }

    private static string Summed(string what, string list)
    {
        var values = Number()
            .Matches(list)
            .Select(number => double.Parse(number.Value, CultureInfo.InvariantCulture))
            .ToList();
        return values.Count == 0
            ? "[no numbers]"
            : $"[{values.Count} {what}, mean {Short(values.Average().ToString("R", CultureInfo.InvariantCulture))}]";
    }

    private static string Short(string number) =>
        double.Parse(number, CultureInfo.InvariantCulture).ToString("G4", CultureInfo.InvariantCulture);

    // Photographs are read side by side: the order in which they end is chance.
    [GeneratedRegex(@"(?m)^(?:Reading sections|Measuring|Sweeping)[^\n]*: \d+ of \d+[^\n]*\n")]
    private static partial Regex ProgressLine();

    [GeneratedRegex("(\"(?:run_at|runAt)\": \")[^\"]*")]
    private static partial Regex RunAt();

    [GeneratedRegex(@"\[\s*(?:\[\s*-?[\d.eE+-]+\s*,\s*-?[\d.eE+-]+\s*\]\s*,?\s*){4,}\]")]
    private static partial Regex Points();

    [GeneratedRegex(@"\[\s*(?:(?:-?[\d.eE+-]+|null|true|false)\s*,\s*){8,}(?:-?[\d.eE+-]+|null|true|false)\s*\]")]
    private static partial Regex Numbers();

    [GeneratedRegex(@"(?<![\w.-])-?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w])")]
    private static partial Regex Number();

    [GeneratedRegex(@"(?<![\w.-])-?\d+\.\d{3,}(?:[eE][+-]?\d+)?(?![\w])")]
    private static partial Regex LongNumber();

    [GeneratedRegex(@"[ \t]+(?=\n)")]
    private static partial Regex TrailingBlanks();
}
