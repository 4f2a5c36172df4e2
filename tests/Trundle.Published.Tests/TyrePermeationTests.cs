using Trundle.Engine.Findings;
using Trundle.Engine.Pressure;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// What a sound car tyre loses in a month: "Pressure Loss Mechanisms in Pneumatic Tires", Tire Science and Technology 13 (1985), p. 16 (abstract read):
/// 0.5 to 1.0 psi (3.4 to 6.9 kPa) at 70 °F (21 °C), about 1.5 psi (10.3 kPa) at 90 °F (32 °C). A tyre maker's consumer guide (read): about 1 psi a month;
/// over 2 psi a month, look for a leak. Pressures are made from these losses and read with a fine gauge over a year.
/// </summary>
public sealed class TyrePermeationTests
{
    private static LeakVerdict Year(double psiAMonth, double fahrenheit)
    {
        var accuracy = new ReadingAccuracy(GaugePressure.FromPoundsPerSquareInch(0.5), Source.CommonPractice, GaugePressure.FromPoundsPerSquareInch(0.1), TemperatureDifference.FromKelvins(1), Source.CommonPractice);
        var readings = Enumerable.Range(0, 25).Select(i => new DatedPressure(
            new DateTime(2025, 1, 1, 8, 0, 0, DateTimeKind.Unspecified).AddDays(i * 30.4375 / 2),
            GaugePressure.FromPoundsPerSquareInch(45 - (psiAMonth * i / 2)),
            Temperature.FromDegreesFahrenheit(fahrenheit),
            AirLaw.SeaLevel,
            true,
            false)).ToList();
        return LeakVerdict.Of(PressureLoss.Of(readings, accuracy, Temperature.FromDegreesFahrenheit(fahrenheit)).Value, null);
    }

    [Theory]
    [InlineData(0.5, 70, LeakCase.Sound)]
    [InlineData(1.0, 70, LeakCase.Sound)]
    [InlineData(1.5, 70, LeakCase.MoreThanSound)]
    [InlineData(1.5, 90, LeakCase.Sound)]
    [InlineData(2.2, 70, LeakCase.Leak)]
    [InlineData(2.2, 90, LeakCase.Leak)]
    public void Each_published_loss_is_judged_as_published(double psiAMonth, double fahrenheit, LeakCase expected) =>
        Year(psiAMonth, fahrenheit).Case.ShouldBe(expected);

    [Theory]
    [InlineData(50, 6.9)]
    [InlineData(70, 6.9)]
    [InlineData(80, 8.6)]
    [InlineData(90, 10.3)]
    [InlineData(110, 10.3)]
    public void The_limit_of_a_sound_tyre_goes_from_the_cool_to_the_warm_value(double fahrenheit, double kilopascals) =>
        Year(1, fahrenheit).Sound.Amount.Value!.Value.ShouldBe(kilopascals, 0.05);

    [Theory]
    [InlineData(1.0, 70, 6.9)]
    [InlineData(1.5, 90, 10.3)]
    public void Both_units_of_the_source_are_one_loss(double psi, double fahrenheit, double kilopascals)
    {
        var limit = Year(psi, fahrenheit).Sound;
        limit.Amount.Value!.Value.ShouldBe(kilopascals);
        GaugePressure.FromPoundsPerSquareInch(psi).Kilopascals.ShouldBe(limit.Amount.Value.Value, 0.05);
    }
}
