namespace Alburnum.Records.CaseFolders;

/// <summary>Why a file of a case cannot be had.</summary>
public enum FileFault
{
    /// <summary>There is none of that name.</summary>
    NotThere,

    /// <summary>It lies outside the case's folder.</summary>
    Outside,

    /// <summary>It is a folder.</summary>
    IsFolder,

    /// <summary>It is larger than a file of a case may be.</summary>
    TooLarge,

    /// <summary>It may not be read, or another program holds it.</summary>
    Unreadable,

    /// <summary>It was not kept with the run.</summary>
    NotKept,
}

/// <summary>How a fault is said of a file.</summary>
internal static class FileFaultWords
{
    /// <summary>The fault as what follows the file, for instance "which is not there".</summary>
    public static string InWords(this FileFault fault) =>
        fault switch
        {
            FileFault.NotThere => "which is not there",
            FileFault.Outside => "which lies outside the folder",
            FileFault.IsFolder => "which is a folder",
            FileFault.TooLarge => "which is larger than 200 MiB",
            FileFault.Unreadable => "which may not be read, or is in use",
            FileFault.NotKept => "which was not kept",
            _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "Not a fault."),
        };
}
