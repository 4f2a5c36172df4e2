using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Paper;

namespace Trundle.Visits.Files;

/// <summary>One visit's file as read: the vehicle with what is fitted, and the parts that single operations read for themselves.</summary>
/// <param name="Subject">The vehicle with what is fitted, rules and date.</param>
/// <param name="Balance">The <c>balance</c> part of each assembly that has one, for <c>balance solve</c>.</param>
/// <param name="Studies">Of each assembly the parts that other operations read, such as <c>why</c> and <c>runout</c>, by position and key.</param>
/// <param name="Conditions">Temperature and height where the vehicle will run; each may be null.</param>
/// <param name="Work">The <c>work</c> part: what was done, as the bay records it; null where the file has none.</param>
public sealed record VisitFile(FittedVehicle Subject, IReadOnlyDictionary<Position, FileNode> Balance, IReadOnlyDictionary<(Position At, string Key), FileNode> Studies, Conditions Conditions, FileNode? Work)
{
    /// <summary>What was seen of the vehicle itself when it came, before any work.</summary>
    public ArrivalRecord Arrival { get; init; } = ArrivalRecord.Nothing;

    /// <summary>The procedure by which this visit is worked: the one that it took along.</summary>
    public Procedure Procedure { get; init; } = Procedure.BuiltIn;
}

/// <summary>Where and how the vehicle will run.</summary>
/// <param name="Ambient">Air temperature now, in the bay.</param>
/// <param name="Expected">Air temperature where the vehicle will run, or null.</param>
/// <param name="AltitudeSet">Height above the sea where the pressure is set, or null.</param>
/// <param name="AltitudeUsed">Height above the sea where the vehicle will run, or null.</param>
/// <param name="Laden">The vehicle will carry its full load.</param>
public sealed record Conditions(Temperature? Ambient, Temperature? Expected, Length? AltitudeSet, Length? AltitudeUsed, bool Laden);
