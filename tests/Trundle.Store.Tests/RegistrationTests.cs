using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;

namespace Trundle.Store.Tests;

public sealed class RegistrationTests : IDisposable
{
    private static readonly Recorder Desk = new("D1", Role.Desk, Workshop.Morning);
    private static readonly Recorder Instructor = new("I2", Role.Instructor, Workshop.Morning);
    private readonly Workshop _workshop = new();

    public void Dispose() => _workshop.Dispose();

    internal const string SellerBody = """{"party": {"name": "Invented Tyre Shop", "street": "1 Demo Road", "city": "Demoville", "state": "ZZ", "postcode": "00001", "number": "D-17"}, "kind": "independent"}""";

    internal static string SaleBody(params string[] tins) => $$"""
        {"purchaser": {"name": "Pat Invented", "street": "2 Demo Road", "city": "Demoville", "state": "ZZ", "postcode": "00002", "email": null},
         "seller": {"name": "Invented Tyre Shop", "street": "1 Demo Road", "city": "Demoville", "state": "ZZ", "postcode": "00001", "number": "D-17"},
         "tyres": [{{string.Join(", ", tins.Select(t => $$"""{"tin": "{{t}}", "maker": "invented", "marking": "195/65 R15 91H"}"""))}}]}
        """;

    private RegistrationStore Store => _workshop.Store.Registrations;

    private Registration Sold(params string[] tins)
    {
        Store.Declare(SellerBody, Workshop.Day, Instructor).ShouldBeNull();
        return Store.Record(Guid.NewGuid(), null, SaleBody(tins), Workshop.Day.AddDays(-3), Workshop.Day, Desk).Value;
    }

    [Fact]
    public void Nothing_is_recorded_until_the_workshop_says_that_it_registers_tyres()
    {
        Store.Seller().ShouldBeNull();
        Store.Record(Guid.NewGuid(), null, SaleBody("1AB CDEFHJ 2218"), Workshop.Day, Workshop.Day, Desk).Problem!.Code.ShouldBe("not-subject");
        Store.Declare(SellerBody, Workshop.Day, Desk)!.Code.ShouldBe("may-not-declare");
        Store.Declare(SellerBody, Workshop.Day, Instructor).ShouldBeNull();
        _workshop.Reopen().Registrations.Seller()!.Party.Lines.ShouldBe(["1 Demo Road", "Demoville ZZ 00001"]);
        Store.Declare(null, Workshop.Day, Instructor).ShouldBeNull();
        Store.Seller().ShouldBeNull();
    }

    [Fact]
    public void A_sale_is_kept_with_its_tyres_and_its_state_is_told_by_records()
    {
        var sold = Sold("1AB CDEFHJ 0226", "DOT A1 B2 CDEF 0305");
        (sold.Kept.Number, sold.State, sold.SoldOn).ShouldBe(("R26-1", "neither given nor sent yet", Workshop.Day.AddDays(-3)));
        var sent = Store.Add(sold.Kept.Id, new NewKeptRecord(Guid.NewGuid(), RegistrationRecords.Electronic, Workshop.Day, "{}"), Workshop.Day, Desk).Value;
        (sent.State, sent.Done!.On).ShouldBe((RegistrationRecords.Electronic, Workshop.Day));
        Store.Add(sold.Kept.Id, new NewKeptRecord(Guid.NewGuid(), RegistrationRecords.Given, Workshop.Day.AddDays(-4), "{}"), Workshop.Day, Desk).Problem!.Where.ShouldBe("on");
        Store.Add(sold.Kept.Id, new NewKeptRecord(Guid.NewGuid(), "shredded", Workshop.Day, "{}"), Workshop.Day, Desk).Problem!.Code.ShouldBe("word-unknown");
        var csv = Registration.Csv(Store.All()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        csv.Length.ShouldBe(3);
        csv[1].ShouldContain("\"Pat Invented\"");
        csv[2].ShouldContain("\"DOT A1 B2 CDEF 0305\"");
    }

    [Theory]
    [InlineData("1AB CDEFHJ", "tyres[0].tin", "tin-partial")]
    [InlineData("2218", "tyres[0].tin", "tin-partial")]
    [InlineData("1AB CDEFHJ 5418", "tyres[0].tin", "tin-week")]
    [InlineData("1AB CDEFHJ 4926", "tyres[0].tin", "tin-date-future")]
    public void A_number_that_registers_nothing_is_refused_at_its_tyre(string tin, string where, string code)
    {
        Store.Declare(SellerBody, Workshop.Day, Instructor).ShouldBeNull();
        var problem = Store.Record(Guid.NewGuid(), null, SaleBody(tin), Workshop.Day, Workshop.Day, Desk).Problem.ShouldNotBeNull();
        (problem.Where, problem.Code).ShouldBe((where, code));
        Store.All().ShouldBeEmpty();
    }

    [Fact]
    public void A_purchaser_is_taken_out_of_every_record_once_the_form_was_given_or_sent()
    {
        var id = Sold("1AB CDEFHJ 0226").Kept.Id;
        Store.Add(id, new NewKeptRecord(Guid.NewGuid(), RegistrationRecords.Corrected, Workshop.Day.AddDays(-3), SaleBody("1AB CDEFHJ 0326")), Workshop.Day, Desk).IsRead.ShouldBeTrue();
        Store.RemovePurchaser(id, Workshop.Day, Instructor).Problem!.Code.ShouldBe("not-registered");
        Store.Add(id, new NewKeptRecord(Guid.NewGuid(), RegistrationRecords.Given, Workshop.Day, "{}"), Workshop.Day, Desk).IsRead.ShouldBeTrue();
        Store.RemovePurchaser(id, Workshop.Day, Desk).Problem!.Code.ShouldBe("may-not-remove");
        var bare = Store.RemovePurchaser(id, Workshop.Day, Instructor).Value;
        bare.Sale.Purchaser.ShouldBeNull();
        bare.Kept.Records.ShouldAllBe(r => !r.Body.Contains("Pat", StringComparison.Ordinal) && !r.Body.Contains("2 Demo Road", StringComparison.Ordinal));
        bare.Sale.Tyres.ShouldHaveSingleItem().Tin.ShouldBe("1AB CDEFHJ 0326");
        bare.Kept.Records[^1].Kind.ShouldBe(RegistrationRecords.PurchaserRemoved);
        Store.Add(id, new NewKeptRecord(Guid.NewGuid(), RegistrationRecords.Corrected, Workshop.Day, SaleBody("1AB CDEFHJ 0226")), Workshop.Day, Desk).Problem!.Code.ShouldBe("purchaser-removed");
        _workshop.Store.Tyres.All().Tyres.Count.ShouldBe(2);
    }
}
