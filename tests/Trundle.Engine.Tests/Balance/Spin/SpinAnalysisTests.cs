using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Spin;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Spin;

/// <summary>Whole spins: speed, readings and their errors, and each flag raised by what it is for and by nothing else.</summary>
public class SpinAnalysisTests
{
    private static readonly Complex One = Complex.FromPolarCoordinates(3, 1.1);
    private static readonly Complex Two = Complex.FromPolarCoordinates(2, -2);

    [Fact]
    public void A_sound_spin_is_read_within_its_errors_and_raises_no_flag()
    {
        for (var seed = 1; seed <= 40; seed++)
        {
            var result = Run(Signals.Spin(4321, 333.3, One, Two, 0.05, seed));
            result.Warnings.Select(w => w.Code).ShouldBeEmpty();
            result.Speed.RevolutionsPerMinute.ShouldBe(60 * 2000 / 333.3, 5 * result.SpeedStandardError.RevolutionsPerMinute);
            result.Points[0].Amplitude.ShouldBe(3, 5 * result.Points[0].AmplitudeStandardError);
            result.Points[0].AmplitudeStandardError.ShouldBe(0.05 * Math.Sqrt(2.0 / 4321), 0.0001);

            // Noughts and ones put each mark half a sample off either way; the phase's error knows.
            AngleOff(result.Points[0].Phase, -1.1).ShouldBeLessThan(5 * result.Points[0].PhaseStandardError.Radians);
            AngleOff(result.Points[1].Phase, 2).ShouldBeLessThan(5 * result.Points[1].PhaseStandardError.Radians);
            result.Points[0].PhaseStandardError.Degrees.ShouldBeLessThan(0.2);
        }
    }

    [Fact]
    public void Lag_and_lead_are_one_turn_together()
    {
        var lag = Run(Signals.Spin(4321, 333.3, One, Two, 0, 1, new SpinSense(RotationSense.Clockwise, PhaseSense.Lag)));
        var lead = Run(Signals.Spin(4321, 333.3, One, Two, 0, 1, new SpinSense(RotationSense.Clockwise, PhaseSense.Lead)));
        for (var p = 0; p < 2; p++)
        {
            (lag.Points[p].Phase.Degrees + lead.Points[p].Phase.Degrees).ShouldBe(360, 1e-9);
            lag.Points[p].Amplitude.ShouldBe(lead.Points[p].Amplitude);
        }

        // A signal whose crest comes a quarter turn behind the mark lags by 90°.
        var crest = Run(Signals.Spin(4321, 333.3, -Complex.ImaginaryOne, Two, 0, 1));
        crest.Points[0].Phase.Degrees.ShouldBe(90, 0.3);
    }

    [Fact]
    public void Too_few_turns() => Codes(Run(Signals.Spin(1400, 333.3, One, Two, 0.05, 2))).ShouldBe(["too-few-turns"]);

    [Fact]
    public void Missing_and_extra_marks_are_counted_and_the_speed_stays()
    {
        var sound = Signals.Spin(6000, 333.3, One, Two, 0.05, 3);
        var index = (double[])sound.Index.Clone();
        var ups = Enumerable.Range(1, 5999).Where(k => index[k] > 0.5 && index[k - 1] < 0.5).ToList();
        foreach (var lost in new[] { 4, 5, 9 })
        {
            Array.Clear(index, ups[lost], 30);
        }

        var missing = Run(new SpinRecording(sound.Transducers, index, sound.SampleRate, sound.Sense));
        Codes(missing).ShouldBe(["marks-missing"]);
        missing.Warnings[0].Measured.Value.ShouldBe(3);
        missing.Speed.RevolutionsPerMinute.ShouldBe(60 * 2000 / 333.3, 0.2);

        // An index that falls silent: the marks behind its last one are missing too.
        var silent = (double[])sound.Index.Clone();
        Array.Clear(silent, ups[11] - 5, silent.Length - ups[11] + 5);
        var stopped = Run(new SpinRecording(sound.Transducers, silent, sound.SampleRate, sound.Sense));
        Codes(stopped).ShouldContain("marks-missing");
        stopped.Warnings[0].Measured.Value.ShouldBe(ups.Count - 11);

        index = (double[])sound.Index.Clone();
        index[ups[7] + 60] = 1;
        var extra = Run(new SpinRecording(sound.Transducers, index, sound.SampleRate, sound.Sense));
        Codes(extra).ShouldBe(["marks-extra"]);
        extra.Points[0].Amplitude.ShouldBe(3, 0.01);
    }

    [Fact]
    public void A_drifting_speed_is_followed_and_flagged()
    {
        const int n = 6000;
        double Turns(int k) => 0.2 + (k / 333.3) - (k * (double)k / 333.3 * 0.06 / (2 * n));
        double Square(int k) => Math.Pow((1 - (0.06 * k / n)) / 0.97, 2);
        double[] Channel(Complex z) => [.. Enumerable.Range(0, n).Select(k => Square(k) * (z * Complex.FromPolarCoordinates(1, Math.Tau * Turns(k))).Real)];
        var result = Run(new SpinRecording([Channel(One), Channel(Two)], Signals.Index(n, Turns), Frequency.FromHertz(2000), default));
        Codes(result).ShouldBe(["speed-drift"]);
        result.DriftPercent.ShouldNotBeNull().ShouldBe(-6 / 0.97, 0.1);
        result.Points[0].Amplitude.ShouldBe(3, 0.004);
        AngleOff(result.Points[0].Phase, -1.1).ShouldBeLessThan(0.01);
    }

    [Theory]
    [InlineData(0.018)]
    [InlineData(-0.0195)]
    [InlineData(0.05)]
    [InlineData(0.2)]
    public void A_speed_that_changes_is_no_loose_object_and_hides_none(double change)
    {
        const int n = 6000;
        const double perTurn = 333.3;
        var sound = Signals.Spin(n, perTurn, One, Two, 0.02, 11);
        double Turns(int k) => 0.2 + (k / perTurn) + (change * k * (k - n) / perTurn / 2 / n);

        // What unbalance does goes with the square of the speed.
        double Speed(int k) => 1 + (change * ((k / (double)n) - 0.5));
        var random = new Random(11);
        double[] Channel(Complex z, double stone) => [.. Enumerable.Range(0, n).Select(k =>
            (Speed(k) * Speed(k) * (z + (stone * Complex.FromPolarCoordinates(1, 1.6 * k / n))) * Complex.FromPolarCoordinates(1, Math.Tau * Turns(k))).Real + (0.02 * Signals.Gauss(random)))];
        SpinResult Spun(double stone) => Run(new SpinRecording([Channel(One, stone), Channel(Two, stone)], Signals.Index(n, Turns), sound.SampleRate, default));
        string[] drift = Math.Abs(change) > 0.02 ? ["speed-drift"] : [];
        Codes(Spun(0)).ShouldBe(drift);
        Codes(Spun(0.3)).ShouldBe([.. drift, "loose-object", "loose-object"]);
    }

    [Theory]
    [InlineData(2.0, null)]
    [InlineData(2.8, null)]
    [InlineData(2.0, 2.0)]
    public void Clipping(double end, double? fullScale)
    {
        var sound = Signals.Spin(6000, 333.3, One, Two * 0.5, 0.05, 4);
        var cut = sound.Transducers[0].Select(v => Math.Clamp(v, -end, end)).ToArray();
        var result = Run(new SpinRecording([cut, sound.Transducers[1]], sound.Index, sound.SampleRate, sound.Sense) { FullScale = fullScale });
        result.Warnings.Where(w => w.Code == "clipped").Select(w => w.Point).ShouldBe([1]);
    }

    [Fact]
    public void A_signal_rounded_to_whole_steps_is_not_clipped()
    {
        var sound = Signals.Spin(6000, 333.3, One * 20, Two * 30, 0.01, 5);
        double[] Rounded(double[] of) => [.. of.Select(v => Math.Round(v))];
        Codes(Run(new SpinRecording([Rounded(sound.Transducers[0]), Rounded(sound.Transducers[1])], sound.Index, sound.SampleRate, sound.Sense))).ShouldBeEmpty();
        var coarse = Run(new SpinRecording([Rounded([.. sound.Transducers[0].Select(v => v / 5)]), Rounded(sound.Transducers[1])], sound.Index, sound.SampleRate, sound.Sense));
        Codes(coarse).ShouldBe(["coarse-steps"]);
    }

    [Fact]
    public void A_stretch_that_stands_still_is_a_drop_out()
    {
        var sound = Signals.Spin(6000, 333.3, One, Two, 0.05, 6);
        var held = (double[])sound.Transducers[1].Clone();
        Array.Fill(held, 0.123, 2000, 40);
        var result = Run(new SpinRecording([sound.Transducers[0], held], sound.Index, sound.SampleRate, sound.Sense));
        result.Warnings.Where(w => w.Code == "drop-out").Select(w => w.Point).ShouldBe([2]);
        Run(new SpinRecording(sound.Transducers, sound.Index, sound.SampleRate, sound.Sense) { Gaps = 1 }).Warnings.Select(w => w.Code).ShouldBe(["drop-out"]);
    }

    [Fact]
    public void A_loose_object_makes_the_reading_wander_and_widens_its_error()
    {
        const int n = 6000;
        const double perTurn = 333.3;
        var sound = Signals.Spin(n, perTurn, One, Two, 0.05, 7);

        // A stone that creeps: 0.3 of the signal's unit, a quarter turn over the record.
        double[] With(double[] of) => [.. of.Select((v, k) => v + (0.3 * Math.Cos((Math.Tau * k / perTurn) + (1.6 * k / n))))];
        var loose = Run(new SpinRecording([With(sound.Transducers[0]), With(sound.Transducers[1])], sound.Index, sound.SampleRate, sound.Sense));
        loose.Warnings.Where(w => w.Code == "loose-object").Select(w => w.Point).ShouldBe([1, 2]);
        loose.Points[0].AmplitudeStandardError.ShouldBeGreaterThan(2 * Run(sound).Points[0].AmplitudeStandardError);
    }

    [Fact]
    public void Noise_alone_wanders_in_under_one_spin_of_a_hundred()
    {
        var flagged = Enumerable.Range(100, 300).Count(seed => Codes(Run(Signals.Spin(2200, 333.3, One * 0.01, Two * 0.01, 0.05, seed))).Contains("loose-object"));
        flagged.ShouldBeLessThan(3);
    }

    [Fact]
    public void A_mark_on_another_shaft_is_noticed()
    {
        var sound = Signals.Spin(6000, 333.3, One, Two, 0.05, 8);
        var index = Signals.Index(6000, k => 0.2 + (k / 325.0));
        Codes(Run(new SpinRecording(sound.Transducers, index, sound.SampleRate, sound.Sense))).ShouldBe(["speed-differs"]);
    }

    [Theory]
    [InlineData(0.5, "twice a turn")]
    [InlineData(2, "every second turn")]
    [InlineData(1.1, "carries the wheel")]
    [InlineData(1.5, "carries the wheel")]
    [InlineData(0.7, "carries the wheel")]
    [InlineData(2.3, "carries the wheel")]
    public void A_mark_far_from_the_wheels_speed_is_named(double times, string says)
    {
        var sound = Signals.Spin(6000, 333.3, One, Two, 0.05, 8);
        var index = Signals.Index(6000, k => 0.2 + (k / 333.3 / times));
        var warning = Run(new SpinRecording(sound.Transducers, index, sound.SampleRate, sound.Sense)).Warnings.ShouldHaveSingleItem();
        warning.Code.ShouldBe("speed-differs");
        warning.Action.ShouldContain(says);
        warning.Measured.Value.ShouldNotBeNull().ShouldBe(100 * Math.Abs(times - 1), 0.5);
    }

    [Fact]
    public void A_strong_second_harmonic_or_a_hum_is_no_other_speed()
    {
        var sound = Signals.Spin(6000, 333.3, One, Two, 0.05, 8);
        double[] With(double[] of, double times, double amplitude) => [.. of.Select((v, k) => v + (amplitude * Math.Cos(Math.Tau * times * k / 333.3)))];
        Codes(Run(new SpinRecording([With(sound.Transducers[0], 2, 12), With(sound.Transducers[1], 2, 8)], sound.Index, sound.SampleRate, sound.Sense))).ShouldNotContain("speed-differs");
        Codes(Run(new SpinRecording([With(sound.Transducers[0], 1.7, 3), With(sound.Transducers[1], 1.7, 2)], sound.Index, sound.SampleRate, sound.Sense))).ShouldNotContain("speed-differs");
    }

    [Fact]
    public void A_dead_channel_has_no_signal()
    {
        var sound = Signals.Spin(6000, 333.3, One, Two, 0.05, 8);
        var random = new Random(3);
        foreach (var dead in new[] { new double[6000], [.. Enumerable.Range(0, 6000).Select(_ => random.NextDouble() < 0.02 ? 0.001 : 0)] })
        {
            var warning = Run(new SpinRecording([sound.Transducers[0], dead], sound.Index, sound.SampleRate, sound.Sense)).Warnings.ShouldHaveSingleItem();
            (warning.Code, warning.Point).ShouldBe(("no-signal", 2));
        }
    }

    [Fact]
    public void Without_two_marks_or_samples_enough_there_is_no_result()
    {
        var sound = Signals.Spin(6000, 333.3, One, Two, 0.05, 9);
        SpinAnalysis.Of(new SpinRecording(sound.Transducers, new double[6000], sound.SampleRate, sound.Sense), 5).ShouldBeNull();
        SpinAnalysis.Of(Signals.Spin(300, 5, One, Two, 0, 9), 5).ShouldBeNull();
    }

    [Fact]
    public void The_falling_edge_is_a_mark_as_well()
    {
        var sound = Signals.Spin(6000, 400, One, Two, 0, 10);
        var falling = Run(new SpinRecording(sound.Transducers, sound.Index, sound.SampleRate, sound.Sense) { Edge = IndexEdge.Falling });

        // The pulse lasts a twentieth of a turn: 18° later, so the crest lags 18° less.
        AngleOff(falling.Points[0].Phase, -1.1 - (Math.Tau / 20)).ShouldBeLessThan(0.02);
    }

    [Theory]
    [InlineData(180, 1000)]
    [InlineData(187.3, 1000)]
    [InlineData(199.98, 1000)]
    [InlineData(200, 1000)]
    [InlineData(240, 2000)]
    [InlineData(180, 6000)]
    public void The_error_of_the_phase_covers_marks_between_two_samples(double revolutions, double rate)
    {
        var random = new Random(5);
        var squares = 0.0;
        for (var seed = 0; seed < 60; seed++)
        {
            var spin = Signals.Spin((int)(4 * rate), 60 * rate / revolutions, One, Two, 0.005, seed, start: random.NextDouble());
            var point = Run(spin).Points[0];
            squares += Math.Pow(AngleOff(point.Phase, -1.1) / point.PhaseStandardError.Radians, 2) / 60;
        }

        squares.ShouldBeLessThan(2);
    }

    [Fact]
    public void Wander_counts_once()
    {
        var sound = Signals.Spin(4000, 333.3, One, Two, 0.001, 3);
        double[] Wandering(double[] of) => [.. of.Select((y, k) => y + (0.3 * Math.Cos(Math.Tau * 1.13 * k / 333.3)))];
        var point = Run(new SpinRecording([Wandering(sound.Transducers[0]), sound.Transducers[1]], sound.Index, sound.SampleRate, sound.Sense)).Points[0];
        point.WanderRatio.ShouldNotBeNull().ShouldBeGreaterThan(100);
        point.AmplitudeStandardError.ShouldBeInRange(0.001, 0.12);
    }

    private static SpinResult Run(SpinRecording recording) => SpinAnalysis.Of(recording, 5).ShouldNotBeNull();

    private static IEnumerable<string> Codes(SpinResult result) => result.Warnings.Select(w => w.Code);

    private static double AngleOff(Angle phase, double radians) =>
        Math.Abs((WheelAngle.FromDegrees(phase.Degrees) - WheelAngle.FromRadians(radians)).Radians);
}
