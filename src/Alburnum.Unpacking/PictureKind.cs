namespace Alburnum.Unpacking;

/// <summary>The kinds of picture that are unpacked in a process of their own.</summary>
public enum PictureKind
{
    /// <summary>TIFF, its first page.</summary>
    Tiff,

    /// <summary>HEIC, its first picture.</summary>
    Heic,
}
