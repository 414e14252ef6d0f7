namespace Alburnum.Records.Store;

/// <summary>A store's whole list, for tests with a handful of cases.</summary>
internal static class AllCases
{
    public static async Task<IReadOnlyList<CaseEntry>> ListAsync(this ICaseStore store, CancellationToken stop) =>
        (await store.ListAsync(0, int.MaxValue, stop)).Entries;
}
