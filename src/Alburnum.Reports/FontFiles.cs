namespace Alburnum.Reports;

/// <summary>The font files that travel inside the program, for the printed report and for the page alike.</summary>
public static class FontFiles
{
    /// <summary>The bytes of one file, for instance "Lato-Regular.ttf".</summary>
    /// <exception cref="ArgumentException">No such file travels with the program.</exception>
    public static byte[] Read(string name)
    {
        using var stream =
            typeof(FontFiles).Assembly.GetManifestResourceStream($"Alburnum.Reports.Fonts.{name}")
            ?? throw new ArgumentException($"No font file {name} travels with the program.", nameof(name));
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
