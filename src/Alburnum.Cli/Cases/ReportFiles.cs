using System.Text;
using Alburnum.Records.Store;

namespace Alburnum.Cli.Cases;

/// <summary>The reports of a case.</summary>
internal static class ReportFiles
{
    public const string Pdf = "report.pdf";
    public const string Json = "report.json";

    public static FilesTogether In(string folder, byte[] pdf, string json) =>
        new(folder, [(Pdf, pdf), (Json, Encoding.UTF8.GetBytes(json))]);
}
