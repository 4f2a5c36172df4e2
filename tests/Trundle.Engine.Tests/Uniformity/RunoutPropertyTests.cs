using Trundle.Engine.Uniformity;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Uniformity;

/// <summary>What must hold of any trace.</summary>
public class RunoutPropertyTests
{
    [Fact]
    public void Turning_all_readings_by_one_step_turns_the_high_point_and_nothing_else()
    {
        var random = new Random(3);
        for (var round = 0; round < 300; round++)
        {
            var n = random.Next(8, 30);
            double[] v = [.. Enumerable.Range(0, n).Select(_ => random.NextDouble())];
            double[] stepped = [.. v.Skip(n - 1).Concat(v.Take(n - 1))];
            var (one, other) = (RunoutAnalysis.Of(Dial.Even(v), null, null).Found(), RunoutAnalysis.Of(Dial.Even(stepped), null, null).Found());
            for (var k = 0; k < one.Harmonics.Count; k++)
            {
                other.Harmonics[k].Amplitude.Millimetres.ShouldBe(one.Harmonics[k].Amplitude.Millimetres, 1e-12);
                Dial.Apart(other.Harmonics[k].Phase.Degrees, one.Harmonics[k].Phase.Degrees + ((k + 1) * 360.0 / n)).ShouldBeLessThan(1e-6 / Math.Max(1e-3, one.Harmonics[k].Amplitude.Millimetres));
            }
        }
    }

    [Fact]
    public void A_pure_eccentric_shows_twice_its_eccentricity_and_the_dials_zero_does_not_matter()
    {
        for (var zero = -5.0; zero <= 5; zero += 2.5)
        {
            var found = RunoutAnalysis.Of(Dial.At(Dial.Around(36), d => zero + (0.35 * Dial.Wave(1, d, 200))), null, null).Found();
            found.First.Amount.Millimetres.ShouldBe(0.35, 1e-12);
            found.First.HighPoint.Degrees.ShouldBe(200, 1e-9);
            found.PeakToPeak.Millimetres.ShouldBe(0.70, 1e-12);
            found.PeakToPeakAfterFirst.Millimetres.ShouldBe(0, 1e-12);
            found.Mean.Millimetres.ShouldBe(zero, 1e-12);
        }
    }

    [Fact]
    public void Orders_are_given_back_at_uneven_places_where_the_model_holds_them()
    {
        var random = new Random(5);
        for (var round = 0; round < 200; round++)
        {
            double[] at = [.. Enumerable.Range(0, 13).Select(i => (i * 27.0) + (18 * random.NextDouble()))];
            var (a1, a2, p1, p2) = (random.NextDouble() + 0.1, random.NextDouble() + 0.1, random.NextDouble() * 360, random.NextDouble() * 360);
            var found = RunoutAnalysis.Of(Dial.At(at, d => (a1 * Dial.Wave(1, d, p1)) + (a2 * Dial.Wave(2, d, p2))), 2, null).Found();
            found.Harmonics[0].Amplitude.Millimetres.ShouldBe(a1, 1e-9);
            found.Harmonics[1].Amplitude.Millimetres.ShouldBe(a2, 1e-9);
            Dial.Apart(found.Harmonics[0].Phase.Degrees, p1).ShouldBeLessThan(1e-6);
            Dial.Apart(found.Harmonics[1].Phase.Degrees, p2).ShouldBeLessThan(1e-6);
        }
    }

    [Theory]
    [InlineData(3, new[] { 2, 4, 5 })]
    [InlineData(4, new[] { 3, 5 })]
    [InlineData(5, new[] { 4, 6 })]
    [InlineData(6, new[] { 5 })]
    [InlineData(7, new[] { 6 })]
    [InlineData(8, new int[0])]
    [InlineData(12, new int[0])]
    public void An_order_is_taken_for_the_first_where_it_and_one_are_alike_at_every_place(int places, int[] orders)
    {
        var found = RunoutAnalysis.Of(Dial.At(Dial.Around(places), d => Dial.Wave(1, d, 10)), null, null).Found();
        found.TakenForFirst.Select(t => t.Order).ShouldBe(orders);
        found.Harmonics[0].MayBeOrder.ShouldBe(places - 1);

        // What it says is so: a pure wave of that order comes back as the first, whole.
        foreach (var order in orders)
        {
            RunoutAnalysis.Of(Dial.At(Dial.Around(places), d => Dial.Wave(order, d, 33)), null, null).Found().First.Amount.Millimetres.ShouldBe(1, 1e-9);
        }
    }

    [Theory]
    [InlineData(12)]
    [InlineData(24)]
    public void One_bad_reading_is_found_and_the_others_speak(int places)
    {
        var random = new Random(places);
        var foundAll = 0;
        for (var round = 0; round < 100; round++)
        {
            var bad = random.Next(places);
            double[] v = [.. Dial.Around(places).Select(d => (0.4 * Dial.Wave(1, d, 70)) + (0.1 * Dial.Wave(2, d, 10)) + (0.01 * (random.NextDouble() - 0.5)))];
            v[bad] += 0.5;
            var found = RunoutAnalysis.Of(Dial.Even(v), null, null).Found();
            if (found.Suspect?.Index == bad)
            {
                foundAll++;
                found.Suspect.FirstHarmonicWithout.Amount.Millimetres.ShouldBe(0.4, 0.02);
                (found.Suspect.Reading.Value - found.Suspect.Expected).Millimetres.ShouldBe(0.5, 0.08);
            }
        }

        foundAll.ShouldBeGreaterThan(95);
    }

    [Fact]
    public void Sound_readings_are_seldom_suspected()
    {
        var random = new Random(17);
        var suspected = 0;
        for (var round = 0; round < 2000; round++)
        {
            double[] v = [.. Dial.Around(16).Select(d => (0.4 * Dial.Wave(1, d, 70)) + (0.02 * Normal(random)))];
            suspected += RunoutAnalysis.Of(Dial.Even(v), 3, null).Found().Suspect is null ? 0 : 1;
        }

        // The chance is set to one in a hundred; three standard deviations of 2000 rounds about it.
        suspected.ShouldBeInRange(7, 34);
    }

    [Fact]
    public void An_exact_wave_with_one_bad_reading_is_no_division_by_nothing()
    {
        double[] v = [.. Dial.Around(16).Select(d => 0.4 * Dial.Wave(1, d, 70))];
        RunoutAnalysis.Of(Dial.Even(v), 2, null).Found().Suspect.ShouldBeNull();
        v[5] += 0.2;
        var suspect = RunoutAnalysis.Of(Dial.Even(v), 2, null).Found().Suspect.ShouldNotBeNull();
        suspect.Index.ShouldBe(5);
        suspect.FirstHarmonicWithout.Amount.Millimetres.ShouldBe(0.4, 1e-9);
        RunoutAnalysis.Of(Dial.Even(0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3), null, null).Found().PeakToPeak.Millimetres.ShouldBe(0, 1e-15);
    }

    [Fact]
    public void Places_that_cannot_tell_are_refused()
    {
        RunoutAnalysis.Of(Dial.Even(1, 2), null, null).ShouldBeOfType<RunoutOutcome.TooFewPlaces>().Needed.ShouldBe(3);
        RunoutAnalysis.Of(Dial.At([10, 10, 10, 200], d => d), null, null).ShouldBeOfType<RunoutOutcome.TooFewPlaces>();
        RunoutAnalysis.Of(Dial.Even(1, 2, 3, 4, 5), 3, null).ShouldBeOfType<RunoutOutcome.TooFewPlaces>().Needed.ShouldBe(7);
        RunoutAnalysis.Of(Dial.At([10, 10.01, 10.02, 10.03], d => d), null, null).ShouldBeOfType<RunoutOutcome.PlacesDoNotTell>().Orders.ShouldBe(1);
        RunoutAnalysis.Of(Dial.At([0, 30, 60, 90], d => d), null, null).Found().Crowding.ShouldBeGreaterThan(3);
    }

    [Fact]
    public void The_match_of_the_outcome_goes_each_way()
    {
        string Case(RunoutOutcome o) => o.Match(_ => "found", _ => "few", _ => "alike");
        Case(RunoutAnalysis.Of(Dial.Even(1, 2, 3, 4), null, null)).ShouldBe("found");
        Case(RunoutAnalysis.Of(Dial.Even(1), null, null)).ShouldBe("few");
        Case(RunoutAnalysis.Of(Dial.At([10, 10.01, 10.02], d => d), null, null)).ShouldBe("alike");
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
