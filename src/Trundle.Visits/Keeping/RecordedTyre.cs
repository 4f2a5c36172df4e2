namespace Trundle.Visits.Keeping;

/// <summary>A TIN that was recorded somewhere, and what is known of the tyre since.</summary>
/// <param name="Tin">As typed.</param>
/// <param name="Where"><c>visit</c>, <c>set</c> or <c>registration</c>.</param>
/// <param name="Id">Of that visit, set or registration.</param>
/// <param name="Number">Its number.</param>
/// <param name="Vehicle">What the workshop calls the vehicle, or null.</param>
/// <param name="Position">Where it sat, or null.</param>
/// <param name="On">The day it was recorded.</param>
/// <param name="Superseded">True where something else was entered in its place since.</param>
/// <param name="Left">True where the tyre is known to have left the vehicle: condemned, renewed, taken into storage.</param>
/// <param name="Fate">What is known of it, in words.</param>
public sealed record RecordedTyre(
    string Tin, string Where, Guid Id, string Number, string? Vehicle, string? Position, DateOnly On, bool Superseded, bool Left, string Fate);

/// <summary>Every TIN that was recorded, and how many tyres stand without one.</summary>
/// <param name="Tyres">With a TIN, oldest first.</param>
/// <param name="Without">How many fitted tyres have none recorded.</param>
public sealed record RecordedTyres(IReadOnlyList<RecordedTyre> Tyres, int Without);
