using Mono.Cecil;

namespace Alburnum.Cli.Tests.House;

/// <summary>Nothing is public that the product does not use itself, read from its compiled code.</summary>
public sealed class UsedMembersTests
{
    private static readonly IReadOnlyList<TypeDefinition> Product =
    [
        .. Rooms
            .All.Select(room => ModuleDefinition.ReadModule(room.Location))
            .SelectMany(module => module.GetTypes())
            // Source generators bring names of their own.
            .Where(type => type.FullName.StartsWith("Alburnum.", StringComparison.Ordinal)),
    ];

    [Fact]
    public void Every_public_method_and_property_is_used_by_the_product()
    {
        var used = Product
            .SelectMany(type => type.Methods)
            .Where(method => method.HasBody)
            .SelectMany(method => method.Body.Instructions)
            .Select(instruction => instruction.Operand)
            .OfType<MethodReference>()
            .Select(method => Key(method.GetElementMethod()))
            .ToHashSet(StringComparer.Ordinal);

        var unused = Product
            .Where(type => type is { IsPublic: true } or { IsNestedPublic: true })
            .SelectMany(type => type.Methods)
            .Where(IsOurs)
            .Select(Key)
            .Where(key => !used.Contains(key))
            .Order(StringComparer.Ordinal)
            .ToList();
        Assert.True(unused.Count == 0, string.Join('\n', unused));
    }

    // What a framework calls, what the compiler writes, and the ways in, are called by no code of ours.
    private static bool IsOurs(MethodDefinition method) =>
        method.IsPublic
        && !method.IsConstructor
        && !method.IsSetter
        && !method.Name.Contains('<', StringComparison.Ordinal)
        && !method.Name.StartsWith("op_", StringComparison.Ordinal)
        && !(method.IsVirtual && (method.IsReuseSlot || method.IsFinal))
        && method.Name is not ("Deconstruct" or "PrintMembers" or "get_EqualityContract" or "Equals");

    private static string Key(MethodReference method) =>
        $"{method.DeclaringType.GetElementType().FullName}.{method.Name}/{method.Parameters.Count}";
}
