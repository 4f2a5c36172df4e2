using Trundle.Engine.Findings;
using Trundle.Engine.Pressure;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Pressure;

/// <summary>
/// The line through dated readings. Oracles: readings made from a known loss by the gas law are given back; two readings by the difference alone; a solution by
/// the normal equations with a column for each level, solved by elimination here; a thousand simulated series, whose ranges must hold the truth about as often as they say.
/// </summary>
public sealed class PressureLossTests
{
    private static readonly DateTime Start = new(2026, 1, 5, 8, 0, 0, DateTimeKind.Unspecified);
    private static readonly Temperature Twenty = Temperature.FromDegreesCelsius(20);
    private static readonly ReadingAccuracy Fine = new(GaugePressure.FromKilopascals(3), Source.CommonPractice, GaugePressure.FromKilopascals(0.7), TemperatureDifference.FromKelvins(1), Source.CommonPractice);

    private static DatedPressure At(double day, double kilopascals, double celsius, double metres = 0, bool filled = false, bool barometer = true) =>
        new(Start.AddDays(day), GaugePressure.FromKilopascals(kilopascals), Temperature.FromDegreesCelsius(celsius), AirLaw.At(Length.FromMetres(metres)), barometer, filled);

    /// <summary>What the gauge shows of so much air, by the gas law alone.</summary>
    private static DatedPressure Made(double day, double atTwenty, double celsius, double metres, bool filled = false)
    {
        var shown = AirLaw.After(GaugePressure.FromKilopascals(atTwenty), Twenty, Temperature.FromDegreesCelsius(celsius), AirLaw.SeaLevel, AirLaw.At(Length.FromMetres(metres)));
        return At(day, shown.Kilopascals, celsius, metres, filled);
    }

    private static PressureLoss Loss(params DatedPressure[] readings) => PressureLoss.Of(readings, Fine, Twenty).Value;

    [Fact]
    public void A_cold_morning_and_a_mountain_are_no_leak()
    {
        var loss = Loss(Made(0, 230, 20, 0), Made(10, 230, -10, 0), Made(20, 230, 5, 1500), Made(30, 230, 31, 800));
        loss.PerMonth.Estimate.Kilopascals.ShouldBe(0, 1e-9);
        loss.PerMonth.Low.Kilopascals.ShouldBeLessThan(0);
        loss.PerMonth.High.Kilopascals.ShouldBeGreaterThan(0);
    }

    [Fact]
    public void A_known_loss_is_given_back_whatever_the_weather()
    {
        var random = new Random(41);
        for (var n = 0; n < 300; n++)
        {
            var (perDay, height) = ((10 * random.NextDouble()) - 2, 3000 * random.NextDouble());
            var readings = Enumerable.Range(0, 3 + (n % 10)).Select(i => Made(i * 1.5, 250 - (perDay * i * 1.5), (70 * random.NextDouble()) - 30, i % 2 == 0 ? height : 0)).ToArray();
            Loss(readings).PerDay.Estimate.Kilopascals.ShouldBe(perDay, 1e-8);
        }
    }

    [Fact]
    public void Air_let_in_begins_a_new_level_and_keeps_the_slope()
    {
        var loss = Loss(Made(0, 230, 10, 0), Made(10, 225, 3, 0), Made(11, 240, 5, 0, true), Made(25, 233, 12, 0));
        loss.PerDay.Estimate.Kilopascals.ShouldBe(0.5, 1e-9);
        loss.Free.ShouldBe(1);
    }

    [Fact]
    public void Two_readings_are_their_difference_and_both_their_errors()
    {
        var loss = Loss(At(0, 230, 20), At(30, 220, 20));
        loss.PerDay.Estimate.Kilopascals.ShouldBe(10 / 30d, 1e-12);
        double Sigma(double absolute) => Math.Sqrt((0.7 * 0.7) + Math.Pow(absolute / 293.15 / Math.Sqrt(3), 2));
        var expected = Math.Sqrt(Math.Pow(Sigma(331.325), 2) + Math.Pow(Sigma(321.325), 2)) / 30;
        loss.PerDay.StandardError.Kilopascals.ShouldBe(expected, 1e-12);
        loss.PerDay.High.Kilopascals.ShouldBe((10 / 30d) + (1.959963984540054 * expected), 1e-12);
    }

    [Fact]
    public void Scatter_beyond_the_gauge_widens_the_range_by_students_t()
    {
        // Three readings at one temperature, the middle one 6 kPa off: one degree of freedom, t = 12.706 (Student's table).
        var loss = Loss(At(0, 230, 20), At(10, 236, 20), At(20, 230, 20));
        loss.PerDay.Estimate.Kilopascals.ShouldBe(0, 0.01);
        var residual = loss.Points.Select(p => p.OffLine.Kilopascals).ToArray();
        residual[1].ShouldBe(4, 0.05);
        var weights = loss.Points.Select(p => 1 / Math.Pow(p.StandardUncertainty.Kilopascals, 2)).ToArray();
        var s = Math.Sqrt(residual.Select((r, i) => weights[i] * r * r).Sum());
        loss.PerDay.StandardError.Kilopascals.ShouldBe(s / Math.Sqrt(weights.Sum() / 3 * 200), 0.01);
        ((loss.PerDay.High - loss.PerDay.Estimate) / loss.PerDay.StandardError).ShouldBe(12.7062, 1e-3);
    }

    [Fact]
    public void The_normal_equations_say_the_same()
    {
        var random = new Random(42);
        for (var n = 0; n < 300; n++)
        {
            var fillAt = 1 + (n % 12);
            var readings = Enumerable.Range(0, 4 + (n % 11)).Select(i => At((i * 2) + (i % 3 * 0.4), 150 + (200 * random.NextDouble()), (60 * random.NextDouble()) - 20, 0, i == fillAt)).ToArray();
            var read = PressureLoss.Of(readings, Fine, Twenty);
            read.IsRead.ShouldBeTrue();

            // Columns: level before the filling, level after it, time. Weighted rows, elimination with pivots.
            var levels = Enumerable.Range(0, readings.Length).Select(i => i >= fillAt && fillAt < readings.Length ? 1 : 0).ToArray();
            var columns = levels.Distinct().Count() + 1;
            var a = new double[columns, columns + 1];
            for (var i = 0; i < readings.Length; i++)
            {
                var point = read.Value.Points[i];
                var row = new double[columns];
                row[levels[i]] = 1;
                row[columns - 1] = (readings[i].At - Start).TotalDays;
                var w = 1 / Math.Pow(point.StandardUncertainty.Kilopascals, 2);
                for (var r = 0; r < columns; r++)
                {
                    for (var c = 0; c < columns; c++)
                    {
                        a[r, c] += w * row[r] * row[c];
                    }

                    a[r, columns] += w * row[r] * point.AtReference.Kilopascals;
                }
            }

            read.Value.PerDay.Estimate.Kilopascals.ShouldBe(-Solve(a, columns)[columns - 1], 1e-6);
        }
    }

    [Fact]
    public void The_time_to_a_pressure_is_where_line_and_band_cross_it()
    {
        var loss = Loss(At(0, 230, 20), At(10, 225, 20), At(20, 220, 20), At(30, 215, 20));
        var until = loss.Until(GaugePressure.FromKilopascals(185), Twenty);
        until.Estimate!.Value.TotalDays.ShouldBe(60, 0.1);
        until.Earliest!.Value.ShouldBeLessThan(until.Estimate.Value);
        until.Latest!.Value.ShouldBeGreaterThan(until.Estimate.Value);
        until.Reached.ShouldBeFalse();

        // 25 K colder the tyre shows less, so the same pressure comes much sooner.
        var cold = loss.Until(GaugePressure.FromKilopascals(185), Temperature.FromDegreesCelsius(-5));
        var nowCold = AirLaw.After(GaugePressure.FromKilopascals(215), Twenty, Temperature.FromDegreesCelsius(-5), AirLaw.SeaLevel, AirLaw.SeaLevel);
        cold.Estimate!.Value.TotalDays.ShouldBe((nowCold.Kilopascals - 185) / (0.5 * 268.15 / 293.15), 0.2);
        loss.Until(GaugePressure.FromKilopascals(216), Twenty).Reached.ShouldBeTrue();
        loss.Until(GaugePressure.FromKilopascals(214.9), Twenty).Earliest.ShouldBe(TimeSpan.Zero);
    }

    [Fact]
    public void A_tyre_that_keeps_its_air_never_gets_there_for_certain()
    {
        var until = Loss(At(0, 230, 20), At(10, 230.2, 20), At(20, 229.9, 20), At(30, 230, 20)).Until(GaugePressure.FromKilopascals(184), Twenty);
        until.Latest.ShouldBeNull();
        until.Reached.ShouldBeFalse();
    }

    [Fact]
    public void The_range_holds_the_truth_about_as_often_as_it_says()
    {
        // Normal errors of the gauge's repeatability, thermometer errors even within its limits: 95 % should hold 0.4 kPa a day.
        var random = new Random(1985);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(Math.Tau * random.NextDouble());
        const int series = 2_000;
        var held = 0;
        for (var n = 0; n < series; n++)
        {
            var readings = Enumerable.Range(0, 8).Select(i =>
            {
                var true_ = Made(i * 4, 230 - (0.4 * i * 4), 5 + (10 * random.NextDouble()), 0);
                return true_ with
                {
                    Value = true_.Value + GaugePressure.FromKilopascals(0.7 * Normal()),
                    Tyre = Temperature.FromKelvins(true_.Tyre.Kelvins + (2 * random.NextDouble()) - 1),
                };
            }).ToArray();
            var loss = Loss(readings).PerDay;
            held += loss.Low.Kilopascals <= 0.4 && 0.4 <= loss.High.Kilopascals ? 1 : 0;
        }

        (held / (double)series).ShouldBeInRange(0.94, 0.995);
    }

    [Fact]
    public void Readings_out_of_order_or_with_air_let_in_at_each_are_refused()
    {
        PressureLoss.Of([At(1, 230, 20), At(0, 229, 20)], Fine, Twenty).Problem!.Where.ShouldBe("readings[1].at");
        PressureLoss.Of([At(0, 230, 20), At(5, 231, 20, 0, true)], Fine, Twenty).Problem!.Code.ShouldBe("too-few");
        PressureLoss.Of([At(0, 230, 20)], Fine, Twenty).Problem!.Code.ShouldBe("too-few");
    }

    [Theory]
    [InlineData(0.1, LeakCase.Sound)]
    [InlineData(0.33, LeakCase.MoreThanSound)]
    [InlineData(0.7, LeakCase.Leak)]
    [InlineData(-0.3, LeakCase.Rose)]
    public void A_loss_is_judged_by_its_whole_range(double perDay, LeakCase expected)
    {
        var verdict = LeakVerdict.Of(Loss([.. Enumerable.Range(0, 13).Select(i => Made(i * 7, 240 - (perDay * i * 7), 15, 0))]), null);
        verdict.Case.ShouldBe(expected);
        verdict.Finding.Category.ShouldBe(expected switch { LeakCase.Leak => Category.Refer, LeakCase.Sound or LeakCase.CannotTell => Category.None, LeakCase.MoreThanSound or LeakCase.Rose => Category.Minor });
    }

    [Fact]
    public void Two_coarse_readings_near_to_each_other_cannot_tell()
    {
        var coarse = ReadingAccuracy.Of(GaugePressure.FromKilopascals(230), null, null, null);
        var verdict = LeakVerdict.Of(PressureLoss.Of([At(0, 230, 20), At(7, 228, 20)], coarse, Twenty).Value, null);
        verdict.Case.ShouldBe(LeakCase.CannotTell);
        verdict.Cautions.ShouldContain(c => c.Contains("days apart", StringComparison.Ordinal));
    }

    private static double[] Solve(double[,] a, int n)
    {
        for (var p = 0; p < n; p++)
        {
            var best = Enumerable.Range(p, n - p).MaxBy(r => Math.Abs(a[r, p]));
            for (var c = 0; c <= n; c++)
            {
                (a[p, c], a[best, c]) = (a[best, c], a[p, c]);
            }

            for (var r = 0; r < n; r++)
            {
                if (r != p)
                {
                    var f = a[r, p] / a[p, p];
                    for (var c = p; c <= n; c++)
                    {
                        a[r, c] -= f * a[p, c];
                    }
                }
            }
        }

        return [.. Enumerable.Range(0, n).Select(r => a[r, n] / a[r, r])];
    }

    [Fact]
    public void The_band_meets_a_pressure_when_the_range_of_its_time_says()
    {
        var loss = Loss(At(0, 230, 20), At(10, 226.4, 20), At(20, 221.8, 20), At(30, 218.3, 20));
        var target = GaugePressure.FromKilopascals(185);
        var until = loss.Until(target, Twenty);
        var last = Start.AddDays(30);
        loss.At(last).Estimate.Kilopascals.ShouldBe(loss.Now.Kilopascals, 1e-9);
        loss.At(last + until.Estimate!.Value).Estimate.Kilopascals.ShouldBe(185, 1e-4);
        loss.At(last + until.Earliest!.Value).Low.Kilopascals.ShouldBe(185, 1e-4);
        loss.At(last + until.Latest!.Value).High.Kilopascals.ShouldBe(185, 1e-4);

        // By hand at 101.325 kPa: 286.325 kPa absolute at 268.15 K are 313.020 at 293.15 K.
        loss.AtReference(target, Temperature.FromDegreesCelsius(-5)).Kilopascals.ShouldBe(286.325 * 293.15 / 268.15 - 101.325, 1e-6);
    }
}
