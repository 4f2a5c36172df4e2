using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Web.Office.ReTorques;

/// <summary>One visit that left a re-torque due.</summary>
/// <param name="Visit">The visit.</param>
/// <param name="Vehicle">What the vehicle is called.</param>
/// <param name="Contact">Whom to call, or null.</param>
/// <param name="Due">The re-torque.</param>
public sealed record ReTorqueLine(VisitHeading Visit, string Vehicle, string? Contact, ReTorqueDue Due)
{
    /// <summary>How far back the list looks: a re-torque that nobody did in this time is past asking.</summary>
    public static readonly TimeSpan LooksBack = TimeSpan.FromDays(60);

    /// <summary>The visits of the last weeks: those that are open first, the longest waiting before the others.</summary>
    public static IReadOnlyList<ReTorqueLine> All(WorkshopStore store, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(store);
        var register = store.Condemned.Standing();
        return
        [
            .. store.Visits.TightenedSince(now - LooksBack)
                .Select(v => (Visit: v, State: VisitStanding.Of(v.Fields, v.Heading.Id, register, [])))
                .Select(v => (v.Visit, v.State, Due: ReTorqueDue.Of(v.State)))
                .Where(v => v.Due is not null)
                .Select(v => new ReTorqueLine(v.Visit.Heading, v.State.Arrived.Vehicle.Name ?? "A vehicle not yet named", v.State.Work.Contact, v.Due!))
                .OrderBy(l => l.Due.IsOpen ? 0 : 1).ThenBy(l => l.Due.AskOn ?? DateOnly.MaxValue).ThenBy(l => l.Visit.Number, StringComparer.Ordinal),
        ];
    }
}
