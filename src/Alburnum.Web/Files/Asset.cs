using System.Reflection;
using Microsoft.AspNetCore.Http;

namespace Alburnum.Web.Files;

/// <summary>Styles and typefaces, out of the program itself: no other name leads to any file.</summary>
internal static class Asset
{
    private static readonly string[] FontNames =
    [
        "Lato-Regular.ttf",
        "Lato-Bold.ttf",
        "Lato-Italic.ttf",
        "Vollkorn-SemiBold.ttf",
    ];

    public static IResult Get(string name, HttpContext http)
    {
        if (name is "sheet.css" or "marking.css")
        {
            var style = Assembly.GetExecutingAssembly().GetManifestResourceStream($"Alburnum.Web.Assets.{name}");
            return Results.Stream(style!, "text/css; charset=utf-8");
        }
        if (!FontNames.Contains(name, StringComparer.Ordinal))
            return Results.NotFound();
        http.Response.Headers.CacheControl = "max-age=86400";
        return Results.Bytes(Reports.FontFiles.Read(name), "font/ttf");
    }
}
