using System.Globalization;
using System.Text.RegularExpressions;
using Alburnum.Records.Marks;
using Alburnum.Tests.Shared;
using Alburnum.Web.Marking;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;

namespace Alburnum.Web.Tests.Marking;

/// <summary>From a click on the screen to a place on the photograph.</summary>
public sealed class PictureSizesTests
{
    [Theory]
    [InlineData("at640.x=319&at640.y=239", 2000, 1500, 998.4, 748.4)]
    [InlineData("at328.x=0&at328.y=245", 2000, 1500, 3, 1497)]
    // A tall photograph is offered at four fifths of the size.
    [InlineData("at512.x=511&at512.y=682", 1500, 2000, 1498.5, 1998.5)]
    public void A_click_is_taken_to_the_photographs_own_pixels(
        string query,
        int width,
        int height,
        double x,
        double y
    ) => Assert.Equal(new MarkedPoint(x, y), Clicked(query, width, height));

    [Theory]
    [InlineData("next=treated")]
    [InlineData("at640.x=0&at640.y=0")]
    [InlineData("at640.x=640&at640.y=10")]
    [InlineData("at640.x=-3&at640.y=10")]
    [InlineData("at641.x=10&at641.y=10")]
    [InlineData("at640.x=10")]
    public void What_is_no_click_on_the_picture_is_no_point(string query) => Assert.Null(Clicked(query, 2000, 1500));

    [Fact]
    public void The_style_sheet_has_a_rule_for_each_size_and_the_picture_fits_the_screen_it_is_shown_on()
    {
        var css = File.ReadAllText(Repository.At("src", "Alburnum.Web", "Assets", "marking.css"));

        foreach (var (width, _) in PictureSizes.For(2000, 1500))
        {
            var rule = $".aim .w{width} {{ display: block; }}";
            Assert.Contains(rule, css, StringComparison.Ordinal);
            var line = css.Split('\n').TakeWhile(each => !each.Contains(rule, StringComparison.Ordinal)).Count();
            var screen = Regex.Match(
                string.Join('\n', css.Split('\n')[Math.Max(0, line - 1)..(line + 1)]),
                @"min-width: (?<px>\d+)px",
                RegexOptions.RightToLeft,
                TimeSpan.FromSeconds(1)
            );
            if (screen.Success)
                Assert.True(
                    int.Parse(screen.Groups["px"].Value, CultureInfo.InvariantCulture) - 32 >= width,
                    $"{width} px is wider than a screen of {screen.Groups["px"].Value} px with its margins."
                );
        }
    }

    private static MarkedPoint? Clicked(string query, int width, int height) =>
        PictureSizes.Clicked(new QueryCollection(QueryHelpers.ParseQuery($"?{query}")), width, height);
}
