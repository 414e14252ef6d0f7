using System.Runtime.InteropServices;
using System.Text;
using Alburnum.Facts;
using Microsoft.Win32.SafeHandles;

namespace Alburnum.Records;

/// <summary>
/// The one way in which a file that a person named is opened to be read. A pipe or a device, which could keep the reader waiting for
/// ever, is refused, and so is a file that is too large to be held.
/// </summary>
public static class PlainFile
{
    /// <summary>Opens a file to be read from its start.</summary>
    /// <param name="path">The file. A link is followed.</param>
    /// <param name="shown">Its name for messages.</param>
    /// <param name="expected">What it should be, for messages.</param>
    /// <exception cref="InputRefusedException">It is missing, a folder, a pipe or a device, or may not be read.</exception>
    public static Stream Open(string path, string shown, string expected)
    {
        if (Directory.Exists(path))
            throw Refused(shown, "a folder", expected);
        if (!File.Exists(path))
            throw Refused(shown, "no such file", expected);
        return FileTrouble.Refusing(
            shown,
            expected,
            Stream () =>
            {
                var target = File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path;
                // Pipes and devices have no length, as an empty file has none. From such a one nothing is read: it could wait for ever,
                // or never end.
                if (new FileInfo(target).Length == 0 && IsSeekable(target) is { } isSeekable)
                    return isSeekable
                        ? Stream.Null
                        : throw Refused(shown, "a pipe, a device or something else that is not a plain file", expected);
                return new FileStream(target, FileMode.Open, FileAccess.Read, FileShare.Read);
            }
        );
    }

    /// <summary>The bytes of a file.</summary>
    /// <inheritdoc cref="Open"/>
    public static byte[] Bytes(string path, string shown, string expected)
    {
        using var stream = Open(path, shown, expected);
        if (PhotographSize.IsBeyond(stream.Length))
            throw Refused(shown, PhotographSize.Found(stream.Length), PhotographSize.Expected);
        return FileTrouble.Refusing(
            shown,
            expected,
            () =>
            {
                using var held = new MemoryStream((int)stream.Length);
                stream.CopyTo(held);
                return held.ToArray();
            }
        );
    }

    /// <summary>The text of a file.</summary>
    /// <inheritdoc cref="Open"/>
    public static string Text(string path, string shown, string expected) => Text(Bytes(path, shown, expected), shown);

    /// <summary>The text that bytes hold.</summary>
    /// <param name="bytes">UTF-8, or UTF-16 with its mark.</param>
    /// <param name="shown">Name of the file for messages.</param>
    /// <exception cref="InputRefusedException">They are not text in UTF-8; the first line that is not is named.</exception>
    internal static string Text(ReadOnlyMemory<byte> bytes, string shown)
    {
        try
        {
            using var reader = Reader(new MemoryStream(bytes.ToArray(), writable: false));
            return reader.ReadToEnd();
        }
        catch (DecoderFallbackException)
        {
            throw NotUtf8(() => new MemoryStream(bytes.ToArray(), writable: false), shown);
        }
    }

    /// <summary>Reads text; bytes that are not UTF-8 are a <see cref="DecoderFallbackException"/>.</summary>
    internal static StreamReader Reader(Stream stream) =>
        new(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true));

    /// <summary>Refuses text that is not UTF-8, with the first line that is not.</summary>
    /// <param name="open">Opens the file.</param>
    /// <param name="shown">Its name for messages.</param>
    internal static InputRefusedException NotUtf8(Func<Stream> open, string shown)
    {
        // In this encoding each byte is one letter, so that lines are counted whatever stands in them.
        using var lines = new StreamReader(open(), Encoding.Latin1, detectEncodingFromByteOrderMarks: false);
        var number = 1;
        while (lines.ReadLine() is { } line && System.Text.Unicode.Utf8.IsValid(Encoding.Latin1.GetBytes(line)))
            number++;
        return new(
            new InputProblem(shown, number, "", "", "letters in an encoding other than UTF-8", "text saved as UTF-8")
        );
    }

    // Null where it may not be opened at all.
    private static bool? IsSeekable(string path)
    {
        if (OperatingSystem.IsWindows())
            return true;
        // O_NONBLOCK, which differs between the systems: a pipe is opened without waiting for whoever writes to it.
        using var handle = new SafeFileHandle(
            OpenFile(path, OperatingSystem.IsLinux() ? 0x800 : 0x4),
            ownsHandle: true
        );
        using var stream = handle.IsInvalid ? null : new FileStream(handle, FileAccess.Read);
        return stream?.CanSeek;
    }

    private static InputRefusedException Refused(string file, string found, string expected) =>
        new(new InputProblem(file, 0, "", "", found, expected));

    // The runtime has no way to open without waiting; this is the call of POSIX.
    [DllImport("libc", EntryPoint = "open")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int OpenFile([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);
}
