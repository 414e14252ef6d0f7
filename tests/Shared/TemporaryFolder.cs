namespace Alburnum.Tests.Shared;

/// <summary>A folder of its own for one test, gone when the test is over.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("alburnum-").FullName;

    public string At(string name) => System.IO.Path.Combine(Path, name);

    /// <summary>Writes a small file into the folder.</summary>
    public string Write(string name, string text)
    {
        File.WriteAllText(At(name), text);
        return At(name);
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
