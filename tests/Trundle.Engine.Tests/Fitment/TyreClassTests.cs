using Trundle.Engine.Condition;
using Trundle.Engine.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Fitment;

/// <summary>The class that a tyre is made for against the vehicle's, and a cut that has one answer.</summary>
public sealed class TyreClassTests
{
    [Theory]
    [InlineData("195/65 R15 91H", "motorcycle", "use.class")]
    [InlineData("LT245/75 R16 120/116S", "motorcycle", "use.class")]
    [InlineData("5.00-16 69S", "motorcycle", "use.class-doubt")]
    [InlineData("120/70 ZR17 M/C 58W", "motorcycle", null)]
    [InlineData("120/70 R17 58W", "motorcycle", null)]
    [InlineData("120/70 ZR17 M/C 58W", "car", "use.class")]
    [InlineData("120/70 R17 58W", "car", "use.class-doubt")]
    [InlineData("ST205/75 R15 LRD", "car", "use.class")]
    [InlineData("ST205/75 R15 LRD", "trailer", null)]
    [InlineData("205/55 R16 91V", "goods over 3500 kg", "use.class-heavy")]
    [InlineData("205/55 R16 91V", "bus", "use.class-heavy")]
    [InlineData("205/55 R16 91V", "car", null)]
    [InlineData("295/80 R22.5 152/148M", "goods over 3500 kg", null)]
    [InlineData("295/80 R22.5 152/148M", "car", "use.class-doubt")]
    public void A_tyre_of_another_class_is_found(string marking, string vehicleClass, string? rule)
    {
        var vehicle = new Vehicle { VehicleClass = vehicleClass, Axles = [new Axle()] };
        var found = FitmentCheck.Run(new FittedVehicle(vehicle, [Bay.On("1L", marking)], null, null)).Findings;
        found.SingleOrDefault(f => f.Rule.StartsWith("use.class", StringComparison.Ordinal))?.Rule.ShouldBe(rule);
        found.Any(f => f.Rule.StartsWith("use.class", StringComparison.Ordinal)).ShouldBe(rule is not null);
    }

    [Theory]
    [InlineData("goods over 3500 kg", "205/75 R16 100T", "205/75 R16 100T")]
    [InlineData("motorcycle", "195/65 R15 91H", "195/65 R15 91H")]
    public void A_placard_of_the_same_class_answers_it(string vehicleClass, string placard, string marking)
    {
        var vehicle = new Vehicle { VehicleClass = vehicleClass, Axles = [Bay.Axle(placard)] };
        FitmentCheck.Run(new FittedVehicle(vehicle, [Bay.On("1L", marking)], null, null)).Findings.ShouldNotContain(f => f.Rule.StartsWith("use.class", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(40, 1.0, null, "damage.cut.large")]
    [InlineData(40, 1.0, false, "damage.cut.shallow")]
    [InlineData(40, 2.0, null, "damage.cut.deep")]
    [InlineData(10, 1.0, null, "damage.cut.shallow")]
    [InlineData(10, 2.0, null, "damage.cut.deep")]
    public void A_cut_has_one_answer(double longMillimetres, double deepMillimetres, bool? cord, string rule)
    {
        var cut = new Damage(DamageKind.Cut, DamagePlace.Sidewall, Length.FromMillimetres(longMillimetres)) { Depth = Length.FromMillimetres(deepMillimetres), CordShows = cord };
        foreach (var rules in Bay.EveryRuleSet)
        {
            ConditionCheck.Run(Bay.Four(rules).With("1L", a => a with { Damage = [cut] })).Findings.Single(f => f.Rule.StartsWith("damage.", StringComparison.Ordinal)).Rule.ShouldBe(rule);
        }
    }
}
