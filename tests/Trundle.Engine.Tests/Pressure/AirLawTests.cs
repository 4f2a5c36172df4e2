using Trundle.Engine.Pressure;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Pressure;

public class AirLawTests
{
    private static GaugePressure After(GaugePressure p, double fromC, double toC) =>
        AirLaw.After(p, Temperature.FromDegreesCelsius(fromC), Temperature.FromDegreesCelsius(toC), AirLaw.SeaLevel, AirLaw.SeaLevel);

    [Theory]
    [InlineData(-40)]
    [InlineData(-5)]
    [InlineData(20)]
    [InlineData(60)]
    public void There_and_back_is_where_it_was(double to)
    {
        var p = GaugePressure.FromKilopascals(234);
        After(After(p, 20, to), to, 20).Kilopascals.ShouldBe(234, 1e-9);
    }

    [Fact]
    public void An_empty_tyre_in_the_same_place_stays_empty_at_the_same_temperature() =>
        After(GaugePressure.FromKilopascals(0), 20, 20).Kilopascals.ShouldBe(0, 1e-9);

    [Fact]
    public void The_air_thins_upwards_and_the_gauge_rises_by_as_much()
    {
        var last = AirLaw.SeaLevel;
        for (var h = 250; h <= 6000; h += 250)
        {
            var air = AirLaw.At(Length.FromMetres(h));
            air.ShouldBeLessThan(last);
            last = air;
            var t = Temperature.FromDegreesCelsius(15);
            AirLaw.After(GaugePressure.FromKilopascals(220), t, t, AirLaw.SeaLevel, air).Kilopascals
                .ShouldBe(220 + AirLaw.SeaLevel.Kilopascals - air.Kilopascals, 1e-9);
        }
    }

    [Fact]
    public void Set_at_the_height_of_use_needs_no_correction()
    {
        var t = Temperature.FromDegreesCelsius(15);
        var air = AirLaw.At(Length.FromMetres(2200));
        AirLaw.After(GaugePressure.FromKilopascals(220), t, t, air, air).Kilopascals.ShouldBe(220, 1e-9);
    }
}
