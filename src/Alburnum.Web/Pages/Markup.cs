using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Alburnum.Web.Pages;

/// <summary>A part of a page made by itself.</summary>
internal static class Markup
{
    /// <summary>The part as HTML.</summary>
    /// <param name="services">What it may ask for.</param>
    /// <param name="given">Its parameters.</param>
    public static async Task<string> OfAsync<TPart>(IServiceProvider services, IDictionary<string, object?> given)
        where TPart : IComponent
    {
        await using var renderer = new HtmlRenderer(services, services.GetRequiredService<ILoggerFactory>());
        return await renderer.Dispatcher.InvokeAsync(async () =>
            (await renderer.RenderComponentAsync<TPart>(ParameterView.FromDictionary(given))).ToHtmlString()
        );
    }
}
