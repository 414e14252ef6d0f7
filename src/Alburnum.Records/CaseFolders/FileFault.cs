using Alburnum.Facts;

namespace Alburnum.Records.CaseFolders;

/// <summary>Why a file of a case cannot be had.</summary>
public enum FileFault
{
    /// <summary>It can be had.</summary>
    None,

    /// <summary>There is none of that name.</summary>
    NotThere,

    /// <summary>It lies outside the case's folder.</summary>
    OutsideTheFolder,

    /// <summary>It is a folder.</summary>
    IsAFolder,

    /// <summary>It is larger than any file of a case may be.</summary>
    TooLarge,

    /// <summary>It may not be read, or another program holds it.</summary>
    MayNotBeRead,

    /// <summary>It was not kept with the run.</summary>
    NotKept,

    /// <summary>It holds nothing.</summary>
    Empty,
}

/// <summary>What is said of a file that cannot be had.</summary>
internal static class FileFaultWords
{
    /// <summary>For instance "which is not there", to go behind the file's name.</summary>
    public static string InWords(this FileFault fault) =>
        fault switch
        {
            FileFault.NotThere => "which is not there",
            FileFault.OutsideTheFolder => "which lies outside the folder",
            FileFault.IsAFolder => "which is a folder",
            FileFault.TooLarge => $"which is too large ({PhotographSize.Expected})",
            FileFault.MayNotBeRead => "which is not a plain file, may not be read, or is in use",
            FileFault.NotKept => "which was not kept",
            FileFault.Empty => "which is empty",
            _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "Nothing wrong with it."),
        };
}
