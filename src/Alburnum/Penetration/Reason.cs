namespace Alburnum.Penetration;

/// <summary>One thing that a verdict rests on, as data: what was asked, what was found and how surely. Words are made of it elsewhere.</summary>
public abstract record Reason
{
    private protected Reason() { }
}
