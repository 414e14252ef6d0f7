using Alburnum.Timber;

namespace Alburnum.Requirements;

/// <summary>What is changed to make something possible. Ordered: a greater value asks more of the client.</summary>
public enum RouteKind
{
    /// <summary>Incise the faces before treatment.</summary>
    Incise,

    /// <summary>Dry the timber before treatment.</summary>
    Dry,

    /// <summary>Round timber in place of sawn.</summary>
    UseRound,

    /// <summary>Another species, treated.</summary>
    OtherSpecies,

    /// <summary>Naturally durable heartwood, untreated.</summary>
    DurableHeartwood,

    /// <summary>A shorter desired service life.</summary>
    ShorterLife,

    /// <summary>Another design, which lowers the use class.</summary>
    LowerUseClass,

    /// <summary>What the code asks, in place of the class that the contract names.</summary>
    CodesClass,
}

/// <summary>One change that may make an enquiry possible.</summary>
/// <param name="Kind">What is changed.</param>
public abstract record RouteChange(RouteKind Kind);

/// <summary>The faces are incised.</summary>
public sealed record InciseFaces() : RouteChange(RouteKind.Incise);

/// <summary>The timber is dried before treatment.</summary>
/// <param name="MaxPercent">Greatest moisture content then, % of the oven-dry mass.</param>
public sealed record DryFirst(double MaxPercent) : RouteChange(RouteKind.Dry);

/// <summary>Round timber takes the place of sawn.</summary>
/// <param name="Section">A round of at least the section modulus of the sawn piece; null where its section is not known.</param>
public sealed record TakeRound(RoundSection? Section) : RouteChange(RouteKind.UseRound);

/// <summary>Another species takes the place of the one enquired about.</summary>
/// <param name="Species">The other species.</param>
/// <param name="Instead">The species enquired about; null where none was named.</param>
public sealed record TakeSpecies(Species Species, Species? Instead) : RouteChange(RouteKind.OtherSpecies);

/// <summary>Heartwood of a durable species, free of sapwood, is used untreated.</summary>
/// <param name="Species">The species.</param>
public sealed record TakeHeartwood(Species Species) : RouteChange(RouteKind.DurableHeartwood);

/// <summary>The client is content with a shorter service life.</summary>
/// <param name="Life">The life.</param>
public sealed record ShortenLife(DesiredServiceLife Life) : RouteChange(RouteKind.ShorterLife);

/// <summary>Client and supplier agree on what the code asks, in place of the contract's class.</summary>
/// <param name="StatedClass">The contract's class.</param>
public sealed record TakeCodesClass(string StatedClass) : RouteChange(RouteKind.CodesClass);

/// <summary>The piece is built in so that it stays drier.</summary>
/// <param name="UseClass">The use class then: 3.2 off the ground, 3.1 where no water stays, 2 under a roof.</param>
/// <param name="From">The use class now. Out of class 4 it is held clear of the ground, whatever else is done.</param>
public sealed record LowerClass(UseClass UseClass, UseClass From) : RouteChange(RouteKind.LowerUseClass);
