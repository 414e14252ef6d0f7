namespace Alburnum.Web.Guarding;

/// <summary>Marks what reads photographs, draws reports or answers programs: a page of another site may not ask for it, and few are done at once.</summary>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class CostlyAttribute : Attribute;
