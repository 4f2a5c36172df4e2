using Trundle.Engine.Findings;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Uniformity;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// T. B. Rhyne, Development of a vertical stiffness relationship for belted radial tires, Tire Science and Technology 33(3) 2005, 136-155 (the abstract
/// was read: the formula exists; its coefficients are from memory). The values are the formula's, worked apart from this code.
/// </summary>
public class RhyneTests
{
    [Theory]
    [InlineData("205/55 R16", 200, 211.7)]
    [InlineData("205/55 R16", 220, 229.5)]
    [InlineData("205/55 R16", 250, 256.2)]
    [InlineData("195/65 R15", 220, 220.3)]
    [InlineData("225/45 R17", 220, 244.2)]
    public void Stiffness_by_size_and_pressure(string size, double kilopascals, double newtonsPerMillimetre)
    {
        var estimate = RadialStiffness.Estimate(MarkingReader.Read(size + " 91V").Value.Size, GaugePressure.FromKilopascals(kilopascals)).ShouldNotBeNull();
        estimate.Stiffness.NewtonsPerMillimetre.ShouldBe(newtonsPerMillimetre, 0.05);
        estimate.Source.Status.ShouldBe(SourceStatus.FromMemory);
    }

    [Fact]
    public void Half_a_millimetre_at_a_round_stiffness()
    {
        var force = RadialStiffness.ForceOf(HarmonicVector<Length>.At(Length.FromMillimetres(0.5), WheelAngle.FromDegrees(33)), Stiffness.FromNewtonsPerMillimetre(200));
        force.Amount.Newtons.ShouldBe(100, 1e-9);
        force.HighPoint.Degrees.ShouldBe(33, 1e-9);
    }

    [Fact]
    public void A_size_that_tells_too_little_has_no_estimate() =>
        RadialStiffness.Estimate(MarkingReader.Read("31x10.50 R15 LT 109Q").Value.Size, GaugePressure.FromKilopascals(220)).ShouldBeNull();
}
