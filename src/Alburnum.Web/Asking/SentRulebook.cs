using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Requirements;
using Microsoft.AspNetCore.Http;

namespace Alburnum.Web.Asking;

/// <summary>The rulebook that was sent for: a file of the user's, otherwise one that ships, by its name.</summary>
/// <param name="Name">Name of one that ships; null where none was named.</param>
/// <param name="File">The user's file; null where none was sent.</param>
internal sealed record SentRulebook(string? Name, KeptFile? File)
{
    /// <summary>Greatest size of a file, bytes.</summary>
    public const int BytesMax = 1_000_000;

    /// <summary>Takes the file from a form, into memory and nowhere else.</summary>
    /// <param name="form">The form.</param>
    /// <param name="problems">Gains what is wrong with the file.</param>
    /// <param name="stop">Gives up.</param>
    public static async Task<SentRulebook> OfAsync(
        IFormCollection form,
        List<InputProblem> problems,
        CancellationToken stop
    )
    {
        var field = EnquiryFields.Rulebook;
        var name = form[field.Key].FirstOrDefault(value => !string.IsNullOrWhiteSpace(value))?.Trim();
        if (form.Files.GetFile(field.Key) is not { } file)
            return new(name, null);
        // Some browsers send the path as well.
        var fileName = file.FileName[(file.FileName.LastIndexOfAny(['/', '\\']) + 1)..];
        if (file.Length > BytesMax)
        {
            problems.Add(
                new InputProblem(
                    fileName,
                    0,
                    "",
                    "",
                    $"a file of {InputProblem.Number(Math.Round(file.Length / 1e6, 1))} MB",
                    $"a rulebook file of at most {BytesMax / 1_000_000} MB"
                )
            );
            return new(name, null);
        }
        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes, stop);
        return new(name, new(fileName, bytes.ToArray()));
    }

    /// <summary>Reads the rulebook; null where it is refused.</summary>
    /// <param name="facts">The rulebooks that ship, and the words that a file may use.</param>
    /// <param name="problems">Gains what is wrong.</param>
    public Rulebook? Read(FactLibrary facts, List<InputProblem> problems)
    {
        if (File is null)
            return Named(Name ?? EnquiryFields.Rulebook.Default, facts, problems);
        try
        {
            return RulebookFile.Read(File.Bytes, File.FileName, Path.GetFileNameWithoutExtension(File.FileName), facts);
        }
        catch (InputRefusedException refused)
        {
            problems.AddRange(refused.Problems);
            return null;
        }
    }

    // Only by name: what stands in an address must open no file.
    private static Rulebook? Named(string name, FactLibrary facts, List<InputProblem> problems)
    {
        if (facts.Rulebooks.Names.Contains(name, StringComparer.OrdinalIgnoreCase))
            return facts.Rulebooks.Named(name);
        problems.Add(SentFields.Problem(EnquiryFields.Rulebook.Key, $"\"{name}\"", facts.Rulebooks.MeantBy(name)));
        return null;
    }
}
