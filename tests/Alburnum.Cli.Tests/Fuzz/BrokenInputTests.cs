using Alburnum.Tests.Shared;
using Alburnum.Tests.Shared.Fuzz;

namespace Alburnum.Cli.Tests.Fuzz;

/// <summary>
/// Whatever stands in a file, the command that is given it answers or refuses in words: it never ends by a fault of its own, and what it
/// refuses leaves nothing behind.
/// </summary>
public sealed class BrokenInputTests
{
    private static readonly Mutator Mutator = new([.. DamagedText.Ways, .. DamagedBytes.Ways]);
    private static readonly Mutator OfWorkbooks = new([.. DamagedBytes.Ways, .. DamagedWorkbook.Ways]);

    /// <summary>An input for every fault that was found; each is named after its kind.</summary>
    public static TheoryData<string> Kept =>
        [.. Directory.GetFiles(Folder("Fuzz", "Kept")).Select(file => Path.GetFileName(file)).Order()];

    [Theory]
    [MemberData(nameof(Kept))]
    public async Task An_input_that_once_was_a_fault_is_answered_or_refused_in_words(string file)
    {
        var bytes = await File.ReadAllBytesAsync(Folder("Fuzz", "Kept", file), TestContext.Current.CancellationToken);

        Assert.Null(await AwkwardInput.Named(file.Split('-')[0]).FaultAsync(bytes));
    }

    [Theory]
    [InlineData("case", 250)]
    [InlineData("marks", 400)]
    [InlineData("charge", 250)]
    [InlineData("rulebook", 300)]
    [InlineData("results", 300)]
    [InlineData("depths", 250)]
    [InlineData("lots", 200)]
    [InlineData("charges", 200)]
    [InlineData("enquiries", 200)]
    [InlineData("workbook", 350)]
    public async Task A_damaged_file_is_answered_or_refused_in_words(string kind, int count)
    {
        var input = AwkwardInput.Named(kind);
        var whole = input.Whole();
        Assert.Null(await input.FaultAsync(whole));

        await FuzzRun.HoldAsync(
            kind,
            count,
            random => ((kind == "workbook" ? OfWorkbooks : Mutator).Of(whole, random), input.Ending),
            (bytes, _) => input.FaultAsync(bytes)
        );
    }

    private static string Folder(params string[] parts) => Repository.At(["tests", "Alburnum.Cli.Tests", .. parts]);
}
