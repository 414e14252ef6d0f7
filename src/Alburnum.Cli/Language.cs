using System.Globalization;
using Alburnum.Reports.Words;

namespace Alburnum.Cli;

/// <summary>The language in which results are given: that of the user, where there is a file for it.</summary>
internal static class Language
{
    /// <summary>The variables that name a user's language, the one that counts first.</summary>
    private static readonly string[] Variables = ["LC_ALL", "LC_MESSAGES", "LANG"];

    /// <summary>Chooses the language for the whole run.</summary>
    public static void Choose()
    {
        var language = Wording.Of(Name(Environment.GetEnvironmentVariable)).Language;
        CultureInfo.CurrentUICulture = CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.GetCultureInfo(language);
    }

    /// <summary>The name of the user's language: "de-AT" for "de_AT.UTF-8"; empty where none is set.</summary>
    /// <param name="variable">Value of a variable of the environment; null where it is not set.</param>
    internal static string Name(Func<string, string?> variable)
    {
        var set = Variables.Select(variable).FirstOrDefault(value => !string.IsNullOrEmpty(value)) ?? "";
        return set.Split('.', '@')[0].Replace('_', '-');
    }
}
