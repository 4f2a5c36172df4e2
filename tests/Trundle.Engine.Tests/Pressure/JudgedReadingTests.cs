using Trundle.Engine.Findings;
using Trundle.Engine.Pressure;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using static Trundle.Engine.Tests.Rotation.Invented;

namespace Trundle.Engine.Tests.Pressure;

public class JudgedReadingTests
{
    private static JudgedReading Judge(double found, bool hot, double? tyreC = null, double? airC = null, double cold = 230) => JudgedReading.Of(
        new PressureReading(Kilopascals(found), C(tyreC), hot), new SourcedPressure(Kilopascals(cold), Source.CommonPractice), C(airC));

    private static Temperature? C(double? degrees) => degrees is { } d ? Temperature.FromDegreesCelsius(d) : null;

    [Theory]
    [InlineData(230, false, ReadingVerdict.OnTarget)]
    [InlineData(229.2, false, ReadingVerdict.OnTarget)]
    [InlineData(215, false, ReadingVerdict.Low)]
    [InlineData(184, false, ReadingVerdict.RunLow)]
    [InlineData(185, false, ReadingVerdict.Low)]
    [InlineData(260, false, ReadingVerdict.High)]
    [InlineData(260, true, ReadingVerdict.HotLeave)]
    [InlineData(225, true, ReadingVerdict.HotLow)]
    [InlineData(180, true, ReadingVerdict.RunLow)]
    public void Each_reading_is_judged_as_what_it_is(double found, bool hot, ReadingVerdict verdict) => Judge(found, hot).Verdict.ShouldBe(verdict);

    /// <summary>What a sound tyre loses in a month was published for car tyres; at a truck's pressures only the gauge's error stands.</summary>
    [Theory]
    [InlineData(230, 220, "a sound car tyre loses about 7 kPa a month (tyre maker's consumer guide)", false)]
    [InlineData(230, 224, "a sound car tyre loses, 7 kPa a month", true)]
    [InlineData(350, 340, "a sound car tyre loses about 7 kPa", false)]
    [InlineData(800, 750, "find out where the air went.", false)]
    [InlineData(800, 785, "than a gauge may err, 16 kPa", true)]
    [InlineData(1100, 1080, "than a gauge may err, 25 kPa", true)]
    public void A_car_tyres_monthly_loss_is_no_measure_at_a_trucks_pressure(double cold, double found, string words, bool within)
    {
        var judged = Judge(found, false, cold: cold);
        judged.Advice.ShouldContain(words);
        judged.WithinMonthsLoss.ShouldBe(within);
        judged.Advice.Contains("a month", StringComparison.Ordinal).ShouldBe(cold <= 350);
    }

    [Fact]
    public void A_hot_tyre_is_never_bled()
    {
        foreach (var found in new[] { 200.0, 225, 240, 260, 320 })
        {
            Judge(found, true).Advice.ShouldNotContain("Let air out");
        }

        Judge(260, true).Advice.ShouldContain("never bleed");
    }

    [Fact]
    public void Hot_and_low_of_unknown_temperature_takes_no_air_before_it_was_read_cold()
    {
        Judge(225, true).Advice.ShouldContain("put no air in");
        Judge(225, true).Advice.ShouldNotContain("Bring it to");
        Judge(250, true, 50, 15).Advice.ShouldContain("Bring it to");
        var car = Car(Drive.Front);
        car = car with { Vehicle = car.Vehicle with { Axles = [.. car.Vehicle.Axles.Select(a => a with { Placard = new Placard(null, Kilopascals(230), null) })] } };
        var plan = PressurePlan.For(car.With("1L", a => a with { Pressure = new PressureReading(Kilopascals(215), null, true) }), new PressureConditions(null, null, null, null, false, null));
        plan.Findings.Single(f => f.Position == "1L" && f.Rule == "pressure.low").Category.ShouldBe(Category.Refer);
    }

    [Fact]
    public void A_hot_reading_counts_back_to_cold_only_where_the_tyres_temperature_is_known_and_above_the_airs()
    {
        // (250 + 101.325) 288.15/323.15 - 101.325 = 211.9
        var judged = Judge(250, true, 50, 15);
        judged.ColdEquivalent!.Value.Kilopascals.ShouldBe(211.95, 0.01);
        judged.Verdict.ShouldBe(ReadingVerdict.HotLow);
        Judge(250, true, 50).ColdEquivalent.ShouldBeNull();
        Judge(250, true, null, 15).ColdEquivalent.ShouldBeNull();
        Judge(250, true, 15, 15).ColdEquivalent.ShouldBeNull();
        Judge(250, false, 50, 15).ColdEquivalent.ShouldBeNull();
        Judge(235, true, 80, 10).Verdict.ShouldBe(ReadingVerdict.RunLow);
    }

    [Fact]
    public void Right_for_the_load_so_far_is_not_run_low_for_the_load_to_come()
    {
        JudgedReading Of(double found) => JudgedReading.Of(new PressureReading(Kilopascals(found), null, false), new SourcedPressure(Kilopascals(430), Source.CommonPractice), null, Kilopascals(340));
        Of(335).Verdict.ShouldBe(ReadingVerdict.Low);
        Of(272).Verdict.ShouldBe(ReadingVerdict.RunLow);
    }

    [Fact]
    public void Findings_stop_hand_back_where_a_person_must_look_inside()
    {
        var car = Car(Drive.Front);
        car = car with { Vehicle = car.Vehicle with { Axles = [.. car.Vehicle.Axles.Select(a => a with { Placard = new Placard(null, Kilopascals(230), null) })] } };
        var vehicle = car
            .With("1L", a => a with { Pressure = new PressureReading(Kilopascals(150), null, false) })
            .With("1R", a => a with { Pressure = new PressureReading(Kilopascals(220), null, false) })
            .With("2L", a => a with { Tyre = a.Tyre! with { MaximumPressure = Kilopascals(300) }, Pressure = new PressureReading(Kilopascals(310), null, false) });
        var plan = PressurePlan.For(vehicle, new PressureConditions(null, null, null, null, false, null));
        plan.Findings.Single(f => f.Position == "1L" && f.Rule == "pressure.warning").Category.ShouldBe(Category.Major);
        plan.Findings.Single(f => f.Position == "1R").Category.ShouldBe(Category.Minor);
        plan.Findings.ShouldContain(f => f.Position == "2L" && f.Rule == "pressure.above-maximum" && f.Category == Category.Major);
    }
}
