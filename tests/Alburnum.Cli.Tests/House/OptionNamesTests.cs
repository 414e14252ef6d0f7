using System.Reflection;
using Alburnum.Facts;
using Alburnum.Tests.Shared;
using Microsoft.CodeAnalysis.CSharp;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Tests.House;

/// <summary>One name for one quantity: an option that is a field bears the field's name, and nothing but the command line spells an option out.</summary>
public sealed class OptionNamesTests
{
    private static readonly IReadOnlyList<(PropertyInfo Property, string Name)> Options =
    [
        .. Rooms
            .Cli.GetTypes()
            .Where(type => type.IsSubclassOf(typeof(CommandSettings)))
            .SelectMany(type =>
                type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
            )
            .Select(property =>
                (
                    property,
                    property.GetCustomAttribute<CommandOptionAttribute>() is { } option ? $"--{option.LongNames[0]}"
                    : property.GetCustomAttribute<CommandArgumentAttribute>() is { } argument ? argument.ValueName
                    : ""
                )
            )
            .Where(option => option.Item2.Length > 0),
    ];

    [Fact]
    public void An_option_with_the_help_of_a_field_bears_its_name() =>
        Assert.All(
            Options.Where(option => option.Property.IsDefined(typeof(HelpOfAttribute))),
            option => Assert.Equal(option.Property.GetCustomAttribute<HelpOfAttribute>()!.Field.Option, option.Name)
        );

    [Fact]
    public void An_option_has_one_name() =>
        Assert.All(
            Options
                .Select(option => option.Property.GetCustomAttribute<CommandOptionAttribute>())
                .OfType<CommandOptionAttribute>(),
            option => Assert.Single(option.LongNames)
        );

    [Fact]
    public void Only_the_command_line_spells_an_option_out() =>
        Assert.Empty(
            new[] { Rooms.Core, Rooms.Flow, Rooms.Imaging, Rooms.Records, Rooms.Workflows }
                .SelectMany(room =>
                    Directory.EnumerateFiles(
                        Repository.At("src", room.GetName().Name!),
                        "*.cs",
                        SearchOption.AllDirectories
                    )
                )
                .SelectMany(file => Spelled(file).Select(text => $"{Path.GetFileName(file)}: {text}"))
        );

    [Theory]
    [InlineData("useClass", "", "--use-class", "use_class")]
    [InlineData("serviceLife", "years", "--service-life", "service_life_years")]
    [InlineData("moisture", "%", "--moisture", "moisture_percent")]
    [InlineData("depthMm", "mm", "--depth", "depth_mm")]
    [InlineData("retentionKgPerM3", "kg/m³", "--retention", "retention_kg_per_m3")]
    public void A_name_is_written_one_way_in_each_place(string key, string unit, string option, string column)
    {
        var field = new AskedField
        {
            Key = key,
            Help = "",
            Examples = "",
            Range = NumberRange.Within(0, 1, unit),
        };

        Assert.Equal((option, column), (field.Option, field.Column));
    }

    private static IEnumerable<string> Spelled(string file) =>
        CSharpSyntaxTree
            .ParseText(File.ReadAllText(file))
            .GetRoot()
            .DescendantTokens()
            .Where(token =>
                token.Kind()
                    is SyntaxKind.StringLiteralToken
                        or SyntaxKind.InterpolatedStringTextToken
                        or SyntaxKind.SingleLineRawStringLiteralToken
                        or SyntaxKind.MultiLineRawStringLiteralToken
            )
            .Select(token => token.ValueText)
            .Where(text => System.Text.RegularExpressions.Regex.IsMatch(text, "--[a-z]"));
}
