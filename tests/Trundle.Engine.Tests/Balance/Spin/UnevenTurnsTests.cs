using System.Numerics;
using Trundle.Engine.Balance.Spin;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Spin;

/// <summary>What lost samples, marks out of place and marks on whole samples do to a reading, and what is still told.</summary>
public class UnevenTurnsTests
{
    private static readonly Complex One = Complex.FromPolarCoordinates(3, 1.1);
    private static readonly Complex Two = Complex.FromPolarCoordinates(2, -2);

    [Theory]
    [InlineData(1600)]
    [InlineData(2500)]
    public void Lost_samples_leave_the_longest_stretch_of_even_turns(int at)
    {
        var sound = Signals.Spin(4000, 333.3, One, Two, 0.02, 4);
        var result = Run(Without(sound, at, 100));
        Codes(result).ShouldBe(["marks-uneven"]);
        result.Warnings[0].Action.ShouldContain("longest stretch");
        result.Samples.ShouldBeInRange(5 * 333, 3900 - 333);
        result.UnevenLeftOut.ShouldBe(1);
        Math.Abs(result.DriftPercent.ShouldNotBeNull()).ShouldBeLessThan(0.2);
        result.Points[0].Amplitude.ShouldBe(3, 5 * result.Points[0].AmplitudeStandardError);
        Off(result.Points[0].Phase, -1.1).ShouldBeLessThan(5 * result.Points[0].PhaseStandardError.Radians);
    }

    [Fact]
    public void The_first_and_the_last_turn_can_be_uneven_too()
    {
        var sound = Signals.Spin(4000, 333.3, One, Two, 0.02, 4);
        foreach (var at in new[] { 300, 3600 })
        {
            Codes(Run(Without(sound, at, 100))).ShouldBe(["marks-uneven"]);
        }
    }

    [Fact]
    public void Where_no_stretch_is_long_enough_the_answer_is_not_to_be_trusted_and_no_drift_is_told()
    {
        var result = Run(Without(Without(Signals.Spin(3400, 333.3, One, Two, 0.02, 4), 2400, 100), 1100, 100));
        Codes(result).ShouldBe(["marks-uneven"]);
        result.Warnings[0].Action.ShouldContain("do not trust");
        result.DriftPercent.ShouldBeNull();
        result.UnevenLeftOut.ShouldBe(0);
        result.Samples.ShouldBe(3200);
    }

    [Fact]
    public void A_loose_object_is_told_from_the_even_turns_and_beside_extra_marks()
    {
        const double perTurn = 333.3;
        var sound = Signals.Spin(6000, perTurn, One, Two, 0.05, 7);
        double[] With(double[] of) => [.. of.Select((v, k) => v + (0.3 * Math.Cos((Math.Tau * k / perTurn) + (1.6 * k / 6000))))];
        var loose = new SpinRecording([.. sound.Transducers.Select(With)], sound.Index, sound.SampleRate, sound.Sense);
        Codes(Run(Without(loose, 1000, 100))).ShouldBe(["marks-uneven", "loose-object", "loose-object"]);
        Codes(Run(Without(sound, 1000, 100))).ShouldBe(["marks-uneven"]);

        var index = (double[])sound.Index.Clone();
        var up = Enumerable.Range(1500, 1000).First(k => index[k] > 0.5 && index[k - 1] < 0.5);
        index[up + 60] = 1;
        Codes(Run(new SpinRecording(loose.Transducers, index, sound.SampleRate, sound.Sense))).ShouldBe(["marks-extra", "loose-object", "loose-object"]);
    }

    [Theory]
    [InlineData(400, 0)]
    [InlineData(400, 0.06)]
    [InlineData(400, 0.5)]
    [InlineData(333.3, 3)]
    public void The_error_of_the_speed_covers_marks_between_two_samples(double perTurn, double spread)
    {
        // The turn is a whole number of samples, or nearly, or any: marks that all stand alike tell no scatter, and yet the speed is not known without error.
        var random = new Random(17);
        var (squares, least) = (0.0, double.PositiveInfinity);
        const int Spins = 80;
        for (var seed = 0; seed < Spins; seed++)
        {
            var turn = perTurn + (spread * (random.NextDouble() - 0.5));
            var result = Run(Signals.Spin(6000, turn, One, Two, 0.05, seed, start: random.NextDouble()));
            var truth = 60 * 2000 / turn;
            least = Math.Min(least, result.SpeedStandardError.RevolutionsPerMinute);
            squares += Math.Pow((result.Speed.RevolutionsPerMinute - truth) / result.SpeedStandardError.RevolutionsPerMinute, 2) / Spins;
        }

        least.ShouldBeGreaterThan(1e-3);
        squares.ShouldBeLessThan(2);
    }

    private static SpinRecording Without(SpinRecording of, int at, int lost)
    {
        double[] Cut(double[] samples) => [.. samples[..at], .. samples[(at + lost)..]];
        return new SpinRecording([.. of.Transducers.Select(Cut)], Cut(of.Index), of.SampleRate, of.Sense);
    }

    private static SpinResult Run(SpinRecording recording) => SpinAnalysis.Of(recording, 5).ShouldNotBeNull();

    private static IEnumerable<string> Codes(SpinResult result) => result.Warnings.Select(w => w.Code);

    private static double Off(Angle phase, double radians) => Math.Abs((WheelAngle.FromDegrees(phase.Degrees) - WheelAngle.FromRadians(radians)).Radians);
}
