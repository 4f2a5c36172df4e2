using Trundle.Engine.Fitment;
using Trundle.Engine.Pressure;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Pressure;

/// <summary>MAX LOAD on a sidewall limits the load, whatever the load index says.</summary>
public sealed class MouldedLoadTests
{
    private static readonly Marking Marking = MarkingReader.Read("195/65 R15 91H").Value;

    private static LoadPressure For(double kilograms, double? moulded) => LoadPressure.For(
        Marking, null, Mass.FromKilograms(kilograms), false, "car", RuleSet.EuropeanUnion, new MouldedLoad(moulded is { } m ? Mass.FromKilograms(m) : null, false));

    [Fact]
    public void At_its_moulded_load_a_tyre_needs_the_pressure_of_its_full_load_and_above_it_there_is_none()
    {
        var full = For(615, null).ShouldBeOfType<LoadPressure.Found>();
        var moulded = For(550, 550).ShouldBeOfType<LoadPressure.Found>();
        moulded.Pressure.Pressure.Kilopascals.ShouldBe(full.Pressure.Pressure.Kilopascals, 1e-9);
        moulded.Capacity.Kilograms.ShouldBe(550, 1e-9);
        For(551, 550).ShouldBeOfType<LoadPressure.Overloaded>().Capacity.Kilograms.ShouldBe(550, 1e-9);
        For(551, null).ShouldBeOfType<LoadPressure.Found>();
        For(500, 700).ShouldBeOfType<LoadPressure.Found>().Pressure.ShouldBe(For(500, null).ShouldBeOfType<LoadPressure.Found>().Pressure, "a moulded load above the load index changes nothing");
    }

    [Fact]
    public void The_words_of_the_sidewall_reach_the_plan()
    {
        var car = new Vehicle { Axles = [new Axle { Load = Mass.FromKilograms(1120) }] };
        FittedVehicle With(params string[] marks) => new(car, [new Assembly { Position = Position.Read("1L").Value, Tyre = new FittedTyre { Marking = Marking, Marks = marks } }], RuleSet.EuropeanUnion, null);
        var conditions = new PressureConditions(null, null, null, null, false, RuleSet.EuropeanUnion);
        PressurePlan.For(With("MAX LOAD 550 KG (1213 LBS)"), conditions).Positions[0].Cold.Case.ShouldBe(ColdPressureCase.Overloaded);
        PressurePlan.For(With("MAX LOAD DUAL 500 KG"), conditions).Positions[0].Cold.Case.ShouldNotBe(ColdPressureCase.Overloaded);
        PressurePlan.For(With(), conditions).Positions[0].Cold.Case.ShouldNotBe(ColdPressureCase.Overloaded);
    }
}
