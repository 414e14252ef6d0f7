namespace Alburnum.Requirements;

/// <summary>A use class that a piece is given by somebody, or by something that is known of it. All that speak of the class of one piece are held against each other as these.</summary>
/// <param name="Label">The class as it is named there, for instance "3c"; null where it is named only by the classes of EN 335 that it comes to.</param>
/// <param name="Classes">The use class, or those that it may be. Never empty.</param>
/// <param name="IsCoated">Whether it speaks of coated timber; null where it does not say.</param>
public abstract record UseClassGiven(string? Label, IReadOnlyList<UseClass> Classes, bool? IsCoated)
{
    /// <summary>True where a piece cannot be in both: they share no class, or one is that of coated timber and the other that of uncoated.</summary>
    internal bool Excludes(UseClassGiven other) =>
        !Classes.Intersect(other.Classes).Any() || (IsCoated is { } isCoated && other.IsCoated == !isCoated);
}

/// <summary>The class that the enquiry states.</summary>
/// <param name="Label">As it was written; null where that is not kept.</param>
/// <param name="Classes">What it is taken to mean.</param>
/// <param name="IsCoated">What it says of a coating.</param>
public sealed record UseClassStated(string? Label, IReadOnlyList<UseClass> Classes, bool? IsCoated)
    : UseClassGiven(Label, Classes, IsCoated);

/// <summary>The class of the place where the piece stands, as that was said.</summary>
/// <param name="Classes">The class, or those still possible.</param>
public sealed record UseClassByPlace(IReadOnlyList<UseClass> Classes) : UseClassGiven(null, Classes, IsCoated: null);

/// <summary>The class that the contract's class is for.</summary>
/// <param name="StatedClass">The contract's class, as the contract names it.</param>
/// <param name="For">What it is for.</param>
/// <param name="IsOfCode">True where the code that governs knows the contract's class and answers by it; false where another code does, beside what the governing one demands.</param>
public sealed record UseClassByContract(string StatedClass, UseClassDemand For, bool IsOfCode)
    : UseClassGiven(For.Label, For.Classes, For.IsCoated);

/// <summary>The class in which a code puts the component.</summary>
/// <param name="Component">The component; null where the code goes by something else.</param>
/// <param name="Code">The class.</param>
/// <param name="RulebookTitle">The code: the one that governs, or another where that one is silent.</param>
public sealed record UseClassByCode(string? Component, UseClassDemand Code, string RulebookTitle)
    : UseClassGiven(Code.Label, Code.Classes, Code.IsCoated);

/// <summary>The class of where what goes by a name usually stands.</summary>
/// <param name="Name">The name.</param>
/// <param name="Classes">The class, or those still possible.</param>
public sealed record UseClassByName(string Name, IReadOnlyList<UseClass> Classes)
    : UseClassGiven(null, Classes, IsCoated: null);
