using System.Text.Json.Nodes;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;

namespace Trundle.Web.Demo;

/// <summary>The invented workshop's rack: winter wheels that wait, a set that was given out; and tyres that were sold.</summary>
internal static class DemoKeeping
{
    public static void Add(WorkshopStore store, DateTimeOffset now)
    {
        var today = DateOnly.FromDateTime(now.DateTime);
        Take(store, now, today.AddDays(-190), "rack B, shelf 3", "winter", "Green estate, DEMO 12", "195/65 R15 91T", "4421", ("1L", "5.1 mm"), ("1R", "5.0 mm"), ("2L", "6.4 mm"), ("2R", "6.3 mm"));
        var given = Take(store, now, today.AddDays(-200), "rack A, shelf 1", "winter", "Red coupé, DEMO 44", "195/65 R15 91T", "4018", ("1L", "2.9 mm"), ("1R", "3.0 mm"), ("2L", "4.6 mm"), ("2R", "4.5 mm"));
        store.Sets.Add(given, new NewKeptRecord(Guid.CreateVersion7(now), SetRecords.GivenOut, today.AddDays(-12), KeptText.Body("to", "on the red coupé")), today, By(now));

        var seller = new Party("Invented Tyre Shop", "1 Demo Road", "Demoville", "ZZ", "00001", "D-17");
        var owner = new Recorder("T5", Role.Owner, now);
        store.Registrations.Declare(new Seller(seller, Seller.Kinds[0]).Body(), today.AddDays(-40), owner);
        var sale = new Sale(new Party("Pat Invented", "2 Demo Road", "Demoville", "ZZ", "00002", null), seller, [new SoldTyre("1AB CDEFHJ 0226", "invented", "195/65 R15 91H"), new SoldTyre("1AB CDEFHJ 0226", "invented", "195/65 R15 91H")]);
        _ = store.Registrations.Record(Guid.CreateVersion7(now), null, sale.Body(), today.AddDays(-1), today, owner).Value;
    }

    private static Guid Take(WorkshopStore store, DateTimeOffset now, DateOnly on, string place, string season, string vehicle, string marking, string weekAndYear, params (string Position, string Depth)[] wheels)
    {
        var fields = new JsonObject
        {
            ["rules"] = "uk", ["vehicle.name"] = vehicle, ["vehicle.drive"] = "front",
            ["vehicle.axles.0.steered"] = "true", ["vehicle.axles.0.driven"] = "true", ["vehicle.axles.1.steered"] = "false", ["vehicle.axles.1.driven"] = "false",
        };
        foreach (var (position, depth) in wheels)
        {
            var at = $"fitted.{position}";
            (fields[$"{at}.tyre.marking"], fields[$"{at}.tyre.tin"], fields[$"{at}.wheel.rim"]) = (marking, $"1AB CDEFHJ {weekAndYear}", "6J x 15");
            foreach (var zone in (string[])["inner", "centre", "outer"])
            {
                fields[$"{at}.tread.{zone}.0"] = depth;
            }
        }

        var body = new JsonObject { ["place"] = place, ["season"] = season, ["fields"] = fields }.ToJsonString();
        var set = store.Sets.TakeIn(Guid.CreateVersion7(now), null, body, on, DateOnly.FromDateTime(now.DateTime), By(now));
        return set.IsRead ? set.Value.Kept.Id : throw new InvalidOperationException($"The invented workshop keeps what may not stand: {set.Problem!.Where}: {set.Problem.Message}");
    }

    private static Recorder By(DateTimeOffset now) => new("T2", Role.Technician, now);
}
