namespace Trundle.Measures.Tests;

/// <summary>
/// The factor of every unit. NIST SP 811 (2008), appendix B.8, prints them to seven digits, exact ones in bold (values from memory of that
/// table); the definitions behind them are exact and are multiplied out here in decimal: inch 25.4 mm and pound 0.453 592 37 kg (international
/// yard and pound agreement of 1959), standard gravity 9.806 65 m/s² (3rd CGPM, 1901).
/// </summary>
public sealed class ExactFactorTests
{
    private const decimal Inch = 0.0254m;
    private const decimal Pound = 0.45359237m;
    private const decimal Gravity = 9.80665m;

    public static TheoryData<string, double, decimal, double> Factors => new()
    {
        // unit, ours, the definition multiplied out, SP 811's seven digits
        { "in → m", Si<Length>("in"), Inch, 2.54e-2 },
        { "ft → m", Si<Length>("ft"), 12 * Inch, 3.048e-1 },
        { "mi → m", Si<Length>("mi"), 63360 * Inch, 1.609344e3 },
        { "1/32 in → m", Si<Length>("32nds"), Inch / 32, 7.9375e-4 },
        { "oz → kg", Si<Mass>("oz"), Pound / 16, 2.834952e-2 },
        { "lb → kg", Si<Mass>("lb"), Pound, 4.535924e-1 },
        { "lbf → N", Si<Force>("lbf"), Pound * Gravity, 4.448222 },
        { "lbf/in → N/m", Si<Stiffness>("lbf/in"), Pound * Gravity / Inch, 1.751268e2 },
        { "lbf·ft → N·m", Si<Torque>("lbf·ft"), Pound * Gravity * 12 * Inch, 1.355818 },
        { "lbf·in → N·m", Si<Torque>("lbf·in"), Pound * Gravity * Inch, 1.129848e-1 },
        { "kgf·m → N·m", Si<Torque>("kgf·m"), Gravity, 9.80665 },
        { "psi → Pa", Si<GaugePressure>("psi"), Pound * Gravity / (Inch * Inch), 6.894757e3 },
        { "psi → Pa, absolute", Si<AbsolutePressure>("psi"), Pound * Gravity / (Inch * Inch), 6.894757e3 },
        { "bar → Pa", Si<GaugePressure>("bar"), 100000, 1e5 },
        { "kgf/cm² → Pa", Si<GaugePressure>("kgf/cm²"), Gravity * 10000, 9.80665e4 },
        { "mph → m/s", Si<Speed>("mph"), 63360 * Inch / 3600, 4.4704e-1 },
        { "km/h → m/s", Si<Speed>("km/h"), 1000m / 3600, 2.777778e-1 },
        { "oz·in → kg·m", Si<Unbalance>("oz·in"), Pound / 16 * Inch, 7.200779e-4 },
        { "oz·in² → kg·m²", Si<CoupleUnbalance>("oz·in²"), Pound / 16 * Inch * Inch, 1.828998e-5 },
        { "r/min → rad/s", Si<RotationalSpeed>("r/min"), (decimal)Math.PI / 30, 1.047198e-1 },
        { "° → rad", Si<Angle>("°"), (decimal)Math.PI / 180, 1.745329e-2 },
    };

    [Theory]
    [MemberData(nameof(Factors))]
    public void Factor_is_the_definition_and_the_printed_digits(string unit, double ours, decimal definition, double printed)
    {
        ours.ShouldBe((double)definition, Math.Abs((double)definition) * 2e-15, unit);
        var lastDigit = Math.Pow(10, Math.Floor(Math.Log10(printed)) - 6);
        ours.ShouldBe(printed, lastDigit * 0.500001, unit);
    }

    /// <summary>NIST SP 811 B.8: t/°C = (t/°F − 32)/1.8; T/K = (T/°F + 459.67)/1.8.</summary>
    [Theory]
    [InlineData(-459.67, 0)]
    [InlineData(32, 273.15)]
    [InlineData(68, 293.15)]
    [InlineData(212, 373.15)]
    public void Fahrenheit(double fahrenheit, double kelvin)
    {
        Quantity.Of<Temperature>(fahrenheit, "°F").Kelvins.ShouldBe(kelvin, 1e-10);
        Temperature.FromDegreesFahrenheit(fahrenheit).Kelvins.ShouldBe(kelvin, 1e-10);
        Temperature.FromKelvins(kelvin).DegreesFahrenheit.ShouldBe(fahrenheit, 1e-9);
    }

    [Fact]
    public void Gauge_and_absolute_pressure_differ_by_the_atmosphere()
    {
        var atmosphere = AbsolutePressure.FromKilopascals(101.325);
        GaugePressure.FromKilopascals(220).In(atmosphere).Kilopascals.ShouldBe(321.325, 1e-9);
        AbsolutePressure.FromKilopascals(321.325).Above(atmosphere).Kilopascals.ShouldBe(220, 1e-9);
    }

    private static double Si<T>(string symbol) where T : struct, IQuantity<T> => Quantity.Of<T>(1, symbol).Si;
}
