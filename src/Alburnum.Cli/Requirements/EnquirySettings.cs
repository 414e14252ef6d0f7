using System.ComponentModel;
using Alburnum.Facts;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Requirements;

/// <summary>The options that describe a piece of wood.</summary>
internal class EnquirySettings : CommandSettings
{
    [CommandOption("--component <NAME>")]
    [Description("What it is for, for instance \"fence post\"")]
    public string? Component { get; init; }

    [CommandOption("--species <NAME>")]
    [Description("Common or botanical name")]
    public string? Species { get; init; }

    [CommandOption("--section <SIZE>")]
    [Description("For instance 75x75, \"4 x 4 in\" or \"round 120\"")]
    public string? Section { get; init; }

    [CommandOption("--form <FORM>")]
    [Description("sawn or round; if not given, taken from the section")]
    public string? Form { get; init; }

    [CommandOption("--use-class <CLASS>")]
    [Description("1, 2, 3, 3c, 3u, 3.1, 3.2, 4 or 5; default: the code's class for the component")]
    public string? UseClass { get; init; }

    [CommandOption("--life <YEARS>")]
    [Description("Desired service life; default: the code's usual life for the component")]
    public string? Life { get; init; }

    [CommandOption("--exposed-heartwood <YES|NO>")]
    [Description("Heartwood reaches a face")]
    public string? ExposedHeartwood { get; init; }

    [CommandOption("--incised <YES|NO>")]
    [Description("Faces are incised before treatment")]
    public string? Incised { get; init; }

    [CommandOption("--coated <YES|NO>")]
    [Description("A coating is applied and maintained")]
    public string? Coated { get; init; }

    [CommandOption("--moisture <PERCENT>")]
    [Description("Moisture content before treatment, %")]
    public string? Moisture { get; init; }

    [CommandOption("--class <NAME>")]
    [Description("Penetration or treatment class that the contract names, for instance NP3")]
    public string? StatedClass { get; init; }

    [CommandOption("--preservative <CODE>")]
    [Description("Preservative as the rulebook's retention table names it")]
    public string? Preservative { get; init; }

    [CommandOption("--critical-value <AMOUNT>")]
    [Description(
        "The preservative's critical value for the use class, for instance \"8 kg/m3\", \"0.5 pcf\" or \"120 g/m2\""
    )]
    public string? CriticalValue { get; init; }

    /// <summary>The options as the fields of an enquiry; their problems are gathered.</summary>
    public IFields Fields(List<InputProblem> problems) =>
        new OptionFields(
            new Dictionary<string, string?>(StringComparer.Ordinal)
            {
                ["--component"] = Component,
                ["--species"] = Species,
                ["--section"] = Section,
                ["--form"] = Form,
                ["--use-class"] = UseClass,
                ["--life"] = Life,
                ["--exposed-heartwood"] = ExposedHeartwood,
                ["--incised"] = Incised,
                ["--coated"] = Coated,
                ["--moisture"] = Moisture,
                ["--class"] = StatedClass,
                ["--preservative"] = Preservative,
                ["--critical-value"] = CriticalValue,
            },
            problems
        );

    /// <summary>The enquiry that the options describe; refuses with every mistake at once.</summary>
    public Enquiry Enquiry(FactLibrary facts)
    {
        var problems = new List<InputProblem>();
        var enquiry = EnquiryReader.Read(Fields(problems), facts);
        return problems.Count == 0 ? enquiry : throw new InputRefusedException(problems);
    }
}
