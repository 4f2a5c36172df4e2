using System.Text;
using Trundle.Visits.Bay;
using Trundle.Visits.Fleet;

namespace Trundle.Store.Tests;

/// <summary>A fleet's list comes in whole or not at all, twice without a change, and says where it is wrong.</summary>
public sealed class FleetTests : IDisposable
{
    private const string List = "unit,vehicle,vin,class,drive,rules,front tyre,front pressure,front fixings,front torque,rear tyre,rear pressure\r\n"
        + "GV-07,\"Grey van, long\",,van,rear,uk,235/65 R16C 115/113R,3.4 bar,5,172 N·m,235/65 R16C 115/113R,4.2 bar\r\n"
        + "GV-08,Grey van,,van,rear,uk,235/65 R16C 115/113R,3.4 bar,5,172 N·m,235/65 R16C 115/113R,4.2 bar\r\n";

    private readonly Workshop _workshop = new();

    public void Dispose() => _workshop.Dispose();

    private static (IReadOnlyList<FleetVehicle> Vehicles, IReadOnlyList<Trundle.Measures.Problem> Problems) Read(string text) => FleetFile.Read(Encoding.UTF8.GetBytes(text));

    private FleetTaken Take(string text)
    {
        var (vehicles, problems) = Read(text);
        problems.ShouldBeEmpty();
        return _workshop.Store.Fleet.Take(vehicles, Workshop.Day, new Recorder("D1", Role.Desk, Workshop.Morning));
    }

    [Fact]
    public void A_list_comes_in_and_the_same_again_changes_nothing()
    {
        Take(List).ShouldBe(new FleetTaken(2, 0, 0, 0));
        Take(List).ShouldBe(new FleetTaken(0, 0, 2, 0));
        Take(List.Replace("172", "180", StringComparison.Ordinal).Split("GV-08")[0].TrimEnd() + "\r\n").ShouldBe(new FleetTaken(0, 1, 0, 1));
        _workshop.Reopen();
        var all = _workshop.Store.Fleet.All();
        all.Select(v => $"{v.Vehicle.Unit} {v.Vehicle.Name}").ShouldBe(["GV-07 Grey van, long", "GV-08 Grey van"]);
        all[0].Vehicle.Fields.ShouldContain(("vehicle.axles.0.fixings.torque", "180 N·m"));
        all[1].Vehicle.Fields.ShouldContain(("vehicle.axles.0.fixings.torque", "172 N·m"));
        all[0].Vehicle.Fields.ShouldContain(("vehicle.axles.0.steered", "true"));
        all[0].Vehicle.Fields.ShouldContain(("vehicle.axles.1.driven", "true"));
        all[0].Vehicle.Fields.ShouldContain(("vehicle.axles.0.driven", "false"));
    }

    [Fact]
    public void A_vehicle_goes_off_the_list_and_a_newer_list_brings_it_back()
    {
        Take(List);
        var first = _workshop.Store.Fleet.All()[0];
        _workshop.Store.Fleet.Remove(first.Id, Workshop.Day, new Recorder("D1", Role.Desk, Workshop.Morning)).IsRead.ShouldBeTrue();
        _workshop.Store.Fleet.All().Select(v => v.Vehicle.Unit).ShouldBe(["GV-08"]);
        _workshop.Store.Fleet.Find(first.Id).ShouldBeNull();
        Take(List).ShouldBe(new FleetTaken(1, 0, 1, 0));
        _workshop.Store.Fleet.All()[0].Id.ShouldBe(first.Id);
        _workshop.Store.Fleet.Remove(Guid.NewGuid(), Workshop.Day, new Recorder("D1", Role.Desk, Workshop.Morning)).IsRead.ShouldBeFalse();
    }

    [Theory]
    [InlineData("unit;front tyre;front pressure\nA1;195/65 R15 91H;2,345 bar\n", "line 2, front pressure", "")]
    [InlineData("unit,front tyre\nA1,195/65 R15 91H\nA2,banana\n", "line 3, front tyre", "")]
    [InlineData("unit,front tyre\nA1,195/65 R15 91H,x\n", "line 2", "cells-count")]
    [InlineData("unit,front tires\nA1,195/65 R15 91H\n", "line 1", "column-unknown")]
    [InlineData("unit,unit\nA1,A1\n", "line 1", "column-twice")]
    [InlineData("vehicle\nA1\n", "line 1", "missing")]
    [InlineData("unit,vehicle\n,Grey van\n", "line 2, unit", "missing")]
    [InlineData("unit,vehicle\na1,Grey van\nA1,Blue van\n", "line 3, unit", "unit-twice")]
    [InlineData("unit,vin\nA1,1234\n", "line 2, vin", "")]
    [InlineData("unit,vehicle.axles.2.placard.size\nA1,195/65 R15 91H\nA2,x\n", "line 3, vehicle.axles.2.placard.size", "")]
    [InlineData("unit,vehicle\n", "line 1", "no-lines")]
    [InlineData("", "line 1", "no-lines")]
    [InlineData("unit,vehicle\nA1,gr\"ey\n", "line 2", "cell-unreadable")]
    [InlineData("unit,work.handBack.by\nA1,O1\n", "line 1", "column-unknown")]
    public void One_wrong_line_and_nothing_comes_in(string text, string where, string code)
    {
        var (vehicles, problems) = Read(text);
        vehicles.ShouldBeEmpty();
        problems.ShouldNotBeEmpty();
        problems[0].Where.ShouldBe(where);
        problems[0].Message.ShouldNotBeNullOrWhiteSpace();
        if (code.Length > 0)
        {
            problems[0].Code.ShouldContain(code);
        }
    }

    [Fact]
    public void Bytes_that_are_no_text_are_refused_and_a_mark_of_order_is_not_a_letter()
    {
        FleetFile.Read(new byte[] { 0xFF, 0xFE, 0x41 }).Problems.ShouldHaveSingleItem().Code.ShouldBe("not-utf-8");
        FleetFile.Read(new byte[] { 0xEF, 0xBB, 0xBF }.Concat(Encoding.UTF8.GetBytes(List)).ToArray()).Problems.ShouldBeEmpty();
    }

    [Fact]
    public void Quotes_hold_commas_quotes_and_lines()
    {
        var (vehicles, problems) = Read("unit,vehicle\n\"A,1\",\"the \"\"old\"\" van\"\n");
        problems.ShouldBeEmpty();
        vehicles.ShouldHaveSingleItem().ShouldSatisfyAllConditions(v => v.Unit.ShouldBe("A,1"), v => v.Name.ShouldBe("the \"old\" van"));
    }

    [Fact]
    public void Thousands_of_lines_spoilt_by_chance_are_read_or_told_and_throw_nothing()
    {
        var random = new Random(31);
        var told = 0;
        for (var i = 0; i < 3000; i++)
        {
            var bytes = Encoding.UTF8.GetBytes(List);
            for (var n = random.Next(1, 4); n > 0; n--)
            {
                bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
            }

            var (vehicles, problems) = FleetFile.Read(bytes);
            (vehicles.Count > 0).ShouldBe(problems.Count == 0);
            told += problems.Count == 0 ? 0 : 1;
        }

        told.ShouldBeInRange(1000, 2999);
    }
}
