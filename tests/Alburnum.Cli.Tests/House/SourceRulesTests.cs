using Alburnum.Tests.Shared;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Alburnum.Cli.Tests.House;

/// <summary>What every source file of the product keeps to, read from the files themselves.</summary>
public sealed class SourceRulesTests
{
    private const int LinesMost = 60;
    private const int ParametersMost = 6;

    private static readonly IReadOnlyList<SyntaxNode> Files =
    [
        .. Sources("*.cs").Select(file => Parsed(File.ReadAllText(file), file)),
        .. Sources("*.razor").Select(file => Parsed(CodeOf(File.ReadAllText(file)), file)),
    ];

    [Fact]
    public void No_method_is_longer_than_sixty_lines() =>
        Assert.Empty(
            All<SyntaxNode>()
                .Where(node =>
                    node
                        is BaseMethodDeclarationSyntax
                            or AccessorDeclarationSyntax
                            or LocalFunctionStatementSyntax
                            or AnonymousFunctionExpressionSyntax
                )
                .Where(node => Lines(node) > LinesMost)
                .Select(Place)
        );

    [Fact]
    public void No_method_has_more_than_six_parameters() =>
        Assert.Empty(
            All<ParameterListSyntax>()
                // A record's list is its properties.
                .Where(list => list.Parent is not RecordDeclarationSyntax && list.Parameters.Count > ParametersMost)
                .Select(Place)
        );

    [Fact]
    public void A_private_field_begins_with_an_underscore_unless_it_never_changes() =>
        Assert.Empty(
            All<FieldDeclarationSyntax>()
                .Where(field => !field.Modifiers.Any(IsNotPrivate) && !IsConstant(field))
                .SelectMany(field => field.Declaration.Variables)
                .Where(variable => !variable.Identifier.Text.StartsWith('_'))
                .Select(variable => $"{Place(variable)}: {variable.Identifier.Text}")
        );

    [Fact]
    public void Every_regular_expression_gives_up_in_time() =>
        Assert.Empty(
            All<AttributeSyntax>()
                .Where(attribute => attribute.Name.ToString() == "GeneratedRegex" && !GivesUp(attribute))
                .Select(Place)
                // Made or called otherwise, one has no limit that can be read here.
                .Concat(
                    All<ObjectCreationExpressionSyntax>().Where(made => made.Type.ToString() == "Regex").Select(Place)
                )
                .Concat(
                    All<InvocationExpressionSyntax>()
                        .Where(call =>
                            call.Expression.ToString()
                                is "Regex.IsMatch"
                                    or "Regex.Match"
                                    or "Regex.Matches"
                                    or "Regex.Replace"
                                    or "Regex.Split"
                        )
                        .Select(Place)
                )
        );

    private static bool GivesUp(AttributeSyntax attribute) =>
        attribute.ArgumentList!.Arguments.Any(argument =>
            argument.NameColon?.Name.ToString() == "matchTimeoutMilliseconds"
            || argument.ToString().Contains("NonBacktracking", StringComparison.Ordinal)
        );

    private static bool IsNotPrivate(SyntaxToken modifier) =>
        modifier.Kind() is SyntaxKind.PublicKeyword or SyntaxKind.InternalKeyword or SyntaxKind.ProtectedKeyword;

    private static bool IsConstant(FieldDeclarationSyntax field) =>
        field.Modifiers.Any(SyntaxKind.ConstKeyword)
        || (field.Modifiers.Any(SyntaxKind.StaticKeyword) && field.Modifiers.Any(SyntaxKind.ReadOnlyKeyword));

    private static IEnumerable<string> Sources(string pattern) =>
        Directory
            .EnumerateFiles(Repository.At("src"), pattern, SearchOption.AllDirectories)
            .Where(file => !file.Contains("/Migrations/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);

    private static SyntaxNode Parsed(string code, string file) =>
        CSharpSyntaxTree.ParseText(code, path: file).GetRoot();

    // A page's code stands in a block at its end; the lines before it are kept, empty, so that places are right.
    private static string CodeOf(string page)
    {
        const string opening = "@code {";
        var start = page.IndexOf(opening, StringComparison.Ordinal);
        return start < 0
            ? ""
            : new string('\n', page[..start].Count(letter => letter == '\n'))
                + "class Page {"
                + page[(start + opening.Length)..];
    }

    private static IEnumerable<T> All<T>()
        where T : SyntaxNode => Files.SelectMany(file => file.DescendantNodes().OfType<T>());

    private static int Lines(SyntaxNode node)
    {
        var span = node.SyntaxTree.GetLineSpan(node.Span);
        return span.EndLinePosition.Line - span.StartLinePosition.Line + 1;
    }

    private static string Place(SyntaxNode node) =>
        $"{Path.GetRelativePath(Repository.Root, node.SyntaxTree.FilePath)}:{node.SyntaxTree.GetLineSpan(node.Span).StartLinePosition.Line + 1}";
}
