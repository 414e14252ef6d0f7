using Microsoft.Data.Sqlite;

namespace Alburnum.Records.Store;

/// <summary>What keeps the store from being used, in words.</summary>
/// <remarks>Result codes as in SQLite's own documentation, "Result and Error Codes".</remarks>
internal static class StoreTrouble
{
    /// <summary>A change was begun and not ended, as what was found.</summary>
    public const string CutOff =
        "a store interrupted in the middle of a change; it is put right when it is next opened to keep a run";

    /// <summary>A table holds what no run of this program writes there, as what was found.</summary>
    public const string Unreadable = "a damaged store: a table holds a value that cannot be read";

    /// <summary>True where a value of a table is not of its type.</summary>
    public static bool IsUnreadable(Exception broken) =>
        broken is FormatException or OverflowException or InvalidCastException or ArgumentOutOfRangeException;

    /// <summary>True where another program is at work on the store, which passes.</summary>
    public static bool Passes(SqliteException broken) => broken.SqliteErrorCode is 5 or 6;

    /// <summary>True where a change was cut off, which whoever opens the store to keep runs puts right.</summary>
    public static bool IsCutOff(SqliteException broken) => broken.SqliteExtendedErrorCode == 776;

    /// <summary>The trouble as what was found.</summary>
    public static string InWords(SqliteException broken) =>
        IsCutOff(broken)
            ? CutOff
            : broken.SqliteErrorCode switch
            {
                // A statement that names what is not there.
                1 => "a damaged store: a table or column is missing",
                3 or 8 => "a file that may not be written to",
                5 or 6 => "a store that another program is writing to",
                10 => "a disk that cannot be read or written there, or is full",
                11 => "a damaged store",
                13 => "a disk that is full, or a table whose counter is at its end",
                14 => "a place where no file can be opened",
                26 => "a file that is not a database",
                var code => $"a store that cannot be used (SQLite result code {code})",
            };
}
