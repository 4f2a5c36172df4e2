using Trundle.Engine.Fixings;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// Shigley, Mechanical Engineering Design, 9th ed. Example 8-3, pp. 439-440 (statement read, answers recomputed): 3/4-16 UNF, 25 kip,
/// f = f_c = 0.15. Tables 8-13 and 8-14, pp. 438-439 (read): the clamps that Blake and Kurtz measured at 90 N·m on about M12x1.25.
/// </summary>
public class ShigleyTests
{
    private static readonly ThreadDesignation ThreeQuarter = ThreadDesignation.Read("3/4-16 UNF").Value;

    [Fact]
    public void Example_8_3_by_the_short_form() =>
        NutFactor.Torque(Force.FromPoundsForce(25_000), 0.20, ThreeQuarter.Diameter).PoundForceInches.ShouldBe(3750, 0.5);

    [Fact]
    public void Example_8_3_by_the_long_form()
    {
        var k = NutFactor.TextbookForm(ThreeQuarter, 0.15, 0.15);
        k.ShouldBe(0.18939, 0.000005);
        NutFactor.Torque(Force.FromPoundsForce(25_000), k, ThreeQuarter.Diameter).PoundForceInches.ShouldBe(3551, 0.5);
    }

    [Fact]
    public void Our_own_long_form_differs_from_the_textbook_only_by_the_small_angle_step()
    {
        // A collar of mean diameter 1.25 d, as the textbook takes it: 0.625 d as a radius.
        var ours = NutFactor.LongForm(ThreeQuarter, new SeatContact(ThreeQuarter.Diameter * 0.625, 1), 0.15, 0.15).NutFactor(ThreeQuarter.Diameter);
        ours.ShouldBe(NutFactor.TextbookForm(ThreeQuarter, 0.15, 0.15), 0.002);
    }

    [Fact]
    public void With_friction_0_15_any_size_has_a_nut_factor_near_0_20()
    {
        foreach (var thread in new[] { "1/2-20", "9/16-18", "3/4-16", "M12x1.5", "M14x1.5", "M22x1.5" })
        {
            NutFactor.TextbookForm(ThreadDesignation.Read(thread).Value, 0.15, 0.15).ShouldBe(0.20, 0.015, thread);
        }
    }

    [Theory]
    [InlineData(34.26, 0.2189)] // unlubricated, mean of 20
    [InlineData(23.6, 0.318)] // unlubricated, lowest
    [InlineData(42.7, 0.176)] // unlubricated, highest
    [InlineData(34.18, 0.2194)] // lubricated, mean of 10
    [InlineData(30.3, 0.248)] // lubricated, lowest
    [InlineData(40.5, 0.185)] // lubricated, highest
    public void Nut_factor_of_measured_clamps(double kilonewtons, double k) =>
        NutFactor.Measured(Torque.FromNewtonMetres(90), Force.FromKilonewtons(kilonewtons), Length.FromMillimetres(12)).ShouldBe(k, 0.0006);
}
