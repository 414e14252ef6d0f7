namespace Alburnum.Records;

/// <summary>What keeps a file from being read or written, in words that name the cause and not the system's own file names.</summary>
public static class FileTrouble
{
    /// <summary>True for the troubles of a file or folder that a person named; anything else is a fault of the program.</summary>
    public static bool Is(Exception broken) => broken is IOException or UnauthorizedAccessException;

    /// <summary>Works on a file that a person named; its troubles become refusals, everything else stays what it is.</summary>
    /// <param name="file">The file, for the message.</param>
    /// <param name="expected">What it should have been.</param>
    /// <param name="work">Reads or writes it.</param>
    /// <exception cref="InputRefusedException">The file cannot be read or written.</exception>
    public static T Refusing<T>(string file, string expected, Func<T> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        try
        {
            return work();
        }
        catch (Exception broken) when (Is(broken))
        {
            throw new InputRefusedException(new InputProblem(file, 0, "", "", InWords(broken), expected));
        }
    }

    /// <summary>As above, for work without a result.</summary>
    public static void Refusing(string file, string expected, Action work) =>
        Refusing(
            file,
            expected,
            () =>
            {
                work();
                return true;
            }
        );

    /// <summary>The trouble as what was found, for instance "a place that may not be written to".</summary>
    /// <param name="broken">An exception for which <see cref="Is"/> holds.</param>
    public static string InWords(Exception broken) =>
        broken switch
        {
            UnauthorizedAccessException => "a place that this user has no permission to use",
            FileNotFoundException => "no such file",
            DirectoryNotFoundException => "a folder that is not there",
            PathTooLongException => "a name that is too long",
            // The low half of the code is the system's own number: POSIX's, or Windows's.
            IOException { HResult: var code } => (code & 0xFFFF) switch
            {
                17 or 20 or 183 or 267 => "a file where a folder should be",
                21 => "a folder where a file should be",
                28 or 112 => "a disk that is full",
                30 or 19 => "a read-only disk",
                26 or 11 or 32 or 33 => "a file in use by another program",
                _ => $"something that cannot be used ({broken.Message.TrimEnd('.')})",
            },
            _ => throw new ArgumentOutOfRangeException(nameof(broken), broken, "Not a trouble with a file."),
        };
}
