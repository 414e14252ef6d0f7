using System.Globalization;
using System.Text;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Tests.Tables;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Cases;

namespace Alburnum.Cli.Tests.Fuzz;

/// <summary>One kind of file that people give the program.</summary>
/// <param name="Kind">Its name.</param>
/// <param name="Ending">How its name ends.</param>
/// <param name="Whole">Makes one that is whole.</param>
/// <param name="Answer">What is wrong with the answer to a file of this kind, given its path; null where nothing is.</param>
internal sealed record AwkwardInput(string Kind, string Ending, Func<byte[]> Whole, Func<string, Task<string?>> Answer)
{
    private static readonly IReadOnlyList<AwkwardInput> All =
    [
        new("case", ".yaml", () => Approved("two-laboratories", "case.yaml"), path => RunAsync(path)),
        new("marks", ".yaml", () => Encoding.UTF8.GetBytes(Marked), path => ReadAsync(path)),
        new("charge", ".yaml", () => Approved("posts.yaml"), Command("charge", "plan", "{0}")),
        new(
            "rulebook",
            ".yaml",
            () => Encoding.UTF8.GetBytes(OwnRulebook),
            Command("requirement", "--rulebook", "{0}", "--component", "fence post", "--species", "Sitka spruce")
        ),
        new(
            "results",
            ".csv",
            () => Approved("results.csv"),
            Command("judge", "table", "{0}", "--must-pass", "75", "--lot", "500")
        ),
        new(
            "depths",
            ".csv",
            () => Approved("depths.csv"),
            Command("judge", "table", "{0}", "--rule", "6 mm lateral", "--section", "100x100", "--must-pass", "75")
        ),
        new("lots", ".csv", () => Approved("lots.csv"), Command("history", "lots", "{0}", "--aql", "10")),
        new(
            "charges",
            ".csv",
            () => Approved("charges.csv"),
            Command("history", "charges", "{0}", "--depth", "6", "--retention", "12")
        ),
        new(
            "enquiries",
            ".csv",
            () => Encoding.UTF8.GetBytes(Enquiries),
            Command("rulebook", "compare", "british-2014", "british-2024", "--cases", "{0}")
        ),
        new(
            "workbook",
            ".xlsx",
            Workbook,
            Command("judge", "table", "{0}", "--must-pass", "75", "--lot", "500", "--sheet", "Results")
        ),
    ];

    private const string Marked = """
        reference: T-1
        title: Posts
        client: Thornhollow estate
        sectionsCut: 2026-05-12
        rulebook: british-2014
        component: orchard post
        section: 100 x 100 mm
        species: Sitka spruce
        indicator: copper-blue
        batch: { pieces: 40, mustPass: 75 % }
        pieces:
          - piece: P01
            photograph: P01.jpg
            corners: "512,180 1610,220 1570,1340 480,1290"
            treated: "530,700 1200,240"
            untreated: "1040,760"
            leaveOut: "700,410"
            heartwood: "800,600 1300,600 1300,1000 800,1000"
            scale: "300,1500 900,1500 50 mm"
          - { piece: P02, photograph: P02.jpg, pith: "1040,2300", heartwoodRadiusMm: 85 mm, measuredSize: 98.5 x 101 mm }
        leftOut:
          - { photograph: P03.jpg, piece: P03, reason: out of focus }
        """;

    private const string OwnRulebook = """
        basedOn: british-2014
        sources:
          - { id: copy, document: BS 8417, edition: "2011+A1:2014", place: table 4 }
        penetration:
          - key: in-ground-15-sawn-resistant
            when: { useClass: 4, lifeYears: 15, form: sawn, speciesGroup: resistant, thicknessMm: { from: 75 } }
            require:
              name: 12 mm sapwood + 6 mm exposed heartwood
              depth: { all: [{ least: 12 mm, in: sapwood }, { least: 6 mm, in: exposed heartwood, over: 75 % }] }
            source: copy
            standing: published
        confirmed:
          - { key: in-ground-15-sawn-permeable, edition: "2011+A1:2014", table: table 4, page: "17", initials: AB, date: 2026-05-12 }
        """;

    private const string Enquiries =
        "component,species,section,service_life_years,use_class,incised\n"
        + "fence post,Scots pine,100 x 75,15,4,no\n\"deck joist\",Sitka spruce,47 x 150,30,,yes\n";

    private static readonly byte[] Photograph = [0xFF, 0xD8, 0xFF, 0xE0, 1, 2, 3];

    public static AwkwardInput Named(string kind) => All.Single(input => input.Kind == kind);

    /// <summary>What is wrong with the answer to a file that holds these bytes; null where nothing is.</summary>
    public async Task<string?> FaultAsync(byte[] bytes)
    {
        using var folder = new TemporaryFolder();
        var path = folder.At(Kind is "case" or "marks" ? "case.yaml" : $"given{Ending}");
        await File.WriteAllBytesAsync(path, bytes);
        try
        {
            return await Answer(path);
        }
        catch (InputRefusedException refused)
        {
            return refused.Problems.Count > 0 ? null : "It is refused without a reason.";
        }
#pragma warning disable CA1031 // Any other exception is exactly what is looked for.
        catch (Exception other)
        {
            return other.ToString();
        }
#pragma warning restore CA1031
    }

    private static Func<string, Task<string?>> Command(params string[] words) =>
        async path =>
        {
            var run = await AlburnumRun.Of([
                .. words.Select(word => string.Format(CultureInfo.InvariantCulture, word, path)),
            ]);
            return run.Status switch
            {
                CommandLine.Done => null,
                CommandLine.Refused when run.Errors.Length is > 0 and < 20_000 && !run.Errors.Any(IsSentAsIs) => null,
                _ =>
                    $"Status {run.Status}, {run.Errors.Length} characters: {run.Errors[..Math.Min(1000, run.Errors.Length)]}",
            };
        };

    // A control character or a mark that turns the direction of writing is shown, never sent.
    private static bool IsSentAsIs(char letter) =>
        (char.IsControl(letter) && letter is not ('\n' or '\r'))
        || letter is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');

    // The whole way to the document, whose sentences are made on it.
    private static async Task<string?> RunAsync(string path)
    {
        var folder = Path.GetDirectoryName(path)!;
        foreach (var file in (string[])["assays.csv", "readings.csv"])
            await File.WriteAllBytesAsync(Path.Combine(folder, file), Approved("two-laboratories", file));
        var run = await RunCase.JudgeAsync(
            new FolderFiles(folder),
            AlburnumRun.Facts,
            progress: null,
            TestContext.Current.CancellationToken
        );
        var document = CaseMapping.From(run, AlburnumRun.Facts.Cautions, "Alburnum", DateTime.UnixEpoch);
        // A figure that is no number cannot be written.
        DocumentJson.Write(document);
        return null;
    }

    private static async Task<string?> ReadAsync(string path)
    {
        var folder = Path.GetDirectoryName(path)!;
        foreach (var file in (string[])["P01.jpg", "P02.jpg", "P03.jpg"])
            await File.WriteAllBytesAsync(Path.Combine(folder, file), Photograph);
        CaseFolderReader.Read(new FolderFiles(folder), AlburnumRun.Facts);
        return null;
    }

    private static byte[] Workbook()
    {
        using var folder = new TemporaryFolder();
        Sheets.Write(
            folder.At("results.xlsx"),
            (
                "Results",
                false,
                [
                    ["piece", "result"],
                    ["P01", "pass"],
                    ["P02", "pass"],
                    ["P03", "fail"],
                ]
            ),
            (
                "Notes",
                true,
                [
                    ["cut", new DateOnly(2026, 5, 12)],
                    ["depth", 6.5],
                ]
            )
        );
        return File.ReadAllBytes(folder.At("results.xlsx"));
    }

    private static byte[] Approved(params string[] parts) =>
        File.ReadAllBytes(Repository.At(["tests", "Alburnum.Cli.Tests", "Approved", "input", .. parts]));
}
