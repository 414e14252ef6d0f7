using Alburnum.Facts;
using Alburnum.Records.Store;

namespace Alburnum.Records.CaseFolders;

/// <summary>The files of a case in a folder. What lies outside the folder is not read.</summary>
public sealed class FolderFiles : ICaseFiles
{
    private static readonly string[] PhotographEndings =
    [
        ".jpg",
        ".jpeg",
        ".png",
        ".tif",
        ".tiff",
        ".webp",
        ".heic",
        ".heif",
    ];

    private readonly string _folder;
    private readonly string _within;

    /// <summary>The files of one folder; nothing is read yet.</summary>
    /// <param name="folder">The folder.</param>
    /// <exception cref="InputRefusedException">A file stands there.</exception>
    public FolderFiles(string folder)
    {
        if (File.Exists(folder))
            throw new InputRefusedException(
                new InputProblem(folder, 0, "", "", "a file", $"a case folder with a {CaseFolderReader.CaseFile} in it")
            );
        _folder = folder;
        // A folder may be named with a separator at its end, or without.
        _within = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)) + Path.DirectorySeparatorChar;
    }

    /// <summary>Whether a file is a photograph by the ending of its name.</summary>
    /// <param name="file">Name of the file.</param>
    public static bool IsPhotograph(string file) =>
        PhotographEndings.Contains(Path.GetExtension(file), StringComparer.OrdinalIgnoreCase);

    /// <inheritdoc/>
    public string NameOf(string file) => Path.Combine(_folder, file);

    /// <inheritdoc/>
    public IReadOnlyList<string> Photographs =>
        [
            .. FileTrouble
                .Refusing(_folder, "a folder that can be listed", () => Directory.GetFiles(_folder))
                .Where(IsPhotograph)
                .Select(file => Path.GetFileName(file))
                .Order(StringComparer.Ordinal),
        ];

    /// <inheritdoc/>
    public bool TryRead(string file, out ReadOnlyMemory<byte> bytes, out FileFault fault)
    {
        // No system has a file with such a name.
        var path = file.Contains('\0', StringComparison.Ordinal) ? "" : Path.GetFullPath(NameOf(file));
        fault =
            path.Length == 0 ? FileFault.NotThere
            : !IsWithin(path) ? FileFault.OutsideTheFolder
            : Directory.Exists(path) ? FileFault.IsAFolder
            : !File.Exists(path) ? FileFault.NotThere
            : PhotographSize.IsBeyond(new FileInfo(path).Length) ? FileFault.TooLarge
            : FileFault.None;
        bytes = default;
        if (fault != FileFault.None)
            return false;
        try
        {
            bytes = PlainFile.Bytes(path, file, "");
        }
        catch (InputRefusedException)
        {
            fault = FileFault.MayNotBeRead;
        }
        return fault == FileFault.None;
    }

    // Also where a link on the way leads.
    private bool IsWithin(string path)
    {
        if (!path.StartsWith(_within, StringComparison.Ordinal))
            return false;
        try
        {
            return LeadsWithin(path);
        }
        // A link that leads to itself leads nowhere.
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            return false;
        }
    }

    private bool LeadsWithin(string path)
    {
        for (var part = path; part.Length > _within.Length; part = Path.GetDirectoryName(part)!)
            if (
                Path.Exists(part)
                && File.ResolveLinkTarget(part, returnFinalTarget: true) is { } target
                && !target.FullName.StartsWith(_within, StringComparison.Ordinal)
            )
                return false;
        return true;
    }

    /// <inheritdoc/>
    public string? HashOfLarge(string file)
    {
        if (TryRead(file, out _, out var fault) || fault != FileFault.TooLarge)
            return null;
        try
        {
            using var stream = PlainFile.Open(NameOf(file), file, "");
            return Photograph.HashOf(stream);
        }
        catch (Exception unreadable) when (unreadable is InputRefusedException || FileTrouble.Is(unreadable))
        {
            return null;
        }
    }
}
