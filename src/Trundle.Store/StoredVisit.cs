using Trundle.Engine.Findings;
using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Store;

/// <summary>An entry as the store keeps it.</summary>
/// <param name="Entry">What was entered.</param>
/// <param name="Sequence">The order in which the store took it.</param>
/// <param name="Si">The SI amount where it is a quantity that was read.</param>
/// <param name="Outcome"><c>read</c>, <c>emptied</c>, or the code of the problem with it.</param>
/// <param name="Problem">The problem in words, or null.</param>
/// <param name="EngineVersion">What understood it.</param>
/// <param name="TableEdition">The edition of the tables it was held against.</param>
/// <param name="ReceivedAt">When the store took it.</param>
/// <param name="Supersedes">The entry for the same field that it follows, or null.</param>
public sealed record StoredEntry(
    Entry Entry, long Sequence, Amount? Si, string Outcome, string? Problem, string EngineVersion, string TableEdition, DateTimeOffset ReceivedAt, Guid? Supersedes);

/// <summary>A visit without its entries.</summary>
/// <param name="Id">Made where it was opened.</param>
/// <param name="Number">As written on paper: year, month and day, and which one of that day.</param>
/// <param name="OpenedAt">When.</param>
/// <param name="OpenedBy">By whom.</param>
/// <param name="HandedBackAt">When the vehicle was handed back, or null while it is here.</param>
public sealed record VisitHeading(Guid Id, string Number, DateTimeOffset OpenedAt, string OpenedBy, DateTimeOffset? HandedBackAt);

/// <summary>A visit with every entry in the order in which the store took them.</summary>
/// <param name="Heading">Its heading.</param>
/// <param name="Entries">Every entry, superseded ones too.</param>
public sealed record StoredVisit(VisitHeading Heading, IReadOnlyList<StoredEntry> Entries)
{
    /// <summary>The newest entry of each field.</summary>
    public VisitFields Fields { get; } = VisitFields.Of(Entries.Select(e => e.Entry));
}

/// <summary>An entry that was not taken.</summary>
public sealed record RefusedEntry(Guid Id, Problem Problem);

/// <summary>What became of a batch of entries.</summary>
/// <param name="Taken">New to the store, and kept.</param>
/// <param name="Already">Kept before: sent twice, taken once.</param>
/// <param name="Refused">Not taken, each with the reason.</param>
/// <param name="Added">Entries that the store itself made, since a tyre or wheel of the visit is condemned, or a tyre of it was repaired before.</param>
public sealed record TakenEntries(IReadOnlyList<Guid> Taken, IReadOnlyList<Guid> Already, IReadOnlyList<RefusedEntry> Refused, IReadOnlyList<StoredEntry> Added);
