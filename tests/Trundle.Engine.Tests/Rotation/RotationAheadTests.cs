using Trundle.Engine.Rotation;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using static Trundle.Engine.Tests.Rotation.Invented;

namespace Trundle.Engine.Tests.Rotation;

public class RotationAheadTests
{
    private static RotationAhead Ahead(string pattern, double front, double rear, double intervalKm, double aheadKm, double depth = 8.0)
    {
        Position[] positions = [At("1L"), At("1R"), At("2L"), At("2R")];
        return RotationAhead.For(
            RotationPattern.Named(pattern)!,
            new WearOutlook(
                positions.ToDictionary(p => p, _ => Length.FromMillimetres(depth)),
                positions.ToDictionary(p => p, p => Length.FromMillimetres(p.Axle == 1 ? front : rear)),
                Length.FromKilometres(intervalKm),
                Length.FromMillimetres(1.6)),
            Length.FromKilometres(aheadKm));
    }

    [Fact]
    public void Linear_wear_with_and_without_rotation()
    {
        // Computed in the reference: usable 6.4 mm, front 0.14, rear 0.07 mm per 1 000 km, swapped every 10 000 km.
        var ahead = Ahead("front-to-rear", 0.14, 0.07, 10_000, 60_000);
        ahead.Unrotated!.Value.Kilometres.ShouldBe(45_714, 0.5);
        ahead.FirstReplacement!.Value.Kilometres.ShouldBe(60_714, 0.5);
        ahead.AtFirstReplacement.Values.Max(d => d.Millimetres).ShouldBe(0.05, 1e-9);
        ahead.Schedule.Select(s => s.After.Kilometres).ShouldBe([0, 10_000, 20_000, 30_000, 40_000, 50_000, 60_000]);
        ahead.Schedule[0].Depths[At("2L")].Millimetres.ShouldBe(8, 1e-9);
        ahead.Schedule[1].Depths[At("2L")].Millimetres.ShouldBe(6.6, 1e-9);
    }

    [Fact]
    public void Todays_rotation_counts()
    {
        // Front 4.0 mm at 0.2, rear 8.0 mm at 0.1: left alone the front is done after 12 000 km; crossed today it has 24 000 km at the rear.
        Position[] positions = [At("1L"), At("1R"), At("2L"), At("2R")];
        var ahead = RotationAhead.For(
            RotationPattern.Named("front-to-rear")!,
            new WearOutlook(
                positions.ToDictionary(p => p, p => Length.FromMillimetres(p.Axle == 1 ? 4 : 8)),
                positions.ToDictionary(p => p, p => Length.FromMillimetres(p.Axle == 1 ? 0.2 : 0.1)),
                Length.FromKilometres(30_000),
                Length.FromMillimetres(1.6)),
            Length.FromKilometres(1000));
        ahead.Unrotated!.Value.Kilometres.ShouldBe(12_000, 1e-6);
        ahead.FirstReplacement!.Value.Kilometres.ShouldBe(24_000, 1e-6);
        ahead.Schedule.ShouldHaveSingleItem().Depths[At("2R")].Millimetres.ShouldBe(4, 1e-9);
    }

    [Theory]
    [InlineData("forward cross")]
    [InlineData("rearward cross")]
    [InlineData("X")]
    public void Every_pattern_that_changes_axles_gives_the_same_for_equal_sides(string pattern) =>
        Ahead(pattern, 0.12, 0.09, 10_000, 1000).FirstReplacement!.Value.Kilometres.ShouldBe(60_833, 0.5);

    [Fact]
    public void The_closed_form_of_a_long_run_is_approached_by_short_intervals() =>
        Ahead("forward cross", 0.14, 0.07, 100, 1000).FirstReplacement!.Value.Kilometres.ShouldBe(2 * 6.4 / 0.21 * 1000, 100);

    [Fact]
    public void A_worn_tyre_is_replaced_now_and_none_wears_without_a_rate()
    {
        Ahead("X", 0.1, 0.1, 10_000, 50_000, depth: 1.6).FirstReplacement!.Value.Kilometres.ShouldBe(0);
        var never = Ahead("X", 0, 0, 10_000, 50_000);
        never.FirstReplacement.ShouldBeNull();
        never.Unrotated.ShouldBeNull();
        never.Schedule.Count.ShouldBe(6);
    }
}
