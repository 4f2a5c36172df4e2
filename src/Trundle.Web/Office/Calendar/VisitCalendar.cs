using System.Globalization;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using Trundle.Engine.Reference;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Web.Office.Calendar;

/// <summary>Days to be kept in mind as an iCalendar file (RFC 5545): re-torques that are open, and the next rotation where a day can be reckoned.</summary>
internal static class VisitCalendar
{
    /// <summary>The file of some visits.</summary>
    public static string Of(WorkshopStore store, IEnumerable<StoredVisit> visits, DateTimeOffset now)
    {
        var calendar = new Ical.Net.Calendar { ProductId = "-//Trundle//wheels and tyres//EN" };
        var register = store.Condemned.Standing();
        foreach (var visit in visits)
        {
            var state = VisitStanding.Of(visit.Fields, visit.Heading.Id, register, []);
            var vehicle = state.Arrived.Vehicle;
            var name = vehicle.Name ?? "a vehicle not named";
            if (ReTorqueDue.Of(state) is { IsOpen: true, AskOn: { } ask } due)
            {
                Add("re-torque", ask, $"Re-torque: {name}",
                    $"Wheel fixings checked again after {Range(due.After.From, due.After.To)}{(due is { From: { } from, To: { } to } ? $", odometer {Range(from, to)}" : "")} ({due.After.Source.ForPeople}; the vehicle maker's own distance comes first). By hand with a torque wrench, never with a power tool. Visit {visit.Heading.Number}.");
            }

            var rotation = RotationOf(store, visit, state);
            if (rotation.About is { } day)
            {
                Add("rotation", day, $"{(vehicle.SingleTrack ? "Look over" : "Rotation")}: {name}",
                    $"About this day, reckoned from {rotation.Reckoned}; it is due by distance, {Kilometres(rotation.After)}{(rotation.At is { } at ? $", at {Kilometres(at)}" : "")} ({Figures.Of("rotation.interval").Source.ForPeople}; the vehicle maker's own interval comes first). Visit {visit.Heading.Number}.");
            }

            void Add(string what, DateOnly on, string summary, string description) => calendar.Events.Add(new CalendarEvent
            {
                Uid = $"{visit.Heading.Id:D}-{what}",
                DtStamp = new CalDateTime(now.UtcDateTime, "UTC"),
                Start = new CalDateTime(on),
                Summary = summary,
                Description = description,
            });
        }

        return new CalendarSerializer().SerializeToString(calendar) ?? "";
    }

    /// <summary>The next rotation of a visit's vehicle, from its earlier visits.</summary>
    public static RotationDue RotationOf(WorkshopStore store, StoredVisit visit, VisitState state)
    {
        var earlier = store.Visits.Before(visit, 20)
            .Select(v => (Day: v.Fields["date"] is { } day && DateOnly.TryParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var on) ? on : (DateOnly?)null,
                // The store keeps what it read beside what was typed.
                Metres: v.Entries.FirstOrDefault(e => e.Entry.Id == v.Fields.EntryOf("vehicle.odometer")?.Id)?.Si?.Value))
            .Where(e => e is { Day: not null, Metres: not null })
            .Select(e => (e.Day!.Value, Length.FromMetres(e.Metres!.Value)));
        return RotationDue.Of(state.Arrived.Vehicle, state.Arrived.Date, earlier);
    }

    private static string Range(Length from, Length to) => string.Create(CultureInfo.InvariantCulture, $"{from.Kilometres:0} to {to.Kilometres:0} km");

    private static string Kilometres(Length length) => string.Create(CultureInfo.InvariantCulture, $"{length.Kilometres:0} km");
}
