using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Reports.Json;
using Alburnum.Web.Guarding;
using Alburnum.Workflows.Cases;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Web.Asking;

/// <summary>What programs may ask over HTTP: the documents that the commands print, and problem details (RFC 9457) where something is wrong.</summary>
internal static class Api
{
    private const string Json = "application/json; charset=utf-8";

    public static void MapTo(WebApplication app)
    {
        var api = app.MapGroup("/api").AddEndpointFilter(AsFileAsync).WithMetadata(new CostlyAttribute());
        api.MapGet(
            "/requirement",
            (HttpRequest request, FactLibrary facts, CancellationToken stop) =>
                Answer(SentEnquiry.Of(request.Query), facts, stop)
        );
        api.MapPost("/requirement", AskAsync);
        api.MapPost("/cases/{number:int}/rulebook", HoldAsync);
    }

    private static async Task<IResult> AskAsync(HttpRequest request, FactLibrary facts, CancellationToken stop) =>
        request.HasFormContentType
            ? Answer(await SentEnquiry.OfAsync(await request.ReadFormAsync(stop), stop), facts, stop)
        : request.HasJsonContentType() ? Answer(await SentEnquiry.OfAsync(request.Body, stop), facts, stop)
        : Problem(StatusCodes.Status415UnsupportedMediaType, Said("api.form-or-json"));

    private static IResult Answer(SentEnquiry enquiry, FactLibrary facts, CancellationToken stop)
    {
        try
        {
            return Results.Text(DocumentJson.Write(enquiry.Answer(facts, stop)), Json);
        }
        catch (InputRefusedException refused)
        {
            return Refused(refused);
        }
    }

    private static async Task<IResult> HoldAsync(
        int number,
        HttpRequest request,
        ICaseStore store,
        FactLibrary facts,
        CancellationToken stop
    )
    {
        if (!request.HasFormContentType)
            return Problem(StatusCodes.Status415UnsupportedMediaType, Said("api.form"));
        var problems = new List<InputProblem>();
        var rulebook = await SentRulebook.OfAsync(await request.ReadFormAsync(stop), problems, stop);
        CaseReading? again;
        try
        {
            again = await HoldAgain.JudgeAsync(number, rulebook, problems, store, facts, stop);
        }
        catch (InputRefusedException refused)
        {
            return Refused(refused);
        }
        return again is null
            ? Problem(StatusCodes.Status404NotFound, Said("api.no-such-case"))
            : Results.Text(await NewRun.KeepAsync(again, number, store, facts, stop), Json);
    }

    // Saved and not shown, under a name of its own: what was asked must not pass for a page or a program.
    private static ValueTask<object?> AsFileAsync(EndpointFilterInvocationContext call, EndpointFilterDelegate next)
    {
        AnswerHeaders.Name(call.HttpContext.Response, isShown: false, "answer.json");
        return next(call);
    }

    private static IResult Refused(InputRefusedException refused) =>
        Results.Problem(
            refused.Message,
            statusCode: StatusCodes.Status400BadRequest,
            title: Said("api.refused"),
            extensions: new Dictionary<string, object?>(StringComparer.Ordinal)
            {
                ["problems"] = refused
                    .Problems.Select(problem => new Dictionary<string, object?>(StringComparer.Ordinal)
                    {
                        ["file"] = problem.File,
                        ["line"] = problem.Line > 0 ? problem.Line : null,
                        ["row"] = problem.Row.Length > 0 ? problem.Row : null,
                        ["field"] = problem.Field.Length > 0 ? problem.Field : null,
                        ["found"] = problem.Found,
                        ["expected"] = problem.Expected,
                    })
                    .ToList(),
            }
        );

    private static IResult Problem(int status, string title) => Results.Problem(statusCode: status, title: title);
}
