using Trundle.Engine.Findings;
using Trundle.Engine.Pressure;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// Temperature and height: computed check values of the ideal gas law at constant volume with the air of ISO 2533 (calculated), beside a tyre
/// maker's rule of 1 psi per 10 °F (read). FMVSS 138 S4.2 (read). Run low at 80 %: OSHA, TMC and USTMA (second-hand).
/// </summary>
public class PressureFigureTests
{
    [Theory]
    [InlineData(220, 0, 198.1)]
    [InlineData(220, -20, 176.2)]
    [InlineData(220, 35, 236.4)]
    [InlineData(240, 0, 216.7)]
    [InlineData(760, 0, 701.2)]
    public void Set_at_twenty_degrees(double kilopascals, double celsius, double expected) =>
        AirLaw.After(GaugePressure.FromKilopascals(kilopascals), Temperature.FromDegreesCelsius(20), Temperature.FromDegreesCelsius(celsius), AirLaw.SeaLevel, AirLaw.SeaLevel)
            .Kilopascals.ShouldBe(expected, 0.05);

    [Theory]
    [InlineData(35, 58, 34.06)]
    [InlineData(35, 32, 31.61)]
    [InlineData(110, 58, 107.64)]
    public void Set_at_sixty_eight_fahrenheit(double psi, double fahrenheit, double expected) =>
        AirLaw.After(GaugePressure.FromPoundsPerSquareInch(psi), Temperature.FromDegreesFahrenheit(68), Temperature.FromDegreesFahrenheit(fahrenheit), AirLaw.SeaLevel, AirLaw.SeaLevel)
            .PoundsPerSquareInch.ShouldBe(expected, 0.005);

    [Fact]
    public void One_psi_for_ten_fahrenheit_holds_for_a_car()
    {
        var fall = 35 - AirLaw.After(GaugePressure.FromPoundsPerSquareInch(35), Temperature.FromDegreesFahrenheit(68), Temperature.FromDegreesFahrenheit(58), AirLaw.SeaLevel, AirLaw.SeaLevel).PoundsPerSquareInch;
        fall.ShouldBe(1, 0.1);
    }

    [Theory]
    [InlineData(305, 3.6)]
    [InlineData(1500, 16.8)]
    [InlineData(3000, 31.2)]
    public void The_gauge_rises_with_height(double metres, double kilopascals) =>
        (AirLaw.SeaLevel.Kilopascals - AirLaw.At(Length.FromMetres(metres)).Kilopascals).ShouldBe(kilopascals, 0.05);

    [Theory]
    [InlineData(30, 22.5)]
    [InlineData(33, 24.75)]
    [InlineData(36, 27)]
    [InlineData(44, 33)]
    public void Fmvss_138_warns_at_a_quarter_below_the_placard(double placard, double threshold) =>
        WarningThreshold.For(GaugePressure.FromPoundsPerSquareInch(placard), null, null, false, RuleSet.UnitedStates)
            .Ruling!.Pressure.PoundsPerSquareInch.ShouldBe(threshold, 1e-9);

    [Theory]
    [InlineData(79, ReadingVerdict.RunLow)]
    [InlineData(80, ReadingVerdict.RunLow)]
    [InlineData(81, ReadingVerdict.Low)]
    public void At_or_below_eighty_per_cent_a_tyre_is_run_low(double psi, ReadingVerdict verdict) =>
        JudgedReading.Of(
            new PressureReading(GaugePressure.FromPoundsPerSquareInch(psi), null, false),
            new SourcedPressure(GaugePressure.FromPoundsPerSquareInch(100), Source.CommonPractice),
            null).Verdict.ShouldBe(verdict);
}
