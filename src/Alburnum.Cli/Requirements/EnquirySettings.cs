using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Requirements;

/// <summary>The options that describe a piece of wood.</summary>
internal class EnquirySettings : ExposureSettings
{
    [CommandOption("--component <NAME>")]
    [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.Component))]
    public string? Component { get; init; }

    [CommandOption("--species <NAME>")]
    [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.Species))]
    public string? Species { get; init; }

    [CommandOption("--section <SIZE>")]
    [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.Section))]
    public string? Section { get; init; }

    [CommandOption("--form <FORM>")]
    [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.Form))]
    public string? Form { get; init; }

    [CommandOption("--use-class <CLASS>")]
    [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.UseClass))]
    public string? UseClass { get; init; }

    [CommandOption("--service-life <YEARS>")]
    [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.Life))]
    public string? Life { get; init; }

    [CommandOption("--exposed-heartwood <YES|NO>")]
    [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.ExposedHeartwood))]
    public string? ExposedHeartwood { get; init; }

    [CommandOption("--incised <YES|NO>")]
    [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.Incised))]
    public string? Incised { get; init; }

    [CommandOption("--moisture <PERCENT>")]
    [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.Moisture))]
    public string? Moisture { get; init; }

    [CommandOption("--stated-class <NAME>")]
    [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.StatedClass))]
    public string? StatedClass { get; init; }

    [CommandOption("--preservative <NAME>")]
    [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.Preservative))]
    public string? Preservative { get; init; }

    [CommandOption("--critical-value <AMOUNT>")]
    [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.CriticalValue))]
    public string? CriticalValue { get; init; }

    /// <summary>The enquiry that the options describe; refuses with every mistake at once.</summary>
    public Enquiry Enquiry(FactLibrary facts, Rulebook rulebook)
    {
        var problems = new List<InputProblem>();
        var enquiry = EnquiryReader.Read(new OptionFields(this, problems), facts, rulebook);
        return problems.Count == 0 ? enquiry : throw new InputRefusedException(problems);
    }
}
