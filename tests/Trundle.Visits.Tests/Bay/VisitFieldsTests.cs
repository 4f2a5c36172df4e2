using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Tests.Bay;

public sealed class VisitFieldsTests
{
    private static readonly DateTimeOffset Morning = new(2026, 3, 14, 8, 52, 0, TimeSpan.Zero);

    internal static Entry Entered(string field, string typed, int minute = 0, Role role = Role.Technician, int id = 1) =>
        new(new Guid(id, 0, 0, new byte[8]), field, typed, "T2", role, Morning.AddMinutes(minute));

    [Fact]
    public void The_newest_entry_of_a_field_counts_in_whatever_order_they_come()
    {
        var first = Entered("vehicle.odometer", "48200 km");
        var second = Entered("vehicle.odometer", "48250 km", 5, id: 2);
        VisitFields.Of([first, second])["vehicle.odometer"].ShouldBe("48250 km");
        VisitFields.Of([second, first])["vehicle.odometer"].ShouldBe("48250 km");
        VisitFields.Of([second]).With([first])["vehicle.odometer"].ShouldBe("48250 km");
    }

    [Fact]
    public void Two_entries_of_one_moment_are_ordered_alike_on_every_device()
    {
        var a = Entered("work.bay", "1", 0, id: 1);
        var b = Entered("work.bay", "2", 0, id: 2);
        VisitFields.Of([a, b])["work.bay"].ShouldBe(VisitFields.Of([b, a])["work.bay"]);
    }

    [Fact]
    public void An_emptied_field_is_gone_from_the_file_and_kept_as_an_entry()
    {
        var fields = VisitFields.Of([Entered("vehicle.name", "Blue hatchback"), Entered("vehicle.name", "", 1, id: 2)]);
        fields["vehicle.name"].ShouldBeNull();
        fields.Newest.Count.ShouldBe(1);
        fields.Assemble().Json.ContainsKey("vehicle").ShouldBeFalse();
    }

    [Fact]
    public void Fields_make_the_contracts_file_with_positions_lists_and_flags()
    {
        var json = VisitFields.Of(
        [
            Entered("rules", "uk"),
            Entered("vehicle.axles.0.steered", "true"),
            Entered("vehicle.axles.0.placard.size", "195/65 R15 91H"),
            Entered("vehicle.axles.1.placard.size", "195/65 R15 91H"),
            Entered("fitted.1R.tread.inner.0", "1.9 mm"),
            Entered("fitted.1L.tread.inner.0", "1.4 mm"),
            Entered("fitted.1L.tread.inner.2", "1.6 mm"),
            Entered("work.steps.1L.final-torque.1", "120 N·m"),
        ]).Assemble().Json;
        json["rules"]!.GetValue<string>().ShouldBe("uk");
        json["vehicle"]!["axles"]!.AsArray().Count.ShouldBe(2);
        json["vehicle"]!["axles"]![0]!["steered"]!.GetValue<bool>().ShouldBeTrue();
        json["fitted"]![0]!["position"]!.GetValue<string>().ShouldBe("1L");
        json["fitted"]![0]!["tread"]!["inner"]!.AsArray().Select(n => n!.GetValue<string>()).ShouldBe(["1.4 mm", "1.6 mm"]);
        json["work"]!["steps"]!["1L"]!["final-torque"]!["1"]!.GetValue<string>().ShouldBe("120 N·m");
    }

    [Fact]
    public void A_problem_in_the_file_is_told_at_the_field_of_the_page()
    {
        var assembled = VisitFields.Of([Entered("fitted.1R.tread.inner.0", "1,234 mm"), Entered("fitted.1L.pressure.value", "225 kPa")]).Assemble();
        var problems = new List<Problem>();
        VisitFileReader.Read(assembled.Root, problems);
        problems.Count.ShouldBe(1);
        problems[0].Where.ShouldBe("fitted[1].tread.inner[0]");
        assembled.FieldOf(problems[0].Where).ShouldBe("fitted.1R.tread.inner.0");
    }

    [Fact]
    public void Who_decides_is_who_entered_the_decision_and_nobody_types_it()
    {
        var json = VisitFields.Of([Entered("work.decisions.tread-depth@1L.decision", "renewed", role: Role.Trainee)]).Assemble().Json;
        var decision = json["work"]!["decisions"]!["tread-depth@1L"]!;
        decision["by"]!.GetValue<string>().ShouldBe("T2");
        decision["role"]!.GetValue<string>().ShouldBe("trainee");
    }

    [Fact]
    public void A_typed_name_cannot_stand_for_who_decided()
    {
        var json = VisitFields.Of(
        [
            Entered("work.decisions.leak@1L.decision", "let it go", role: Role.Trainee),
            Entered("work.decisions.leak@1L.role", "owner", role: Role.Trainee, id: 3),
        ]).Assemble().Json;
        json["work"]!["decisions"]!["leak@1L"]!["role"]!.GetValue<string>().ShouldBe("trainee");
    }

    [Theory]
    [InlineData("fitted.1L.tread.inner.0", true)]
    [InlineData("work.decisions.tread-depth@1L.decision", true)]
    [InlineData("fitted..x", false)]
    [InlineData("other.field", false)]
    [InlineData("vehicle.name<script>", false)]
    [InlineData("", false)]
    public void Only_paths_of_a_visit_are_fields(string field, bool isField) => Entry.IsField(field).ShouldBe(isField);
}
