using UnitsNet.Units;

namespace Trundle.Measures.Tests;

/// <summary>A second opinion on every conversion, by an independent library, over a thousand seeded values a unit.</summary>
public sealed class UnitsNetTests
{
    private const int Values = 1000;

    [Fact]
    public void Lengths_agree()
    {
        Agree(v => Length.FromMillimetres(v).Metres, v => UnitsNet.UnitConverter.Convert(v, LengthUnit.Millimeter, LengthUnit.Meter));
        Agree(v => Length.FromInches(v).Millimetres, v => UnitsNet.UnitConverter.Convert(v, LengthUnit.Inch, LengthUnit.Millimeter));
        Agree(v => Length.FromMiles(v).Kilometres, v => UnitsNet.UnitConverter.Convert(v, LengthUnit.Mile, LengthUnit.Kilometer));
        Agree(v => Quantity.Of<Length>(v, "ft").In("in"), v => UnitsNet.UnitConverter.Convert(v, LengthUnit.Foot, LengthUnit.Inch));
        Agree(v => Quantity.Of<Length>(v, "µm").In("mm"), v => UnitsNet.UnitConverter.Convert(v, LengthUnit.Micrometer, LengthUnit.Millimeter));
    }

    [Fact]
    public void Masses_and_forces_agree()
    {
        Agree(v => Mass.FromOunces(v).Grams, v => UnitsNet.UnitConverter.Convert(v, MassUnit.Ounce, MassUnit.Gram));
        Agree(v => Mass.FromPounds(v).Kilograms, v => UnitsNet.UnitConverter.Convert(v, MassUnit.Pound, MassUnit.Kilogram));
        Agree(v => Mass.FromGrams(v).Ounces, v => UnitsNet.UnitConverter.Convert(v, MassUnit.Gram, MassUnit.Ounce));
        Agree(v => Force.FromPoundsForce(v).Newtons, v => UnitsNet.UnitConverter.Convert(v, ForceUnit.PoundForce, ForceUnit.Newton));
        // The other library carries this factor in nine digits; ours is held against the definition in ExactFactorTests.
        Agree(v => Quantity.Of<Stiffness>(v, "lbf/in").NewtonsPerMillimetre, v => UnitsNet.UnitConverter.Convert(v, ForcePerLengthUnit.PoundForcePerInch, ForcePerLengthUnit.NewtonPerMillimeter), 2e-9);
    }

    [Fact]
    public void Torques_agree()
    {
        Agree(v => Torque.FromPoundForceFeet(v).NewtonMetres, v => UnitsNet.UnitConverter.Convert(v, TorqueUnit.PoundForceFoot, TorqueUnit.NewtonMeter));
        Agree(v => Torque.FromNewtonMetres(v).PoundForceInches, v => UnitsNet.UnitConverter.Convert(v, TorqueUnit.NewtonMeter, TorqueUnit.PoundForceInch));
        Agree(v => Quantity.Of<Torque>(v, "kgf·m").NewtonMetres, v => UnitsNet.UnitConverter.Convert(v, TorqueUnit.KilogramForceMeter, TorqueUnit.NewtonMeter));
    }

    [Fact]
    public void Pressures_agree()
    {
        Agree(v => GaugePressure.FromPoundsPerSquareInch(v).Kilopascals, v => UnitsNet.UnitConverter.Convert(v, PressureUnit.PoundForcePerSquareInch, PressureUnit.Kilopascal));
        Agree(v => AbsolutePressure.FromBars(v).PoundsPerSquareInch, v => UnitsNet.UnitConverter.Convert(v, PressureUnit.Bar, PressureUnit.PoundForcePerSquareInch));
        Agree(v => Quantity.Of<GaugePressure>(v, "kgf/cm²").Bars, v => UnitsNet.UnitConverter.Convert(v, PressureUnit.KilogramForcePerSquareCentimeter, PressureUnit.Bar));
    }

    [Fact]
    public void Temperatures_speeds_and_angles_agree()
    {
        Agree(v => Temperature.FromDegreesFahrenheit(v).DegreesCelsius, v => UnitsNet.UnitConverter.Convert(v, TemperatureUnit.DegreeFahrenheit, TemperatureUnit.DegreeCelsius));
        Agree(v => Temperature.FromDegreesCelsius(v).Kelvins, v => UnitsNet.UnitConverter.Convert(v, TemperatureUnit.DegreeCelsius, TemperatureUnit.Kelvin));
        Agree(v => Quantity.Of<TemperatureDifference>(v, "°F").Kelvins, v => UnitsNet.UnitConverter.Convert(v, TemperatureDeltaUnit.DegreeFahrenheit, TemperatureDeltaUnit.Kelvin));
        Agree(v => Speed.FromMilesPerHour(v).KilometresPerHour, v => UnitsNet.UnitConverter.Convert(v, SpeedUnit.MilePerHour, SpeedUnit.KilometerPerHour));
        // The other library carries its factors of turning in eleven digits; ours are held against the definition in ExactFactorTests.
        Agree(v => RotationalSpeed.FromRevolutionsPerMinute(v).RadiansPerSecond, v => UnitsNet.UnitConverter.Convert(v, RotationalSpeedUnit.RevolutionPerMinute, RotationalSpeedUnit.RadianPerSecond), 1e-11);
        Agree(v => Angle.FromDegrees(v).Radians, v => UnitsNet.UnitConverter.Convert(v, AngleUnit.Degree, AngleUnit.Radian), 1e-11);
    }

    private static void Agree(Func<double, double> ours, Func<double, double> theirs, double relative = 1e-13)
    {
        var random = new Random(20_260_314);
        for (var i = 0; i < Values; i++)
        {
            var value = (random.NextDouble() - 0.3) * Math.Pow(10, random.Next(-3, 5));
            var expected = theirs(value);
            ours(value).ShouldBe(expected, (Math.Abs(expected) * relative) + 1e-12);
        }
    }
}
