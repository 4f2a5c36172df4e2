using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;
using Trundle.Visits.Fleet;
using Trundle.Visits.Keeping;

namespace Trundle.Store;

/// <summary>A vehicle of a fleet as it is listed now.</summary>
/// <param name="Id">Its identifier here.</param>
/// <param name="Vehicle">What the list gives.</param>
/// <param name="On">The day of the list that gave it.</param>
public sealed record ListedVehicle(Guid Id, FleetVehicle Vehicle, DateOnly On);

/// <summary>What a list changed.</summary>
/// <param name="Added">New vehicles.</param>
/// <param name="Changed">Vehicles of which it says something else than before.</param>
/// <param name="Same">Vehicles of which it says what stands.</param>
/// <param name="NotNamed">Vehicles that are listed and that it does not name: they stay.</param>
public sealed record FleetTaken(int Added, int Changed, int Same, int NotNamed);

/// <summary>Vehicles of fleets, so that a visit begins with what is known. A newer list supersedes an older one; nothing is deleted.</summary>
public sealed class FleetStore
{
    private const string Kind = "fleet";
    private const string Listed = "listed";
    private const string OffTheList = "off the list";

    private readonly StoreFile _file;

    internal FleetStore(StoreFile file) => _file = file;

    /// <summary>Every vehicle that is listed now, by its fleet's number.</summary>
    public IReadOnlyList<ListedVehicle> All()
    {
        using var context = _file.Context();
        return [.. KeptRecords.AllIn(context, Kind).Select(Of).OfType<ListedVehicle>().OrderBy(v => v.Vehicle.Unit, StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>The vehicle of an identifier, or null where it is not listed now.</summary>
    public ListedVehicle? Find(Guid id)
    {
        using var context = _file.Context();
        return KeptRecords.AllIn(context, Kind).Where(k => k.Id == id).Select(Of).FirstOrDefault();
    }

    /// <summary>Takes a list in, whole. What it does not name stays; taking the same list in twice changes nothing.</summary>
    public FleetTaken Take(IReadOnlyList<FleetVehicle> list, DateOnly day, Recorder by)
    {
        ArgumentNullException.ThrowIfNull(list);
        ArgumentNullException.ThrowIfNull(by);
        using var context = _file.Context();
        using var transaction = context.Database.BeginTransaction();
        var there = KeptRecords.AllIn(context, Kind).ToDictionary(k => k.Number, StringComparer.Ordinal);
        var (added, changed, same) = (0, 0, 0);
        foreach (var vehicle in list)
        {
            var body = Body(vehicle);
            var kept = there.GetValueOrDefault(Key(vehicle.Unit));
            if (kept is not null && kept.Records[^1] is { Kind: Listed } last && last.Body == body)
            {
                same++;
                continue;
            }

            var id = kept?.Id ?? Guid.CreateVersion7(by.At);
            if (kept is null)
            {
                context.Kept.Add(new KeptRow { Id = id, Kind = Kind, Number = Key(vehicle.Unit) });
            }

            _ = kept is null || kept.Records[^1].Kind == OffTheList ? added++ : changed++;
            Add(context, id, Listed, body, day, by);
        }

        context.SaveChanges();
        transaction.Commit();
        var named = list.Select(v => Key(v.Unit)).ToHashSet(StringComparer.Ordinal);
        return new FleetTaken(added, changed, same, there.Values.Count(k => k.Records[^1].Kind == Listed && !named.Contains(k.Number)));
    }

    /// <summary>Takes a vehicle off the list; what was listed of it stays recorded.</summary>
    public Reading<Guid> Remove(Guid id, DateOnly day, Recorder by)
    {
        ArgumentNullException.ThrowIfNull(by);
        using var context = _file.Context();
        using var transaction = context.Database.BeginTransaction();
        if (KeptRecords.AllIn(context, Kind).FirstOrDefault(k => k.Id == id) is not { } kept)
        {
            return Reading<Guid>.Failed(new Problem("vehicle", "vehicle-unknown", "There is no such vehicle on the fleet list."));
        }

        if (kept.Records[^1].Kind == Listed)
        {
            Add(context, id, OffTheList, "{}", day, by);
            context.SaveChanges();
            transaction.Commit();
        }

        return Reading<Guid>.Of(id);
    }

    private static void Add(StoreContext context, Guid id, string kind, string body, DateOnly day, Recorder by) => context.KeptRecords.Add(new KeptRecordRow
    {
        Id = Guid.CreateVersion7(by.At),
        KeptId = id,
        Kind = kind,
        On = day,
        Body = body,
        By = by.Name,
        Role = by.Role.Word(),
        At = by.At,
    });

    /// <summary>What two writings of one number share.</summary>
    private static string Key(string unit) => unit.ToUpperInvariant();

    private static string Body(FleetVehicle vehicle)
    {
        var fields = new JsonObject();
        foreach (var (field, typed) in vehicle.Fields)
        {
            fields[field] = typed;
        }

        return new JsonObject { ["unit"] = vehicle.Unit, ["fields"] = fields }.ToJsonString();
    }

    private static ListedVehicle? Of(KeptThing kept) => kept.Records[^1] is { Kind: Listed } last && JsonNode.Parse(last.Body) is JsonObject body
        ? new ListedVehicle(kept.Id, new FleetVehicle(body["unit"]!.GetValue<string>(), [.. body["fields"]!.AsObject().Select(f => (f.Key, f.Value!.GetValue<string>()))]), last.On)
        : null;
}
