using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;

namespace Alburnum.Cli.Tests.Faults;

/// <summary>
/// The program itself, stopped for a moment at each change that it makes on the disk: a copy taken then is what a kill at that moment
/// leaves behind, and many of them can be had from one run.
/// </summary>
internal static partial class FrozenProgram
{
    private const int StopSignal = 19;
    private const int ContinueSignal = 18;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>Runs it to its end.</summary>
    /// <param name="folder">Where it works.</param>
    /// <param name="copies">Where the copies go, one folder each; copies that are there already stay.</param>
    /// <param name="most">Most copies there may be in the end.</param>
    /// <param name="random">Decides which changes are taken and how long after the change.</param>
    /// <param name="words">What stands after its name.</param>
    /// <param name="meanwhile">What is asked of it at the address that it serves; it is ended after that. Null where it ends by itself.</param>
    public static async Task RunAsync(
        string folder,
        string copies,
        int most,
        Random random,
        IReadOnlyList<string> words,
        Func<Uri, Task>? meanwhile
    )
    {
        using var program = Process.Start(
            new ProcessStartInfo("dotnet", ["exec", RealProgram.File, .. words])
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
        var output = new StringBuilder();
        var asked = Task.CompletedTask;
        program.OutputDataReceived += (_, line) => output.AppendLine(line.Data);
        program.ErrorDataReceived += (_, line) => output.AppendLine(line.Data);
        program.BeginErrorReadLine();
        if (meanwhile is null)
            program.BeginOutputReadLine();
        else
            asked = meanwhile(await AddressAsync(program));

        var seen = Trace(folder);
        var taken = Directory.GetDirectories(copies).Length;
        while (!program.HasExited && !(meanwhile is not null && asked.IsCompleted))
        {
            await Task.Delay(random.Next(1, 3), Stop);
            var now = Trace(folder);
            if (now == seen || taken >= most)
                continue;
            seen = now;
            await Task.Delay(random.Next(0, 3), Stop);
            Freeze(program, () => Copy(folder, Path.Combine(copies, $"{taken++}")));
        }
        try
        {
            await asked;
        }
        finally
        {
            if (meanwhile is not null)
                program.Kill();
        }
        await program.WaitForExitAsync(Stop);
        if (meanwhile is null)
            Assert.True(program.ExitCode == CommandLine.Done, output.ToString());
    }

    /// <summary>A folder with all in it.</summary>
    public static void Copy(string from, string to)
    {
        // A library's copy would respect the locks of the program that is stopped.
        using var copy = Process.Start("cp", ["-r", from, to]);
        copy.WaitForExit();
        Assert.Equal(0, copy.ExitCode);
    }

    private static async Task<Uri> AddressAsync(Process server)
    {
        while (await server.StandardOutput.ReadLineAsync(Stop) is { } line)
            if (line.StartsWith("Open ", StringComparison.Ordinal))
                return new(line.Split(' ')[1]);
        throw new InvalidOperationException("The server ended before it said where it is.");
    }

    private static void Freeze(Process program, Action meanwhile)
    {
        if (kill(program.Id, StopSignal) != 0)
            return;
        while (!program.HasExited && !IsFrozen(program.Id))
            Thread.Yield();
        meanwhile();
        _ = kill(program.Id, ContinueSignal);
    }

    private static bool IsFrozen(int id)
    {
        try
        {
            return Directory
                .GetDirectories($"/proc/{id}/task")
                .All(task => File.ReadAllText(Path.Combine(task, "stat")).Split(") ")[1][0] is 'T' or 'Z' or 'X');
        }
        // A thread has ended between the two.
        catch (IOException)
        {
            return false;
        }
    }

    // Every file and folder there is, with its size and the moment it was last written.
    private static string Trace(string folder)
    {
        try
        {
            return string.Join(
                '\n',
                new DirectoryInfo(folder)
                    .GetFileSystemInfos("*", SearchOption.AllDirectories)
                    .Select(entry =>
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{entry.FullName} {entry.LastWriteTimeUtc.Ticks} {(entry as FileInfo)?.Length}"
                        )
                    )
                    .Order(StringComparer.Ordinal)
            );
        }
        // Something has gone between the two.
        catch (IOException)
        {
            return "";
        }
    }

    [LibraryImport("libc")]
    private static partial int kill(int id, int signal);
}
