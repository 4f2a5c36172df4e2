using Trundle.Engine.Fixings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>NASA-STD-5020 preload uncertainty with a torque wrench, as restated in J. Failure Analysis and Prevention 2019, eqs 1-2 (read): 35 % unlubricated, 25 % lubricated, F = (1 ∓ G)·T/(K·D).</summary>
public class NasaStd5020Tests
{
    [Theory]
    [InlineData(ThreadCondition.Dry, 29.79, 61.88)]
    [InlineData(ThreadCondition.Oiled, 34.38, 57.29)]
    public void Band_of_110_newton_metres_on_M12_at_K_0_20(ThreadCondition condition, double low, double high)
    {
        var range = ClampRange.Of(Torque.FromNewtonMetres(110), ThreadDesignation.Read("M12x1.5").Value, SeatShape.Flat, condition, 0.20);
        range.Nominal.Nominal.Kilonewtons.ShouldBe(45.83, 0.005);
        range.Low.Kilonewtons.ShouldBe(low, 0.006);
        range.High.Kilonewtons.ShouldBe(high, 0.006);
    }
}
