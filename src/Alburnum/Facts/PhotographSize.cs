namespace Alburnum.Facts;

/// <summary>How large the file of a photograph may be. It is checked before the file is opened, so that no file fills the memory.</summary>
public static class PhotographSize
{
    private const int MostMiB = 200;
    private const int BytesInMiB = 1024 * 1024;

    /// <summary>What may be, for messages.</summary>
    public static string Expected { get; } = $"at most {MostMiB} MiB";

    /// <summary>Whether a file is too large to be a photograph.</summary>
    /// <param name="bytes">Its length, bytes.</param>
    public static bool IsBeyond(long bytes) => bytes > (long)MostMiB * BytesInMiB;

    /// <summary>A file's length, for messages.</summary>
    /// <param name="bytes">Its length, bytes.</param>
    public static string Found(long bytes) => $"{bytes / BytesInMiB} MiB";
}
