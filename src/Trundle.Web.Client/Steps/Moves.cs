using Trundle.Engine.Vehicles;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Steps;

/// <summary>Where the assemblies of this visit go by the rotation that was chosen.</summary>
public static class Moves
{
    /// <summary>From where each position gets its assembly; empty where no rotation was chosen.</summary>
    public static IReadOnlyDictionary<Position, Position> CameFrom(OpenVisit visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return LeavingVehicle.Of(visit.State.Arrived, visit.State.Work).CameFrom;
    }

    /// <summary>Where the assembly that came in at a position leaves.</summary>
    public static Position WhereTo(OpenVisit visit, Position from)
    {
        foreach (var (to, came) in CameFrom(visit))
        {
            if (came == from)
            {
                return to;
            }
        }

        return from;
    }

    /// <summary>The vehicle with its new tyres, valves and wheels, every assembly still where it came in: as the wheels are while they are off.</summary>
    public static FittedVehicle Renewed(OpenVisit visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return LeavingVehicle.WithRenewals(visit.State.Arrived, visit.State.Work);
    }
}
