using Microsoft.Data.Sqlite;

namespace Alburnum.Records.Store;

/// <summary>What keeps the store from being used, in words.</summary>
internal static class StoreTrouble
{
    /// <summary>The trouble as what was found.</summary>
    /// <remarks>Result codes as in SQLite's own documentation, "Result and Error Codes".</remarks>
    public static string InWords(SqliteException broken) =>
        broken.SqliteErrorCode switch
        {
            3 or 8 => "a file that may not be written",
            5 or 6 => "a store that another program is writing to",
            11 => "a damaged store",
            13 => "a disk that is full",
            14 => "a place where no file can be opened",
            26 => "a file that is no database",
            var code => $"a store that cannot be used (SQLite result code {code})",
        };
}
