using System.Diagnostics.CodeAnalysis;
using Alburnum.Records.Store;

namespace Alburnum.Records.CaseFolders;

/// <summary>The files of a case as they were kept with a run of it.</summary>
/// <param name="reference">Reference of the case.</param>
/// <param name="papers">The written files.</param>
/// <param name="photographs">The photographs, under their names within the case.</param>
public sealed class KeptFiles(
    string reference,
    IReadOnlyList<PaperRecord> papers,
    IReadOnlyList<Photograph> photographs
) : ICaseFiles
{
    private const string NotKept = "which was not kept";

    /// <inheritdoc/>
    public string NameOf(string file) => $"{file} of case {reference}";

    /// <summary>None that would have to be looked for: a photograph without a piece was never kept.</summary>
    public IReadOnlyList<string> Photographs => [];

    /// <inheritdoc/>
    public bool TryRead(string file, out ReadOnlyMemory<byte> bytes, out string wrong)
    {
        var paper = papers.FirstOrDefault(paper => paper.FileName == file);
        bytes = paper?.Bytes ?? default;
        wrong = paper is null ? NotKept : "";
        return paper is not null;
    }

    /// <inheritdoc/>
    public bool TryReadPhotograph(string file, [NotNullWhen(true)] out Photograph? photograph, out string wrong)
    {
        photograph = photographs.FirstOrDefault(photograph => photograph.FileName == file);
        wrong = photograph is null ? NotKept : "";
        return photograph is not null;
    }
}
