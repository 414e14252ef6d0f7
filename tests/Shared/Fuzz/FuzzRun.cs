using System.Collections.Concurrent;
using System.Globalization;

namespace Alburnum.Tests.Shared.Fuzz;

/// <summary>One input after another, each from a seed of its own, against one rule. See docs/how-to/try-broken-input.md.</summary>
internal static class FuzzRun
{
    private static readonly int FirstSeed = Setting("ALBURNUM_FUZZ_SEED") ?? 1;

    /// <summary>Holds the rule for each seed; every input that breaks it is kept under artifacts/fuzz/.</summary>
    /// <param name="kind">Name of the folder that such an input is kept in.</param>
    /// <param name="count">How many inputs where nothing else is set.</param>
    /// <param name="inputOf">Makes the input of a seed, and the ending that its file would have.</param>
    /// <param name="faultOf">What is wrong with the answer to an input; null where nothing is.</param>
    public static async Task HoldAsync(
        string kind,
        int count,
        Func<Random, (byte[] Bytes, string Ending)> inputOf,
        Func<byte[], string, Task<string?>> faultOf
    )
    {
        var failures = new ConcurrentBag<string>();
        var seeds = Enumerable.Range(FirstSeed, Setting("ALBURNUM_FUZZ_COUNT") ?? count);
        await Parallel.ForEachAsync(
            seeds,
            TestContext.Current.CancellationToken,
            async (seed, stop) =>
            {
                var (bytes, ending) = inputOf(new Random(seed));
                if (await faultOf(bytes, ending) is not { } fault)
                    return;
                var kept = Repository.At("artifacts", "fuzz", kind, $"{seed}{ending}");
                Directory.CreateDirectory(Path.GetDirectoryName(kept)!);
                await File.WriteAllBytesAsync(kept, bytes, stop);
                failures.Add($"Seed {seed} ({kept}): {fault}");
            }
        );
        Assert.True(failures.IsEmpty, string.Join(Environment.NewLine, failures.Order(StringComparer.Ordinal)));
    }

    private static int? Setting(string name) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out var value)
            ? value
            : null;
}
