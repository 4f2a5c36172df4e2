namespace Trundle.Measures.Tests;

/// <summary>Every form in which people type a quantity.</summary>
public sealed class QuantityReadingTests
{
    [Theory]
    [InlineData("45 g", 0.045)]
    [InlineData("45g", 0.045)]
    [InlineData("1.75 oz", 0.049611665468750)]
    [InlineData("1,75 oz", 0.049611665468750)]
    [InlineData("1 3/4 oz", 0.049611665468750)]
    [InlineData("1¾ oz", 0.049611665468750)]
    [InlineData("¼ oz", 0.00708738078125)]
    [InlineData("19 kg", 19)]
    [InlineData("1521 lb", 689.914_0, 1e-3)]
    [InlineData("3 lbs", 1.36077711)]
    [InlineData("1.2 t", 1200)]
    public void Mass_in_kilograms(string text, double kilograms, double within = 1e-12) => Read<Mass>(text).ShouldBe(kilograms, within);

    [Theory]
    [InlineData("7.5 in", 0.1905)]
    [InlineData("7,5 in", 0.1905)]
    [InlineData("7 1/2 in", 0.1905)]
    [InlineData("7½\"", 0.1905)]
    [InlineData("15 inches", 0.381)]
    [InlineData("6/32 in", 0.0047625)]
    [InlineData("6/32\"", 0.0047625)]
    [InlineData("6/32in", 0.0047625)]
    [InlineData("6 32nds", 0.0047625)]
    [InlineData("6 32nd", 0.0047625)]
    [InlineData("6/32nds", 0.0047625)]
    [InlineData("7/32nds", 0.00555625)]
    [InlineData("7/32nd", 0.00555625)]
    [InlineData("7/32NDS", 0.00555625)]
    [InlineData("7 1/32nds", double.NaN)]
    [InlineData("7/16nds", double.NaN)]
    [InlineData("6 x 1/32 in", double.NaN)]
    [InlineData("6 × 1/32 in", 0.0047625)]
    [InlineData("1/32 in", 0.00079375)]
    [InlineData("2/32 in", 0.0015875)]
    [InlineData("5,50 mm", 0.0055)]
    [InlineData("5.50mm", 0.0055)]
    [InlineData(".5 mm", 0.0005)]
    [InlineData("1.234 mm", 0.001234)]
    [InlineData("-43 mm", -0.043)]
    [InlineData("−43 mm", -0.043)]
    [InlineData("1.95 m", 1.95)]
    [InlineData("48200 km", 48_200_000)]
    [InlineData("30 mi", 48_280.32)]
    [InlineData("2 ft", 0.6096)]
    [InlineData("12 µm", 1.2e-5)]
    [InlineData("12 μm", 1.2e-5)]
    public void Length_in_metres(string text, double metres)
    {
        if (double.IsNaN(metres))
        {
            Quantity.Read<Length>(text).IsRead.ShouldBeFalse();
            return;
        }

        Read<Length>(text).ShouldBe(metres, 1e-12 * Math.Max(1, Math.Abs(metres)));
    }

    [Theory]
    [InlineData("120 N·m", 120)]
    [InlineData("120 N⋅m", 120)]
    [InlineData("120 N.m", 120)]
    [InlineData("120 N m", 120)]
    [InlineData("120 N*m", 120)]
    [InlineData("120 N-m", 120)]
    [InlineData("120 Nm", 120)]
    [InlineData("120NM", 120)]
    [InlineData("90 lbf·ft", 122.023615349826)]
    [InlineData("90 lb-ft", 122.023615349826)]
    [InlineData("90 ft-lb", 122.023615349826)]
    [InlineData("90 ft·lb", 122.023615349826)]
    [InlineData("90 ft lbs", 122.023615349826)]
    [InlineData("90 ftlb", 122.023615349826)]
    [InlineData("90 lb·ft", 122.023615349826)]
    [InlineData("100 in-lb", 11.29848290276167)]
    [InlineData("11 kgf·m", 107.87315)]
    public void Torque_in_newton_metres(string text, double newtonMetres) => Read<Torque>(text).ShouldBe(newtonMetres, 1e-11);

    [Theory]
    [InlineData("33 psi", 227_526.990674533)]
    [InlineData("33PSI", 227_526.990674533)]
    [InlineData("2.3 bar", 230_000)]
    [InlineData("2,3 bar", 230_000)]
    [InlineData("230 kPa", 230_000)]
    [InlineData("230 KPA", 230_000)]
    [InlineData("0.23 MPa", 230_000)]
    [InlineData("2.3 kgf/cm²", 225_552.95)]
    [InlineData("2.3 kg/cm2", 225_552.95)]
    [InlineData("33 lbf/in²", 227_526.990674533)]
    public void Pressure_in_pascals(string text, double pascals) => Read<GaugePressure>(text).ShouldBe(pascals, 1e-7);

    [Theory]
    [InlineData("1200 g·mm", 0.0012)]
    [InlineData("1200 g mm", 0.0012)]
    [InlineData("1200 gmm", 0.0012)]
    [InlineData("1 oz·in", 0.000720077887375)]
    [InlineData("1 oz-in", 0.000720077887375)]
    public void Unbalance_in_kilogram_metres(string text, double kilogramMetres) => Read<Unbalance>(text).ShouldBe(kilogramMetres, 1e-15);

    [Theory]
    [InlineData("150000 g·mm²", 1.5e-4)]
    [InlineData("150000 g·mm2", 1.5e-4)]
    [InlineData("150000 g mm^2", 1.5e-4)]
    [InlineData("150000 gmm²", 1.5e-4)]
    public void Couple_in_kilogram_square_metres(string text, double kilogramSquareMetres) => Read<CoupleUnbalance>(text).ShouldBe(kilogramSquareMetres, 1e-15);

    [Theory]
    [InlineData("40 mph", 17.8816)]
    [InlineData("120 km/h", 33.3333333333333)]
    [InlineData("120 kph", 33.3333333333333)]
    [InlineData("10 m/s", 10)]
    public void Speed_in_metres_per_second(string text, double metresPerSecond) => Read<Speed>(text).ShouldBe(metresPerSecond, 1e-12);

    [Theory]
    [InlineData("300 r/min", 31.4159265358979)]
    [InlineData("300 rpm", 31.4159265358979)]
    [InlineData("300 min⁻¹", 31.4159265358979)]
    [InlineData("300 1/min", 31.4159265358979)]
    [InlineData("5 Hz", 31.4159265358979)]
    public void Rotational_speed_in_radians_per_second(string text, double radiansPerSecond) => Read<RotationalSpeed>(text).ShouldBe(radiansPerSecond, 1e-12);

    [Theory]
    [InlineData("18 °C", 291.15)]
    [InlineData("18C", 291.15)]
    [InlineData("-5 °C", 268.15)]
    [InlineData("68 °F", 293.15)]
    [InlineData("68F", 293.15)]
    [InlineData("32 °F", 273.15)]
    [InlineData("-40 °F", 233.15)]
    [InlineData("300 K", 300)]
    public void Temperature_in_kelvin(string text, double kelvin) => Read<Temperature>(text).ShouldBe(kelvin, 1e-10);

    [Theory]
    [InlineData("100 lbf", 444.82216152605)]
    [InlineData("100 lb", 444.82216152605)]
    [InlineData("1.5 kN", 1500)]
    public void Force_in_newtons(string text, double newtons) => Read<Force>(text).ShouldBe(newtons, 1e-11);

    [Fact]
    public void A_bare_number_is_in_the_fields_own_unit_and_without_one_is_refused()
    {
        Quantity.Read<GaugePressure>("230", "kPa").Value.Kilopascals.ShouldBe(230, 1e-12);
        Quantity.Read<GaugePressure>("230").Problem!.Code.ShouldBe("unit-missing");
    }

    [Fact]
    public void A_bare_fraction_is_never_millimetres()
    {
        Quantity.Read<Length>("6/32", "mm").Problem!.Code.ShouldBe("unit-missing");
        Quantity.Read<Length>("6/32", "in").Value.Millimetres.ShouldBe(4.7625, 1e-12);
    }

    /// <summary>A limit of 230 kPa is met by 2.3 bar exactly: neither is below the other by a last bit.</summary>
    [Fact]
    public void The_same_amount_in_two_units_is_the_same_to_the_last_bit()
    {
        for (var tenths = 0; tenths <= 400; tenths++)
        {
            var bar = FormattableString.Invariant($"{tenths / 10}.{tenths % 10} bar");
            var kilopascals = FormattableString.Invariant($"{tenths * 10} kPa");
            Quantity.Read<GaugePressure>(bar).Value.ShouldBe(Quantity.Read<GaugePressure>(kilopascals).Value, bar);

            var millimetres = FormattableString.Invariant($"{tenths / 10}.{tenths % 10} mm");
            var centimetres = FormattableString.Invariant($"{tenths / 100}.{tenths % 100:00} cm");
            Quantity.Read<Length>(millimetres).Value.ShouldBe(Quantity.Read<Length>(centimetres).Value, millimetres);

            var parts = FormattableString.Invariant($"{tenths}/32 in");
            Quantity.Read<Length>(parts).Value.ShouldBe(Quantity.Of<Length>(tenths, "32nds"), parts);
        }
    }

    [Fact]
    public void Every_symbol_and_every_spelling_is_read_and_none_stands_for_two_units()
    {
        Check<Length>();
        Check<Mass>();
        Check<Force>();
        Check<Torque>();
        Check<GaugePressure>();
        Check<AbsolutePressure>();
        Check<Temperature>();
        Check<Angle>();
        Check<Speed>();
        Check<RotationalSpeed>();
        Check<Unbalance>();
        Check<CoupleUnbalance>();

        static void Check<T>() where T : struct, IQuantity<T>
        {
            T.Units.SelectMany(u => u.Spellings).ShouldBeUnique();
            foreach (var unit in T.Units)
            {
                // "1/32 in" behind a number and a blank is the rest of a mixed fraction; as a unit it needs a sign of multiplication.
                foreach (var spelling in unit.Spellings.Append(unit.Symbol))
                {
                    var read = Quantity.Read<T>($"300 {(spelling.StartsWith("1/32", StringComparison.Ordinal) ? "× " : "")}{spelling}");
                    read.IsRead.ShouldBeTrue($"{typeof(T).Name}: 300 {spelling}: {read.Problem?.Message}");
                    read.Value.In(unit.Symbol).ShouldBe(300, 1e-9, $"{typeof(T).Name}: {spelling}");
                }
            }
        }
    }

    private static double Read<T>(string text) where T : struct, IQuantity<T>
    {
        var read = Quantity.Read<T>(text);
        read.IsRead.ShouldBeTrue(read.Problem?.Message);
        return read.Value.Si;
    }
}
