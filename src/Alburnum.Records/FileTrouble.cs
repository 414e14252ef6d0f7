namespace Alburnum.Records;

/// <summary>What keeps a file from being read or written, in words that name the cause and not the system's own file names.</summary>
public static class FileTrouble
{
    /// <summary>True for the troubles of a file or folder that a person named; anything else is a fault of the program.</summary>
    public static bool Is(Exception broken) => broken is IOException or UnauthorizedAccessException;

    /// <summary>The trouble as what was found, for instance "a place that may not be written to".</summary>
    /// <param name="broken">An exception for which <see cref="Is"/> holds.</param>
    public static string InWords(Exception broken) =>
        broken switch
        {
            UnauthorizedAccessException => "a place that this user may not use",
            FileNotFoundException => "no such file",
            DirectoryNotFoundException => "a folder that is not there",
            PathTooLongException => "a name that is too long",
            // The low half of the code is the system's own number: POSIX's, or Windows's.
            IOException { HResult: var code } => (code & 0xFFFF) switch
            {
                17 or 20 or 183 or 267 => "a file where a folder should be",
                21 => "a folder where a file should be",
                28 or 112 => "a disk that is full",
                30 or 19 => "a disk that can only be read",
                26 or 11 or 32 or 33 => "a file that another program holds",
                _ => $"a disk that fails ({broken.GetType().Name}, code {code & 0xFFFF})",
            },
            _ => throw new ArgumentOutOfRangeException(nameof(broken), broken, "Not a trouble with a file."),
        };
}
