using System.Text.Json.Nodes;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Instruments;
using Trundle.Web.Client.Balance;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Instruments;

/// <summary>The workshop's instruments on this device: they come with the visit, so that they are there when the host is not reached.</summary>
public static class ShopInstruments
{
    /// <summary>The instruments in the host's answer, or null where it tells none.</summary>
    public static IReadOnlyList<Instrument>? Read(JsonObject body)
    {
        ArgumentNullException.ThrowIfNull(body);
        return body["instruments"] is JsonArray list ? [.. list.OfType<JsonObject>().Select(InstrumentJson.Read).OfType<Instrument>()] : null;
    }

    /// <summary>Those of a kind that are in use on a day, by name.</summary>
    public static IReadOnlyList<Instrument> Of(this OpenVisit visit, InstrumentKind kind, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return [.. visit.Instruments.Where(i => i.Kind == kind && i.StandingOn(day) != InstrumentStanding.OutOfUse).OrderBy(i => i.Name, StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>The balancer that a wheel was spun on, as the register knows it; null where none is named or known.</summary>
    public static Instrument? BalancerOf(this OpenVisit visit, Position position)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return visit[$"{ProfileAt(position)}.instrument"] is { } name
            ? visit.Instruments.FirstOrDefault(i => i.Kind == InstrumentKind.Balancer && string.Equals(i.Name, name, StringComparison.OrdinalIgnoreCase))
            : null;
    }

    /// <summary>A repeatability as it is entered.</summary>
    public static string Typed(InstrumentRepeatability repeatability)
    {
        ArgumentNullException.ThrowIfNull(repeatability);
        return $"{Quantity.Number(Math.Max(0.01, repeatability.Deviation.Grams), 2)} g";
    }

    /// <summary>Today on this device.</summary>
    public static DateOnly Today(TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(clock);
        return DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
    }

    /// <summary>The texts that make an instrument the one of a use: its name and its record as it stands; what else stands there goes.</summary>
    public static (string Field, string Typed)[] Uses(OpenVisit visit, InstrumentUse use, Instrument? instrument)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(use);
        IReadOnlyList<(string Field, string Typed)> taken = instrument is null ? [] : use.Taken(instrument);
        return
        [
            .. visit.Fields.Under(use.StandingField).Concat(visit.Fields.Under(use.Field)).Select(e => e.Field).Where(f => taken.All(t => t.Field != f)).Select(f => (f, "")),
            .. taken,
        ];
    }

    /// <summary>The path of a wheel's balancer profile.</summary>
    public static string ProfileAt(Position position) => $"{WheelBalance.FieldAt(position)}.balancer";

    /// <summary>The texts that make a wheel's balancer this one: its name and its profile as typed; what else stands there goes.</summary>
    public static (string Field, string Typed)[] Takes(OpenVisit visit, Position position, Instrument? balancer)
    {
        ArgumentNullException.ThrowIfNull(visit);
        var at = ProfileAt(position);
        var wanted = new Dictionary<string, string>(StringComparer.Ordinal);
        if (balancer is not null)
        {
            Walk(at, balancer.Profile);
            wanted[$"{at}.instrument"] = balancer.Name;
        }

        return [.. visit.Fields.Under(at).Where(e => !wanted.ContainsKey(e.Field)).Select(e => (e.Field, "")), .. wanted.Select(w => (w.Key, w.Value))];

        void Walk(string path, JsonNode? node)
        {
            if (node is JsonObject members)
            {
                foreach (var (key, value) in members)
                {
                    Walk($"{path}.{key}", value);
                }
            }
            else if (node is JsonValue value)
            {
                wanted[path] = value.TryGetValue<string>(out var text) ? text : value.ToJsonString();
            }
        }
    }

    /// <summary>True where the profile that stands on the wheel is this balancer's as it is now.</summary>
    public static bool IsTaken(OpenVisit visit, Position position, Instrument balancer) =>
        Takes(visit, position, balancer).All(t => (visit[t.Field] ?? "") == t.Typed);

    /// <summary>How a bare rim distance is meant: in the unit of the balancer's scale.</summary>
    public static Habit Distance(OpenVisit visit, Position position)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return visit[$"{ProfileAt(position)}.distanceUnit"] is "cm" or "in" ? HabitsOf.Millimetres with { Bare = visit[$"{ProfileAt(position)}.distanceUnit"]! } : HabitsOf.Millimetres;
    }
}
