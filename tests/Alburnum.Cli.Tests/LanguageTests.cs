namespace Alburnum.Cli.Tests;

/// <summary>Which language a user has chosen.</summary>
public sealed class LanguageTests
{
    [Theory]
    [InlineData("de_AT.UTF-8", "", "de-AT")]
    [InlineData("de_AT@euro", "", "de-AT")]
    [InlineData("de_AT", "fr_FR.UTF-8", "fr-FR")]
    [InlineData("C.UTF-8", "", "C")]
    [InlineData("", "", "")]
    public void The_language_is_the_one_that_the_environment_names(string lang, string all, string expected) =>
        Assert.Equal(
            expected,
            Language.Name(variable =>
                variable switch
                {
                    "LANG" => lang,
                    "LC_ALL" => all,
                    _ => null,
                }
            )
        );
}
