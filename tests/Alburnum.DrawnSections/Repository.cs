namespace Alburnum.DrawnSections;

/// <summary>Where the project's own folders are, found from where the program runs.</summary>
public static class Repository
{
    /// <summary>The repository's root, or null outside of it.</summary>
    public static string? Root { get; } = Find();

    /// <summary>A folder of the repository.</summary>
    /// <exception cref="DirectoryNotFoundException">The program runs outside of the repository.</exception>
    public static string Folder(string name) =>
        Path.Combine(Root ?? throw new DirectoryNotFoundException("Run this inside the repository."), name);

    private static string? Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Alburnum.slnx")))
            folder = folder.Parent;
        return folder?.FullName;
    }
}
