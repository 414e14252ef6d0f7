using System.Diagnostics;
using Alburnum.Imaging.Photographs;
using Alburnum.Unpacking;
using Repository = Alburnum.Tests.Shared.Repository;

namespace Alburnum.Imaging.Tests.Photographs;

/// <summary>What the process that unpacks TIFF and HEIC may do, and what becomes of it.</summary>
[Collection(nameof(Alone))]
public sealed class ConfinedPictureTests
{
    private static readonly byte[] Heic = File.ReadAllBytes(
        Repository.At("tests", "Alburnum.Imaging.Tests", "Photographs", "plain-section.heic")
    );

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task It_reaches_neither_network_nor_programs_nor_files_nor_more_memory()
    {
        Assert.SkipUnless(
            OperatingSystem.IsLinux(),
            "Other systems offer fewer limits; docs/decisions/0009 lists them."
        );
        using var confined = Process.Start(
            new ProcessStartInfo(
                "dotnet",
                ["exec", Path.Combine(AppContext.BaseDirectory, "alburnum-unpack.dll"), "limits"]
            )
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                Environment = { ["DOTNET_EnableDiagnostics"] = "0", ["DOTNET_EnableWriteXorExecute"] = "0" },
            }
        )!;

        Assert.Equal(
            "network: refused\nnetwork through a queue: refused\nother programs: refused\nwriting files: refused\nmemory: refused\n",
            await confined.StandardOutput.ReadToEndAsync(Stop)
        );
        await confined.WaitForExitAsync(Stop);
        Assert.Equal(0, confined.ExitCode);
    }

    [Fact]
    public void A_picture_that_is_done_with_leaves_no_process_and_no_file()
    {
        var before = Left();
        using (var picture = ConfinedPicture.Open(Heic)!)
            Assert.NotNull(picture.Unpack(1));

        Assert.Equal(before, Left());
    }

    [Fact]
    public void A_process_that_ends_in_the_middle_is_a_damaged_picture()
    {
        // It is told of a file twice as long as the one that it gets, and waits for the rest until it is ended.
        using var process = ConfinedProcess.Start(PictureKind.Heic, 2 * Heic.Length);
        process.Input.Write(Heic);
        process.Input.Close();

        Assert.Equal(-1, process.Output.ReadByte());
    }

    [Fact]
    public void A_broken_header_is_no_picture() => Assert.Null(ConfinedPicture.Open(Heic.AsMemory(0, 100)));

    // Of this process: others on the machine may be reading photographs too.
    private static int Left() =>
        Directory.GetDirectories(Path.GetTempPath(), $"alburnum-{Environment.ProcessId}-*").Length
        + (OperatingSystem.IsLinux() ? Process.GetProcesses().Count(each => IsUnpackingForUs(each.Id)) : 0);

    private static bool IsUnpackingForUs(int id)
    {
        try
        {
            return File.ReadAllText($"/proc/{id}/cmdline").Contains("alburnum-unpack", StringComparison.Ordinal)
                && File.ReadAllLines($"/proc/{id}/status").Contains($"PPid:\t{Environment.ProcessId}");
        }
        // It has ended meanwhile.
        catch (Exception gone) when (gone is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}

/// <summary>Runs when no other test does: it counts what this process has started.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone;
