namespace Alburnum.Tests.Shared;

/// <summary>Where the repository's own files are, seen from a built test.</summary>
internal static class Repository
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    /// <summary>A file or folder inside the repository.</summary>
    public static string At(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string Find(string folder) =>
        File.Exists(Path.Combine(folder, "Alburnum.slnx"))
            ? folder
            : Find(
                Path.GetDirectoryName(folder.TrimEnd(Path.DirectorySeparatorChar))
                    ?? throw new InvalidOperationException("The tests run outside the repository.")
            );
}
