using System.Globalization;

namespace Alburnum.Records.Facts;

/// <summary>A day as it is written in files: 2026-05-12.</summary>
internal static class DateText
{
    /// <summary>What was expected in place of another text, for messages.</summary>
    internal const string Expected = "a date such as 2026-05-12";

    /// <summary>What was expected in place of a day to come, for messages.</summary>
    internal static string NotAfter(DateOnly today) =>
        $"the day on which the copy was read, at the latest today, {today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}";

    /// <summary>Reads it; null where the text is none.</summary>
    internal static DateOnly? Read(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : null;
}
