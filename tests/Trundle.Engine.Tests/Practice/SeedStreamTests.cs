using Trundle.Engine.Practice;
using Trundle.Engine.Practice.Bench;

namespace Trundle.Engine.Tests.Practice;

/// <summary>The generator against published numbers, and wheels that never change.</summary>
public sealed class SeedStreamTests
{
    [Fact]
    public void Seed_1234567_gives_the_published_numbers_of_SplitMix64()
    {
        // The five numbers that the public task "Pseudo-random numbers/Splitmix64" of Rosetta Code prints for this seed (read).
        var stream = new SeedStream(1234567);
        Enumerable.Range(0, 5).Select(_ => stream.Next()).ShouldBe([6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821]);
    }

    [Fact]
    public void Whole_numbers_stay_within_their_bounds_and_come_evenly()
    {
        var stream = new SeedStream(7);
        var counts = new int[6];
        for (var i = 0; i < 60_000; i++)
        {
            counts[stream.Between(-2, 3) + 2]++;
        }

        // 10 000 each, with a standard deviation of 91.
        counts.ShouldAllBe(c => Math.Abs(c - 10_000) < 500);
        stream.Between(5, 5).ShouldBe(5);
        stream.Shuffled([1, 2, 3, 4, 5]).Order().ShouldBe([1, 2, 3, 4, 5]);
    }

    [Fact]
    public void Purposes_and_numbers_have_streams_of_their_own()
    {
        var first = Enumerable.Range(0, 100).Select(i => SeedStream.Of(9, "hand", i).Next()).ToList();
        first.Distinct().Count().ShouldBe(100);
        SeedStream.Of(9, "clamping").Next().ShouldNotBe(SeedStream.Of(9, "hand").Next());
        SeedStream.Of(9, "hand", 3).Next().ShouldBe(first[3]);
    }

    [Fact]
    public void A_seed_gives_the_same_wheel_again_and_another_seed_another()
    {
        foreach (var level in Enum.GetValues<PracticeLevel>())
        {
            var (a, b, c) = (PracticeWheels.Of(42, level), PracticeWheels.Of(42, level), PracticeWheels.Of(43, level));
            (a.Gauged, a.Bore, a.Mass, a.Tyre, a.Wheel, a.Gains, a.LeftAt).ShouldBe((b.Gauged, b.Bore, b.Mass, b.Tyre, b.Wheel, b.Gains, b.LeftAt));
            (a.Gauged, a.Bore, a.Tyre).ShouldNotBe((c.Gauged, c.Bore, c.Tyre));
        }
    }
}
