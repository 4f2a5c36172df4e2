using Trundle.Engine.Fitment;
using Trundle.Engine.Rotation;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using static Trundle.Engine.Tests.Rotation.Invented;

namespace Trundle.Engine.Tests.Rotation;

public class RotationPropertyTests
{
    /// <summary>Invented vehicles, the same every time: any mix of directional, asymmetric, side told or not, sizes, spare.</summary>
    private static IEnumerable<FittedVehicle> Many()
    {
        var random = new Random(20260314);
        for (var i = 0; i < 2000; i++)
        {
            var staggered = random.Next(4) == 0;
            var told = random.Next(2) == 0;
            var vehicle = random.Next(5) == 0
                ? Pickup(Change)
                : Car((Drive)random.Next(3), rear: staggered ? "225/50 R16 92V" : "205/55 R16 91V", spare: random.Next(2) == 0 ? "205/55 R16 91V" : null, each: Change);
            yield return vehicle;

            FittedTyre Change(FittedTyre tyre)
            {
                var directional = random.Next(2) == 0;
                return tyre with
                {
                    Directional = directional,
                    Asymmetric = random.Next(4) == 0,
                    OuterFaceOut = true,
                    MountedFor = directional && told ? (Facing.TurningSide(At(tyre.Id!)) == Side.Left ? MountedFor.Left : MountedFor.Right) : null,
                    ConstructionRead = random.Next(12) == 0 ? Engine.Sidewall.Construction.Diagonal : null,
                };
            }
        }
    }

    [Fact]
    public void Order_rotations_bring_the_whole_vehicle_back_as_it_was()
    {
        var tried = 0;
        foreach (var vehicle in Many().Where(v => !v.Fitted.Any(a => a.Tyre is { Directional: true, Asymmetric: true } or { ConstructionRead: not null })))
        {
            foreach (var verdict in RotationPlan.For(vehicle).Value.Verdicts.Where(v => v.AllowedWithRemounting && v.Pattern.Moves.All(m => !m.From.IsSpare)))
            {
                var at = vehicle;
                for (var i = 0; i < verdict.Pattern.Order; i++)
                {
                    at = RotationPlan.Apply(at, verdict.Pattern).Value;
                }

                at.Fitted.Select(a => (a.Position, a.Tyre)).ShouldBe(vehicle.Fitted.Select(a => (a.Position, a.Tyre)), ignoreOrder: true);
                tried++;
            }
        }

        tried.ShouldBeGreaterThan(1000);
    }

    [Fact]
    public void After_a_rotation_every_directional_tyre_that_turned_rightly_still_does()
    {
        var tried = 0;
        foreach (var vehicle in Many().Where(v => v.Fitted.Any(a => a.Tyre is { Directional: true, MountedFor: not null })))
        {
            if (RotationPlan.For(vehicle).Value.Chosen is not { } chosen)
            {
                continue;
            }

            var after = RotationPlan.Apply(vehicle, chosen.Pattern).Value;
            foreach (var assembly in after.Fitted.Where(a => !a.Position.IsSpare && a.Tyre is { Directional: true, MountedFor: not null }))
            {
                Facing.TurnsItsWay(assembly.Position, assembly.Tyre!.MountedFor!.Value).ShouldBeTrue();
                tried++;
            }

            foreach (var assembly in after.Fitted.Where(a => a.Tyre is { Asymmetric: true } && after.Fitted.All(f => f.Position.Dual == DualPlace.Single)))
            {
                assembly.Tyre!.OuterFaceOut.ShouldBe(true);
            }
        }

        tried.ShouldBeGreaterThan(300);
    }

    [Fact]
    public void No_chosen_rotation_mixes_an_axle_or_puts_radial_in_front()
    {
        var mixed = 0;
        foreach (var vehicle in Many())
        {
            if (RotationPlan.For(vehicle).Value.Chosen is not { } chosen)
            {
                mixed++;
                continue;
            }

            var after = RotationPlan.Apply(vehicle, chosen.Pattern).Value;
            var front = after.OnAxle(1).Select(a => a.Tyre!.Construction).Distinct().ToList();
            var rear = after.OnAxle(2).Select(a => a.Tyre!.Construction).Distinct().ToList();
            front.Count.ShouldBe(1);
            rear.Count.ShouldBe(1);
            (front[0] == Engine.Sidewall.Construction.Radial && rear[0] != Engine.Sidewall.Construction.Radial).ShouldBeFalse();
        }

        mixed.ShouldBeInRange(100, 1900);
    }

    [Fact]
    public void Depths_go_with_the_tyre_and_inner_and_outer_change_where_it_stands_the_other_way_round()
    {
        TreadDepths Depths(double inner, double outer) => new([Length.FromMillimetres(inner)], [], [Length.FromMillimetres(outer)]);
        var car = Car(Drive.Front).With("2R", a => a with { Tread = Depths(3, 5) });
        RotationPlan.Apply(car, "forward cross").Value.At(At("1L"))!.Tread!.Inner[0].Millimetres.ShouldBe(3);
        var pickup = Pickup().With("2Lo", a => a with { Tread = Depths(3, 5) });
        RotationPlan.Apply(pickup, "dual rear, fronts differ").Value.At(At("2Ri"))!.Tread!.Inner[0].Millimetres.ShouldBe(5);
    }

    [Fact]
    public void None_leaves_all_as_it_is_and_a_refused_pattern_is_a_problem()
    {
        var car = Car(Drive.Front, rear: "225/50 R16 92V");
        RotationPlan.Apply(car, "none").Value.ShouldBeSameAs(car);
        RotationPlan.Apply(car, "forward cross").Problem!.Code.ShouldBe("rotation-refused");
        RotationPlan.Apply(car, "1L<>1R").Value.At(At("1R"))!.Tyre!.Id.ShouldBe("1L");
    }
}
