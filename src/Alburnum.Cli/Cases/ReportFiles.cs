using System.Text;
using Alburnum.Records;

namespace Alburnum.Cli.Cases;

/// <summary>Writes the reports of a case: both whole, or neither.</summary>
internal static class ReportFiles
{
    public const string Pdf = "report.pdf";
    public const string Json = "report.json";

    public static async Task WriteAsync(string folder, byte[] pdf, string json, CancellationToken stop)
    {
        var written = new List<string>();
        try
        {
            Directory.CreateDirectory(folder);
            foreach (var (name, bytes) in new[] { (Pdf, pdf), (Json, Encoding.UTF8.GetBytes(json)) })
            {
                var part = Path.Combine(folder, $"{name}.part");
                written.Add(part);
                await File.WriteAllBytesAsync(part, bytes, stop);
            }
            foreach (var part in written)
                File.Move(part, part[..^".part".Length], overwrite: true);
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw OutFolder.Refused(folder, FileTrouble.InWords(broken));
        }
        finally
        {
            foreach (var part in written)
                File.Delete(part);
        }
    }
}
