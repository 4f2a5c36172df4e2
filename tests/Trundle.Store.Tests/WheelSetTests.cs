using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;

namespace Trundle.Store.Tests;

public sealed class WheelSetTests : IDisposable
{
    private static readonly Recorder By = new("T1", Role.Technician, Workshop.Morning);
    private readonly Workshop _workshop = new();

    public void Dispose() => _workshop.Dispose();

    private WheelSetStore Store => _workshop.Store.Sets;

    private static string Description(string place = "rack B, shelf 3", string tin = "1AB CDEFHJ 2220", string depth = "5.6 mm") => $$"""
        {"place": "{{place}}", "owner": "the desk has the number", "season": "winter", "fields": {
          "rules": "uk", "vehicle.name": "Blue hatchback, DEMO 07", "vehicle.drive": "front", "vehicle.axles.0.steered": "true", "vehicle.axles.0.driven": "true", "vehicle.axles.1.driven": "false",
          "fitted.1L.tyre.marking": "195/65 R15 91T", "fitted.1L.tyre.tin": "{{tin}}", "fitted.1L.tread.centre.0": "{{depth}}", "fitted.1L.pressure.value": "225 kPa",
          "fitted.1R.tyre.marking": "195/65 R15 91T", "fitted.2L.tyre.marking": "195/65 R15 91T", "fitted.2R.tyre.marking": "195/65 R15 91T"}
        }
        """;

    private WheelSet TakeIn(Guid? visit = null, string? description = null) => Store.TakeIn(Guid.NewGuid(), visit, description ?? Description(), Workshop.Day.AddDays(-10), Workshop.Day, By).Value;

    private static NewKeptRecord Record(string kind, string body, int ago = 0) => new(Guid.NewGuid(), kind, Workshop.Day.AddDays(-ago), body);

    [Fact]
    public void A_set_is_kept_as_typed_with_a_number_of_the_year_and_found_again()
    {
        var first = TakeIn();
        var second = TakeIn(description: Description("rack A"));
        (first.Kept.Number, second.Kept.Number).ShouldBe(("S26-1", "S26-2"));
        var set = _workshop.Reopen().Sets.Find(first.Kept.Id).ShouldNotBeNull();
        (set.Vehicle, set.Place, set.InOn, set.OutOn).ShouldBe(("Blue hatchback, DEMO 07", "rack B, shelf 3", Workshop.Day.AddDays(-10), null));
        set.Positions.ShouldBe(["1L", "1R", "2L", "2R"]);
        set.Description.Fields["fitted.1L.tread.centre.0"].ShouldBe("5.6 mm");
        set.Kept.Records.ShouldHaveSingleItem().By.ShouldBe("T1");
        foreach (var words in new[] { "hatchback", "DEMO-07", "shelf 3", "1ABCDEFHJ2220", "s26-1", $"http://192.0.2.7:5151/sets/{first.Kept.Id:D}" })
        {
            set.IsNamed(words).ShouldBeTrue(words);
        }

        set.IsNamed("estate").ShouldBeFalse();
        second.IsNamed("shelf 3").ShouldBeFalse();
    }

    [Fact]
    public void The_file_of_a_day_bears_that_day_and_no_pressure_of_the_day_it_came_in()
    {
        var root = TakeIn().FileOn(new DateOnly(2026, 10, 1)).Root;
        root.Member("date")!.Text.ShouldBe("2026-10-01");
        var wheel = root.Member("fitted")!.Items[0];
        wheel.Member("tread").ShouldNotBeNull();
        wheel.Member("pressure").ShouldBeNull();
    }

    [Fact]
    public void Out_is_recorded_and_nothing_is_deleted()
    {
        var id = TakeIn().Kept.Id;
        Store.Add(id, Record(SetRecords.Moved, """{"place": "rack C"}""", 5), Workshop.Day, By).Value.Place.ShouldBe("rack C");
        Store.Add(id, Record(SetRecords.GivenOut, """{"to": "on the blue hatchback"}"""), Workshop.Day, By).IsRead.ShouldBeTrue();
        var set = _workshop.Reopen().Sets.All().ShouldHaveSingleItem();
        (set.OutOn, set.OutTo, set.Place).ShouldBe((Workshop.Day, "on the blue hatchback", "rack C"));
        set.Kept.Records.Select(r => r.Kind).ShouldBe([SetRecords.TakenIn, SetRecords.Moved, SetRecords.GivenOut]);
        Store.Add(id, Record(SetRecords.GivenOut, """{"to": "again"}"""), Workshop.Day, By).Problem!.Code.ShouldBe("given-out");
        Store.Add(id, Record(SetRecords.Note, """{"text": "the owner thanked us"}"""), Workshop.Day, By).IsRead.ShouldBeTrue();
    }

    [Fact]
    public void A_correction_stands_and_the_earlier_description_stays()
    {
        var id = TakeIn().Kept.Id;
        var record = Record(SetRecords.Corrected, Description(tin: "1AB CDEFHJ 2320"));
        Store.Add(id, record, Workshop.Day, By).IsRead.ShouldBeTrue();
        Store.Add(id, record, Workshop.Day, By).IsRead.ShouldBeTrue();
        var set = Store.Find(id)!;
        set.Description.Fields["fitted.1L.tyre.tin"].ShouldBe("1AB CDEFHJ 2320");
        set.InOn.ShouldBe(Workshop.Day.AddDays(-10));
        set.Kept.Records.Count.ShouldBe(2);
        set.Kept.Records[0].Body.ShouldContain("1AB CDEFHJ 2220");
    }

    [Fact]
    public void Whom_to_call_is_erased_from_every_record_and_from_the_file()
    {
        const string owner = "the desk has the number";
        var id = TakeIn().Kept.Id;
        Store.Add(id, Record(SetRecords.Corrected, Description(tin: "1AB CDEFHJ 2320")), Workshop.Day, By).IsRead.ShouldBeTrue();
        Store.EraseOwner(id, Workshop.Day, By with { Role = Role.Trainee }).Problem!.Code.ShouldBe("may-not-erase");
        Store.EraseOwner(id, Workshop.Day, By).Value.Description.Owner.ShouldBeNull();
        Store.EraseOwner(id, Workshop.Day, By).Problem!.Code.ShouldBe("nothing-to-erase");
        var set = Store.Find(id)!;
        set.Kept.Records.Select(r => r.Kind).ShouldBe([SetRecords.TakenIn, SetRecords.Corrected, SetRecords.OwnerErased]);
        set.Kept.Records.ShouldAllBe(r => !r.Body.Contains(owner, StringComparison.Ordinal));
        set.Description.Fields["fitted.1L.tyre.tin"].ShouldBe("1AB CDEFHJ 2320");
        foreach (var file in Directory.GetFiles(Path.GetDirectoryName(_workshop.Path)!))
        {
            using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var reader = new StreamReader(stream, System.Text.Encoding.Latin1);
            reader.ReadToEnd().ShouldNotContain(owner, Case.Sensitive, file);
        }
    }

    [Theory]
    [InlineData("rack B, shelf 3", "1AB CDEFHJ 5420", "5.6 mm", "fitted.1L.tyre.tin")]
    [InlineData("", "1AB CDEFHJ 2220", "5.6 mm", "place")]
    [InlineData("rack B", "1AB CDEFHJ 2220", "5,600 mm", "fitted.1L.tread.centre.0")]
    public void What_cannot_be_is_refused_at_its_field_and_nothing_is_kept(string place, string tin, string depth, string where)
    {
        Store.TakeIn(Guid.NewGuid(), null, Description(place, tin, depth), Workshop.Day, Workshop.Day, By).Problem.ShouldNotBeNull().Where.ShouldBe(where);
        Store.All().ShouldBeEmpty();
    }

    [Fact]
    public void A_day_to_come_an_unknown_field_and_an_unknown_set_are_refused()
    {
        Store.TakeIn(Guid.NewGuid(), null, Description(), Workshop.Day.AddDays(1), Workshop.Day, By).Problem!.Where.ShouldBe("on");
        Store.TakeIn(Guid.NewGuid(), null, Description().Replace("\"rules\"", "\"work.bay\"", StringComparison.Ordinal), Workshop.Day, Workshop.Day, By).Problem!.Where.ShouldBe("work.bay");
        Store.TakeIn(Guid.NewGuid(), null, """{"place": "rack", "fields": {"vehicle.name": "Red van"}}""", Workshop.Day, Workshop.Day, By).Problem!.Where.ShouldBe("fitted");
        Store.Add(Guid.NewGuid(), Record(SetRecords.Note, """{"text": "x"}"""), Workshop.Day, By).Problem!.Code.ShouldBe("set-unknown");
        var id = TakeIn().Kept.Id;
        Store.Add(id, Record(SetRecords.GivenOut, """{"to": "x"}""", 11), Workshop.Day, By).Problem!.Where.ShouldBe("on");
        Store.Add(id, Record(SetRecords.Moved, """{"plaec": "x"}"""), Workshop.Day, By).Problem!.Where.ShouldBe("place");
        Store.Find(id)!.Kept.Records.ShouldHaveSingleItem();
    }
}
