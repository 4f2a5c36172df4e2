using Trundle.Measures;
using Trundle.Visits.Paper;

namespace Trundle.Store.Tests;

/// <summary>Stock: counted on the shelf, received, and used on visits exactly once.</summary>
public sealed class StockTests : IDisposable
{
    private readonly Workshop _workshop = new();

    public void Dispose() => _workshop.Dispose();

    private Guid Item(StockKind kind, string? name, double? grams, int onHand, int? level, double minute = -60)
    {
        var id = Guid.NewGuid();
        _workshop.Store.Stock.Add(id, new NewStockItem(kind, name, grams is { } g ? Mass.FromGrams(g) : null, "piece", onHand, level), "D1", Workshop.Morning.AddMinutes(minute)).IsRead.ShouldBeTrue();
        return id;
    }

    private StockItem Now(Guid id) => _workshop.Store.Stock.All().Single(i => i.Id == id);

    private static Visits.Bay.Entry[] Uses(int place, string kind, string? item, string? mass, string? count, double minute) =>
        [.. new (string Key, string? Typed)[] { ("kind", kind), ("item", item), ("mass", mass), ("count", count) }.Where(f => f.Typed is not null).Select(f => Workshop.Typed($"work.stock.{place}.{f.Key}", f.Typed!, minute))];

    [Fact]
    public void What_a_visit_used_is_counted_down_once_however_often_it_is_sent()
    {
        var (valves, clips) = (Item(StockKind.Valve, "snap-in, short", null, 40, 10), Item(StockKind.Clip, null, 15, 100, 20));
        var visit = _workshop.OpenVisit();
        Visits.Bay.Entry[] entries = [.. Uses(0, "valve", "Snap-in, short", null, "4", 5), .. Uses(1, "clip", null, "15 g", "3", 6)];
        _workshop.Append(visit, entries).Taken.Count.ShouldBe(6);
        _workshop.Append(visit, entries).Already.Count.ShouldBe(6);
        _workshop.Append(visit, Workshop.Typed("work.watch", "nothing", 30));
        (Now(valves).OnHand, Now(clips).OnHand).ShouldBe((36, 97));
        _workshop.Reopen();
        (Now(valves).OnHand, Now(clips).OnHand).ShouldBe((36, 97));
    }

    [Fact]
    public void A_correction_counts_as_corrected_and_one_taken_away_not_at_all()
    {
        var valves = Item(StockKind.Valve, "snap-in, short", null, 40, null);
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, Uses(0, "valve", "snap-in, short", null, "4", 5));
        _workshop.Append(visit, Workshop.Typed("work.stock.0.count", "3", 9));
        Now(valves).OnHand.ShouldBe(37);
        _workshop.Append(visit, Workshop.Typed("work.stock.0.kind", "", 10), Workshop.Typed("work.stock.0.item", "", 10), Workshop.Typed("work.stock.0.count", "", 10));
        Now(valves).OnHand.ShouldBe(40);
    }

    [Fact]
    public void Two_visits_count_each_and_what_is_half_entered_or_not_on_the_list_counts_nothing()
    {
        var cores = Item(StockKind.Core, "short core", null, 10, 8);
        foreach (var minute in new[] { 1, 2 })
        {
            _workshop.Append(_workshop.OpenVisit(), [.. Uses(0, "core", "short core", null, null, minute), .. Uses(1, "valve", "of another shelf", null, "2", minute), .. Uses(2, "clip", null, null, "2", minute)]);
        }

        Now(cores).ShouldSatisfyAllConditions(c => c.OnHand.ShouldBe(8), c => c.Low.ShouldBeTrue());
    }

    [Fact]
    public void A_count_on_the_shelf_holds_all_that_came_and_went_before_it()
    {
        var patches = Item(StockKind.Patch, "round 40", null, 20, 5);
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, Uses(0, "patch", "round 40", null, "2", 1));
        Guid count = Guid.NewGuid(), came = Guid.NewGuid();
        for (var i = 0; i < 2; i++)
        {
            _workshop.Store.Stock.Count(count, patches, 17, "D1", Workshop.Morning.AddMinutes(30)).IsRead.ShouldBeTrue();
            _workshop.Store.Stock.Receive(came, patches, 10, "D1", Workshop.Morning.AddMinutes(30)).IsRead.ShouldBeTrue();
        }

        Now(patches).OnHand.ShouldBe(27);
        _workshop.Append(visit, Uses(1, "patch", "round 40", null, "1", 40));
        Now(patches).OnHand.ShouldBe(26);
    }

    [Fact]
    public void One_thing_stands_on_the_list_once_and_what_is_wrong_is_said_with_its_place()
    {
        Item(StockKind.Adhesive, "strip", 5, 200, 50);
        var stock = _workshop.Store.Stock;
        Reading<Guid> Add(NewStockItem item) => stock.Add(Guid.NewGuid(), item, "D1", Workshop.Morning);
        Add(new NewStockItem(StockKind.Adhesive, "another name", Mass.FromGrams(5), "piece", 1, null)).Problem!.Code.ShouldBe("name-taken");
        Add(new NewStockItem(StockKind.Adhesive, "strip", null, "piece", 1, null)).Problem!.Where.ShouldBe("mass");
        Add(new NewStockItem(StockKind.Valve, " ", null, "piece", 1, null)).Problem!.Where.ShouldBe("name");
        Add(new NewStockItem(StockKind.Valve, "v", null, "piece", -1, null)).Problem!.Where.ShouldBe("onHand");
        stock.SetLevel(Guid.NewGuid(), 3).Problem!.Code.ShouldBe("item-unknown");
        stock.Receive(Guid.NewGuid(), stock.All()[0].Id, 0, "D1", Workshop.Morning).Problem!.Code.ShouldBe("out-of-range");
    }

    [Fact]
    public void What_has_left_the_list_is_no_longer_there_and_its_name_may_stand_again()
    {
        var id = Item(StockKind.Tyre, "195/65 R15 91H", null, 4, 2);
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, Uses(0, "tyre", "195/65 R15 91H", null, "2", 5));
        Now(id).Low.ShouldBeTrue();
        _workshop.Store.Stock.Remove(id).IsRead.ShouldBeTrue();
        _workshop.Store.Stock.All().ShouldBeEmpty();
        var anew = Item(StockKind.Tyre, "195/65 R15 91H", null, 8, 2, 60);
        _workshop.Append(visit, Workshop.Typed("work.watch", "nothing", 90));
        Now(anew).OnHand.ShouldBe(8, "what was used before it was counted is in the count");
    }

    [Fact]
    public void Scrap_is_told_month_by_month()
    {
        foreach (var (day, tin, lead) in new[] { ("2026-02-27", "1AB CDEFHJ 2217", "40 g"), ("2026-03-02", "1AB CDEFHJ 0119", "1.5 oz"), ("2026-03-14", "", "85 g") })
        {
            var visit = _workshop.OpenVisit();
            _workshop.Append(visit, [Workshop.Typed("date", day), Workshop.Typed("work.scrap.leadWeights", lead), Workshop.Typed("work.scrap.note", "WN 7"), .. tin.Length == 0 ? [] : new[] { Workshop.Typed("work.scrap.tyres.0.tin", tin), Workshop.Typed("work.scrap.tyres.1.words", "no TIN to be read") }]);
        }

        _workshop.Append(_workshop.OpenVisit(), Workshop.Typed("work.scrap.note", "WN 8"), Workshop.Typed("work.scrap.note", "", 1));
        var months = _workshop.Store.Scrap.Months();
        months.Select(m => (m.Month.Month, m.Tyres, m.Lines.Count)).ShouldBe([(3, 2, 2), (2, 2, 1)]);
        months[0].LeadWeights.Grams.ShouldBe(85 + (1.5 * 28.349523125), 1e-9);
    }

    [Fact]
    public void A_contact_that_is_erased_stands_nowhere_in_the_file_any_more()
    {
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, Workshop.Typed("work.contact", "ask for the driver 0000 070 031", 1), Workshop.Typed("work.contact", "second number 0000 070 032", 2), Workshop.Typed("vehicle.name", "Plum saloon, DEMO 31", 3));
        _workshop.Store.Visits.EraseContact(visit, "T4", Visits.Bay.Role.Trainee, Workshop.Morning).Problem!.Code.ShouldBe("may-not-erase");
        _workshop.Store.Visits.EraseContact(visit, "D1", Visits.Bay.Role.Desk, Workshop.Morning.AddHours(5)).Value.ShouldBe(2);

        var stored = _workshop.Store.Visits.Find(visit)!;
        stored.Fields["work.contact"].ShouldBeNull();
        stored.Fields["vehicle.name"].ShouldBe("Plum saloon, DEMO 31");
        stored.Entries.Where(e => e.Entry.Field == "work.contact").ShouldAllBe(e => e.Outcome == "erased" && e.Entry.Typed.Length == 0);
        stored.Entries[^1].Entry.By.ShouldBe("D1");
        _workshop.Store.Visits.EraseContact(visit, "D1", Visits.Bay.Role.Desk, Workshop.Morning).Problem!.Code.ShouldBe("nothing-to-erase");

        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        var files = Directory.GetFiles(Path.GetDirectoryName(_workshop.Path)!).Select(f => System.Text.Encoding.Latin1.GetString(File.ReadAllBytes(f))).ToList();
        files.ShouldContain(f => f.Contains("Plum saloon", StringComparison.Ordinal));
        files.ShouldAllBe(f => !f.Contains("0000 070 03", StringComparison.Ordinal));
    }
}
