using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Tests.Bay;

/// <summary>What choosing a size enters in a visit.</summary>
public sealed class StandInChoiceTests
{
    private static readonly string[] Front = ["1L", "1R"];

    private static VisitFields Sample(params (string Field, string Typed)[] over)
    {
        (string, string)[] vehicle =
        [
            ("rules", "uk"), ("date", "2026-03-14"), .. Enumerable.Range(0, 2).Select(i => ($"vehicle.axles.{i}.placard.size", "195/65 R15 91H")),
            .. new[] { "1L", "1R", "2L", "2R" }.SelectMany(at => new[] { ($"fitted.{at}.tyre.marking", "195/65 R15 91H"), ($"fitted.{at}.wheel.rim", "6J x 15") }),
            ("replace.axles.0", "1"), ("replace.candidates.0", "205/60 R15 91V"), ("replace.candidates.1.marking", "205/55 R16 91V"), ("replace.candidates.1.marks.0", "M+S"), ("replace.candidates.1.rim", "6.5J x 16"),
        ];
        return VisitFields.Of(vehicle.Concat(over).Select((f, i) => Entry(i, f.Item1, f.Item2)));
    }

    private static Entry Entry(int at, string field, string typed) => new(new Guid(at, 0, 0, new byte[8]), field, typed, "T1", Role.Technician, DateTimeOffset.UnixEpoch.AddSeconds(at));

    private static VisitFields Choose(VisitFields fields, int? candidate)
    {
        var root = fields.Assemble().Root;
        var problems = new List<Problem>();
        var arrived = VisitFileReader.Read(root, problems).Subject;
        var request = ReplacementFileReader.Read(root, arrived.Vehicle, problems)!;
        problems.ShouldBeEmpty();
        var entries = StandInChoice.Entries(fields, arrived, request, candidate is { } i ? request.Candidates[i] : null);
        entries.Select(e => e.Field).Distinct().Count().ShouldBe(entries.Count);
        var later = (int)(fields.Newest.Max(e => e.At) - DateTimeOffset.UnixEpoch).TotalSeconds + 1;
        return VisitFields.Of(fields.Newest.Concat(entries.Select((e, n) => Entry(later + n, e.Field, e.Typed))));
    }

    [Fact]
    public void Every_wheel_that_was_asked_for_gets_a_new_tyre_of_the_size_and_is_demounted()
    {
        var chosen = Choose(Sample(("vehicle.topSpeed", "240 km/h")), 1);
        chosen["replace.chosen"].ShouldBe("205/55 R16 91V");
        foreach (var at in Front)
        {
            chosen[$"work.jobs.{at}"].ShouldBe("demount");
            chosen[$"work.renewed.{at}.tyre.marking"].ShouldBe("205/55 R16 91V");
            chosen[$"work.renewed.{at}.tyre.marks.0"].ShouldBe("M+S");
            chosen[$"work.renewed.{at}.wheel.rim"].ShouldBe("6.5J × 16");
            chosen[$"work.renewed.{at}.valve.kind"].ShouldBe("clamp-in", "faster than 210 km/h: renewed-with-tyre.csv, metal-valve");
        }

        chosen.Under("work.renewed.2L").ShouldBeEmpty("the rear axle was not asked for");
        var problems = new List<Problem>();
        var state = VisitStanding.Of(chosen.Assemble().Root, problems);
        problems.ShouldBeEmpty();
        state.Work.Renewed.Count.ShouldBe(2);
        state.Work.RenewedWheels.Values.ShouldAllBe(w => w.Rim!.DiameterInches == 16);
    }

    [Fact]
    public void Another_choice_and_taking_it_back_leave_nothing_of_the_first()
    {
        var first = Choose(Sample(), 1);
        var second = Choose(first, 0);
        second["replace.chosen"].ShouldBe("205/60 R15 91V");
        second["work.renewed.1L.tyre.marking"].ShouldBe("205/60 R15 91V");
        second["work.renewed.1L.tyre.marks.0"].ShouldBeNull();
        second["work.renewed.1L.wheel.rim"].ShouldBeNull("it goes on the wheel that came");
        Choose(second, null).Under("work.renewed").ShouldBeEmpty();
    }

    [Fact]
    public void A_tyre_of_the_size_that_is_entered_already_keeps_its_tin_and_one_of_another_size_does_not()
    {
        var of = Sample(("work.renewed.1L.tyre.marking", "205/55R16 91V"), ("work.renewed.1L.tyre.tin", "1AB CDEFHJ 4725"), ("work.renewed.1R.tyre.marking", "195/65 R15 91H"), ("work.renewed.1R.tyre.tin", "1AB CDEFHJ 4725"), ("work.renewed.1R.tread.inner.0", "8 mm"));
        var chosen = Choose(of, 1);
        chosen["work.renewed.1L.tyre.tin"].ShouldBe("1AB CDEFHJ 4725");
        chosen["work.renewed.1R.tyre.marking"].ShouldBe("205/55 R16 91V");
        chosen["work.renewed.1R.tyre.tin"].ShouldBeNull();
        chosen.Under("work.renewed.1R.tread").ShouldBeEmpty();
    }

    [Fact]
    public void The_old_kind_of_valve_is_proposed_and_none_where_nobody_looked_or_a_sensor_is_the_valve()
    {
        Choose(Sample(), 0)["work.renewed.1L.valve.kind"].ShouldBeNull();
        var told = Choose(Sample(("fitted.1L.valve.kind", "high-pressure-snap-in"), ("fitted.1R.valve.kind", "rubber-snap-in"), ("fitted.1R.sensor", "working")), 0);
        told["work.renewed.1L.valve.kind"].ShouldBe("high-pressure-snap-in");
        told["work.renewed.1R.valve.kind"].ShouldBeNull();
    }
}
