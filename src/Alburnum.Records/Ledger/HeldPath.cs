using System.Globalization;

namespace Alburnum.Records.Ledger;

/// <summary>Paths by which entries name what a store holds; in a bundle the files lie there.</summary>
internal static class HeldPath
{
    private const string PhotographFolder = "photographs/";

    /// <summary>What the paths of a case's runs begin with.</summary>
    public static string OfCase(int caseNumber) => string.Create(CultureInfo.InvariantCulture, $"cases/{caseNumber}/");

    /// <summary>What the list of cases says of a run.</summary>
    public static string Run(int caseNumber, int run) => Of(caseNumber, run, "run.json");

    /// <summary>The result of a run.</summary>
    public static string Document(int caseNumber, int run) => Of(caseNumber, run, "report.json");

    /// <summary>A written file that a run was read from.</summary>
    public static string Paper(int caseNumber, int run, string fileName) => Of(caseNumber, run, $"files/{fileName}");

    /// <summary>A photograph.</summary>
    public static string Photograph(string sha256) => PhotographFolder + sha256;

    private static string Of(int caseNumber, int run, string name) =>
        string.Create(CultureInfo.InvariantCulture, $"{OfCase(caseNumber)}runs/{run}/{name}");
}
