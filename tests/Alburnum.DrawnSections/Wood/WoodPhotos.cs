namespace Alburnum.DrawnSections;

/// <summary>Photographs of real end grain that happen to be on this machine. None belong to the project.</summary>
public static class WoodPhotos
{
    /// <summary>
    /// Reads log ends cut out on white from the folder that ALBURNUM_WOOD_PHOTOS names, or from ../shared/photos beside the
    /// repository; empty where there is no such folder.
    /// </summary>
    public static IReadOnlyList<Raster> Here()
    {
        var folder = Environment.GetEnvironmentVariable("ALBURNUM_WOOD_PHOTOS") ?? BesideRepository();
        if (folder is null || !Directory.Exists(folder))
            return [];
        return
        [
            .. Directory
                .EnumerateFiles(folder, "*.jpg")
                .Where(path => !Path.GetFileNameWithoutExtension(path).EndsWith("-scene", StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
                .Select(WoodPhoto.Load),
        ];
    }

    private static string? BesideRepository()
    {
        // A worktree may lie a folder deeper than the repository itself.
        string[] places = ["..", Path.Combine("..", "..")];
        return Repository.Root is null
            ? null
            : places
                .Select(place => Path.GetFullPath(Path.Combine(Repository.Root, place, "shared", "photos")))
                .FirstOrDefault(Directory.Exists);
    }
}
