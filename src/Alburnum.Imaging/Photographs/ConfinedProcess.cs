using System.Buffers.Binary;
using System.Diagnostics;
using System.Runtime.InteropServices;
using Alburnum.Unpacking;

namespace Alburnum.Imaging.Photographs;

/// <summary>The process that unpacks one picture: started for it, ended with it, with a folder of its own for what it must write.</summary>
internal sealed class ConfinedProcess : IDisposable
{
    /// <summary>Longer than the largest photograph takes.</summary>
    private static readonly TimeSpan MostTime = TimeSpan.FromSeconds(90);

    private readonly Process _process;
    private readonly DirectoryInfo _folder;
    private readonly Timer _late;

    private ConfinedProcess(Process process, DirectoryInfo folder)
    {
        (_process, _folder) = (process, folder);
        // How it ends is told by its answers; what it says of its own end is read and let go.
        _process.BeginErrorReadLine();
        _late = new(_ => process.Kill(), null, MostTime, Timeout.InfiniteTimeSpan);
    }

    /// <summary>What is written to it. Throws <see cref="IOException"/> once it has ended.</summary>
    public Stream Input => _process.StandardInput.BaseStream;

    /// <summary>What it answers; at its end once it has ended.</summary>
    public Stream Output => _process.StandardOutput.BaseStream;

    /// <summary>Starts it, and waits until its limits are in force.</summary>
    /// <param name="kind">The kind of picture.</param>
    /// <param name="length">Length of its file, bytes.</param>
    /// <exception cref="InvalidOperationException">It cannot be started.</exception>
    public static ConfinedProcess Start(PictureKind kind, long length)
    {
        var folder = Directory.CreateTempSubdirectory($"alburnum-{Environment.ProcessId}-");
        var start = new ProcessStartInfo(Host, ["exec", Program, kind.ToString()])
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        // Nothing of this process's surroundings is its business.
        start.Environment.Clear();
        foreach (var (name, value) in Settings)
            start.Environment[name] = value;
        foreach (var name in TemporaryFolder)
            start.Environment[name] = folder.FullName;
        var process = new ConfinedProcess(Process.Start(start)!, folder);
        if (process.IsReady(length))
            return process;
        process.Dispose();
        throw new InvalidOperationException($"{Program} could not be started.");
    }

    private bool IsReady(long length)
    {
        Span<byte> bytes = stackalloc byte[sizeof(long)];
        BinaryPrimitives.WriteInt64LittleEndian(bytes, length);
        try
        {
            Input.Write(bytes);
            Input.Flush();
            return Output.ReadByte() == Exchange.Ready;
        }
        // It has ended already.
        catch (IOException)
        {
            return false;
        }
    }

    /// <summary>Ends it, wherever it is.</summary>
    public void Dispose()
    {
        // Not while it is being ended for being late.
        _late.DisposeAsync().AsTask().GetAwaiter().GetResult();
        _process.Kill();
        _process.WaitForExit();
        _process.Dispose();
        _folder.Delete(recursive: true);
    }

    // The runtime opens no door for debuggers, keeps its own heap small, and keeps the code that it compiles out of files, which are limited.
    private static IReadOnlyList<(string Name, string Value)> Settings { get; } =
    [
        ("DOTNET_EnableDiagnostics", "0"),
        ("DOTNET_EnableWriteXorExecute", "0"),
        ("DOTNET_GCHeapHardLimit", "0x20000000"),
    ];

    private static IReadOnlyList<string> TemporaryFolder { get; } = ["TMPDIR", "TEMP", "TMP"];

    private static string Program { get; } = Path.Combine(AppContext.BaseDirectory, "alburnum-unpack.dll");

    // The host of the very runtime that runs this process.
    private static string Host { get; } =
        Path.GetFullPath(
            Path.Combine(
                RuntimeEnvironment.GetRuntimeDirectory(),
                "..",
                "..",
                "..",
                OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet"
            )
        );
}
