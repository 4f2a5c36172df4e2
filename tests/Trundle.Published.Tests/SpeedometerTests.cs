using Trundle.Engine.Findings;
using Trundle.Engine.Pressure;
using Trundle.Engine.Replacement;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// UN R39 paragraph 5.3, quoted (second-hand): 0 ≤ V1 − V2 ≤ 0.1 V2 + 4 km/h, V1 shown and V2 true; the rows of true speed and the most that may be shown
/// are a press report's. The effect of another tyre: an encyclopedia's worked example (second-hand), 185/70 R14 replaced by 195/50 R15 shows 1.067 times the true
/// speed. It takes the marked numbers for the diameter, as the regulation's rule does; the regulation's own table lists the older 70-series size 8 mm larger
/// (624 mm, from memory), and that counts before the rule, so the engine answers 1.081.
/// </summary>
public sealed class SpeedometerTests
{
    private static readonly Axle Axle = new() { Driven = true, Placard = new Placard(MarkingReader.Read("185/70 R14 88T").Value, GaugePressure.FromKilopascals(210), null) };

    private static StandIn Judged(string marking, double shown, double real)
    {
        var candidate = new ReplacementCandidate(MarkingReader.Read(marking).Value, [], null, false);
        var speedometer = new SpeedometerReading(Speed.FromKilometresPerHour(shown), Speed.FromKilometresPerHour(real));
        var subject = new FittedVehicle(new Vehicle { Drive = Drive.Front, Axles = [Axle, Axle] }, [], null, null);
        return StandIn.Judge(subject, candidate, new ReplacementRequest([candidate], [1, 2], null, speedometer), new PressureConditions(null, null, null, null, false, null));
    }

    [Theory]
    [InlineData(50, 59)]
    [InlineData(70, 81)]
    [InlineData(90, 103)]
    [InlineData(110, 125)]
    [InlineData(130, 147)]
    public void A_speedometer_shows_from_the_true_speed_to_a_tenth_and_four_more(double real, double most)
    {
        Category At(double shown) => Judged("185/70 R14 88T", shown, real).Findings.Single(f => f.Rule == "replacement.speedometer").Category;
        At(real).ShouldBe(Category.None);
        At(most).ShouldBe(Category.None);
        At(real - 0.1).ShouldBe(Category.Major);
        At(most + 0.1).ShouldBe(Category.Major);
    }

    [Fact]
    public void A_smaller_tyre_shows_too_much_as_in_the_worked_example()
    {
        var effect = Judged("195/50 R15 82V", 100, 100).Speedometer!;
        Length ByNumbers(string size) => Dimensions.ByRule(MarkingReader.Read(size).Value.Size, null).OverallDiameter!.Value;
        (ByNumbers("185/70 R14") / ByNumbers("195/50 R15")).ShouldBe(1.067, 0.001);
        (1 / effect.Ratio).ShouldBe(624 / 577d, 1e-12);
        effect.True.KilometresPerHour.ShouldBe(100 * 577 / 624d, 1e-9);
    }

    [Theory]
    [InlineData("LT235/85R16", 6.0, 7.5, 6.5)]
    [InlineData("LT245/75R16", 6.5, 8.0, 7.0)]
    [InlineData("LT265/75R16", 7.0, 8.0, 7.5)]
    [InlineData("LT285/75R16", 7.5, 9.0, 8.0)]
    [InlineData("LT305/70R16", 8.0, 9.5, 9.0)]
    [InlineData("LT315/75R16", 8.0, 10.0, 8.5)]
    [InlineData("LT255/75R17", 6.5, 8.5, 7.0)]
    public void Each_rim_row_of_the_tyre_makers_size_sheets_is_answered(string size, double least, double most, double measuring)
    {
        var rims = Judged(size, 100, 100).Rims!;
        rims.Least.Inches.ShouldBe(least, 1e-9);
        rims.Most.Inches.ShouldBe(most, 1e-9);
        rims.Measuring.Inches.ShouldBe(measuring, 1e-9);
        rims.Source.Status.ShouldBe(SourceStatus.Read);
    }
}
