using System.ComponentModel;
using System.Globalization;
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
    [Description("sawn or round; as the section shows unless said")]
    public string? Form { get; init; }

    [CommandOption("--use-class <CLASS>")]
    [Description("1, 2, 3, 3c, 3u, 3.1, 3.2, 4 or 5; the code's class for the component unless said")]
    public string? UseClass { get; init; }

    [CommandOption("--life <YEARS>")]
    [Description("Desired service life; the code's usual life for the component unless said")]
    public string? Life { get; init; }

    [CommandOption("--exposed-heartwood <YES|NO>")]
    [Description("Heartwood reaches a face")]
    public string? ExposedHeartwood { get; init; }

    [CommandOption("--incised <YES|NO>")]
    [Description("Faces are incised before treatment")]
    public string? Incised { get; init; }

    [CommandOption("--coated <YES|NO>")]
    [Description("A coating is applied and kept up")]
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
}

/// <summary>From the words of the command line to an enquiry; all mistakes are found at once.</summary>
internal static class EnquiryWords
{
    private const double KgPerM3InPcf = 16.018463;

    public static Enquiry Read(EnquirySettings words, FactLibrary facts)
    {
        var problems = new List<InputProblem>();
        // British 3c and 3u say whether class 3 is coated; no other class has such parts.
        var (label, labelCoated) = words.UseClass switch
        {
            "3c" => ("3", true),
            "3u" => ("3", false),
            var other => (other, (bool?)null),
        };
        var classes = label is null ? [] : UseClassWords.Parse(label);
        if (label is not null && classes.Count == 0)
            Refuse("--use-class", label, "1, 2, 3, 3c, 3u, 3.1, 3.2, 4 or 5");

        var enquiry = new Enquiry
        {
            Component = Named(words.Component, name => facts.Components.Get(name, "--component")),
            Species = Named(words.Species, name => facts.Species.Get(name, "--species")),
            Section = Named(words.Section, Section),
            Form = Form(words.Form),
            UseClasses = classes,
            Life = Whole("--life", words.Life, 1, 200) is { } years ? new DesiredServiceLife(years) : null,
            HasExposedHeartwood = YesNo("--exposed-heartwood", words.ExposedHeartwood),
            IsIncised = YesNo("--incised", words.Incised),
            IsCoated = YesNo("--coated", words.Coated) ?? labelCoated,
            MoisturePercent = Percent("--moisture", words.Moisture),
            StatedClass = words.StatedClass,
            Preservative = words.Preservative,
            CriticalValue = Amount("--critical-value", words.CriticalValue),
        };
        if (enquiry.FormContradictsSection)
            Refuse("--form", words.Form!, EnquiryTable.FormOf(enquiry.Section!));
        return problems.Count == 0 ? enquiry : throw new InputRefusedException(problems);

        void Refuse(string option, string found, string expected) =>
            problems.Add(new InputProblem("command line", 0, "", option, $"\"{found}\"", expected));

        T? Named<T>(string? name, Func<string, T> find)
            where T : class
        {
            try
            {
                return name is null ? null : find(name);
            }
            catch (InputRefusedException refused)
            {
                problems.AddRange(refused.Problems.Select(problem => problem with { File = "command line" }));
                return null;
            }
        }

        Timber.Section Section(string text) =>
            Timber.SectionText.TryParse(text, out var section)
                ? section
                : throw new InputRefusedException(
                    new InputProblem("command line", 0, "", "--section", $"\"{text}\"", Timber.SectionText.Expected)
                );

        TimberForm? Form(string? text)
        {
            switch (text)
            {
                case null:
                    return null;
                case "sawn":
                    return TimberForm.Sawn;
                case "round":
                    return TimberForm.Round;
                default:
                    Refuse("--form", text, "sawn or round");
                    return null;
            }
        }

        bool? YesNo(string option, string? text)
        {
            if (text is null or "yes" or "no")
                return text is null ? null : text == "yes";
            Refuse(option, text, "yes or no");
            return null;
        }

        int? Whole(string option, string? text, int low, int high)
        {
            if (text is null)
                return null;
            if (
                int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value)
                && value >= low
                && value <= high
            )
                return value;
            Refuse(option, text, FormattableString.Invariant($"whole years, {low} to {high}"));
            return null;
        }

        double? Percent(string option, string? text)
        {
            if (text is null)
                return null;
            if (
                double.TryParse(
                    text.TrimEnd('%', ' '),
                    NumberStyles.AllowDecimalPoint,
                    CultureInfo.InvariantCulture,
                    out var value
                )
                && value <= 250
            )
                return value;
            Refuse(option, text, "0 to 250 %");
            return null;
        }

        PreservativeAmount? Amount(string option, string? text)
        {
            if (text is null)
                return null;
            foreach (
                var (unit, kind, inUnit) in new[]
                {
                    ("kg/m3", AmountUnit.KgPerM3, 1),
                    ("kg/m³", AmountUnit.KgPerM3, 1),
                    ("pcf", AmountUnit.KgPerM3, KgPerM3InPcf),
                    ("g/m2", AmountUnit.GramPerM2, 1),
                    ("g/m²", AmountUnit.GramPerM2, 1),
                }
            )
            {
                if (
                    text.EndsWith(unit, StringComparison.Ordinal)
                    && double.TryParse(
                        text[..^unit.Length],
                        NumberStyles.AllowDecimalPoint | NumberStyles.AllowTrailingWhite,
                        CultureInfo.InvariantCulture,
                        out var value
                    )
                    && value is > 0 and <= 2000
                )
                {
                    return new PreservativeAmount(value * inUnit, kind);
                }
            }
            Refuse(option, text, "an amount above 0 with its unit, kg/m3, pcf or g/m2");
            return null;
        }
    }
}
