using System.Diagnostics;
using System.Net.Sockets;
using System.Runtime.InteropServices;
using ImageMagick;

namespace Alburnum.Unpacking;

/// <summary>What this process may no longer do once a picture of unknown origin is in it.</summary>
/// <remarks>
/// Everywhere: the library's own limits. On Linux and macOS also the system's (processor time, memory, files written); on Linux with a
/// 64-bit processor a filter of system calls besides, so that neither the network nor another program can be reached.
/// </remarks>
internal static partial class Confinement
{
    /// <summary>More than the largest photograph accepted needs in the library.</summary>
    private const ulong MostPicturesBytes = 1UL << 30;

    /// <summary>Room for what the library and the runtime hold beside the pixels.</summary>
    private const ulong MostMemoryBytes = 2UL << 30;

    private const ulong MostProcessorSeconds = 60;

    /// <summary>The signal SIGXFSZ, on Linux and macOS.</summary>
    private const int FileTooLarge = 25;

    /// <summary>The handler SIG_IGN, on Linux and macOS.</summary>
    private const nint Ignore = 1;

    /// <summary>Takes the limits on; they cannot be taken off again.</summary>
    /// <param name="mostWrittenBytes">Largest file that may be written, bytes.</param>
    public static void Enter(long mostWrittenBytes)
    {
        ResourceLimits.Disk = 0;
        ResourceLimits.Memory = MostPicturesBytes;
        ResourceLimits.Thread = 1;
        if (OperatingSystem.IsLinux() || OperatingSystem.IsMacOS())
        {
            Limit(Resource.ProcessorTime, MostProcessorSeconds);
            Limit(Resource.FileSize, (ulong)mostWrittenBytes);
            Limit(Resource.Data, MostMemoryBytes);
            Limit(Resource.Core, 0);
        }
        if (OperatingSystem.IsLinux())
            SystemCalls.Forbid();
    }

    /// <summary>What comes of trying: one line a limit.</summary>
    public static IEnumerable<string> Tried()
    {
        // Otherwise the first byte written would end the process, as it does while a picture is in it. The kernel itself ignores the
        // signal: the runtime hands one on later, perhaps when nobody is registered for it any more.
        if (!OperatingSystem.IsWindows())
            _ = signal(FileTooLarge, Ignore);
        yield return $"network: {Outcome(() => new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp).Dispose())}";
        yield return $"network through a queue: {Outcome(OpenQueue)}";
        yield return $"other programs: {Outcome(() => Process.Start("true").Dispose())}";
        yield return $"writing files: {Outcome(() => File.WriteAllText(Path.GetTempFileName(), "text"))}";
        yield return $"memory: {Outcome(TakeMemory)}";
    }

    private static void OpenQueue()
    {
        if (!SystemCalls.OpensQueue())
            throw new InvalidOperationException("The kernel opens none.");
    }

    private static unsafe void TakeMemory()
    {
        var taken = (byte*)NativeMemory.Alloc((nuint)MostMemoryBytes);
        for (nuint at = 0; at < (nuint)MostMemoryBytes; at += (nuint)Environment.SystemPageSize)
            taken[at] = 1;
        NativeMemory.Free(taken);
    }

    private static string Outcome(Action attempt)
    {
        try
        {
            attempt();
            return "allowed";
        }
#pragma warning disable CA1031 // How it is refused differs from system to system.
        catch (Exception)
        {
            return "refused";
        }
#pragma warning restore CA1031
    }

    private static void Limit(Resource resource, ulong most)
    {
        // A limit that is lower already may not be raised.
        if (getrlimit((int)resource, out var set) != 0)
            throw new InvalidOperationException($"The limit {resource} could not be read.");
        var limit = new ResourceLimit(Math.Min(most, set.Most), Math.Min(most, set.Most));
        if (setrlimit((int)resource, in limit) != 0)
            throw new InvalidOperationException($"The limit {resource} could not be set.");
    }

    // The same numbers on Linux and macOS.
    private enum Resource
    {
        ProcessorTime = 0,
        FileSize = 1,
        Data = 2,
        Core = 4,
    }

    private readonly record struct ResourceLimit(ulong Current, ulong Most);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int getrlimit(int resource, out ResourceLimit limit);

    [LibraryImport("libc", SetLastError = true)]
    private static partial nint signal(int signal, nint handler);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int setrlimit(int resource, in ResourceLimit limit);
}
