namespace Alburnum.Web.Pages;

/// <summary>A case's sheet as it was made, but for the form on it, which is each reader's own.</summary>
/// <param name="Title">What the case is about.</param>
/// <param name="Rulebook">Name of the rulebook that the form shows first.</param>
/// <param name="MayBeHeldAgain">Whether there is a form: the last run, kept with its files.</param>
/// <param name="Markup">The sheet above the form, as HTML.</param>
/// <param name="Sources">What it rests on.</param>
/// <param name="Cautions">What stands at its foot.</param>
internal sealed record ReadySheet(
    string Title,
    string Rulebook,
    bool MayBeHeldAgain,
    string Markup,
    IReadOnlyList<string> Sources,
    IReadOnlyList<string> Cautions
)
{
    /// <summary>Room that it takes, bytes; what is beside the markup is small.</summary>
    public long Bytes => sizeof(char) * (long)Markup.Length;
}
