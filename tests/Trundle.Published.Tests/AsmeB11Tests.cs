using Trundle.Engine.Fixings;

namespace Trundle.Published.Tests;

/// <summary>
/// ASME B1.1 tensile stress areas of unified threads (7/16-20 read; 3/4-16 read in Shigley Table 8-2; 1/2-20 and 9/16-18 implied by a chart that was
/// read; 5/8-18 from memory) and SAE J429 proof loads (120 ksi for grade 8 read; 85 ksi for grade 5 from memory).
/// </summary>
public class AsmeB11Tests
{
    [Theory]
    [InlineData("7/16-20", 0.1187)]
    [InlineData("1/2-20", 0.1599)]
    [InlineData("9/16-18", 0.203)]
    [InlineData("5/8-18", 0.256)]
    [InlineData("3/4-16", 0.373)]
    public void Stress_areas(string thread, double squareInches) =>
        ThreadDesignation.Read(thread).Value.StressArea().SquareInches.ShouldBe(squareInches, 0.001 * squareInches);

    [Theory]
    [InlineData("7/16-20", 14246, 10091)]
    [InlineData("1/2-20", 19194, 13596)]
    [InlineData("9/16-18", 24358, 17253)]
    [InlineData("5/8-18", 30715, 21756)]
    [InlineData("3/4-16", 44755, 31702)]
    public void Proof_loads(string thread, double grade8PoundsForce, double grade5PoundsForce)
    {
        var t = ThreadDesignation.Read(thread).Value;
        PropertyClass.Read("grade 8").Value.ProofLoad(t).Load.PoundsForce.ShouldBe(grade8PoundsForce, 1);
        PropertyClass.Read("grade 5").Value.ProofLoad(t).Load.PoundsForce.ShouldBe(grade5PoundsForce, 1);
    }

    // A fastener distributor's chart (read): grade 2, 75 % of proof, K = 0.20.
    [Theory]
    [InlineData("7/16-20", 4896, 35.7)]
    [InlineData("1/2-20", 6600, 55.0)]
    [InlineData("9/16-18", 8374, 78.5)]
    public void Torque_of_a_chart_clamp(string thread, double poundsForce, double poundForceFeet) =>
        NutFactor.Torque(Measures.Force.FromPoundsForce(poundsForce), 0.20, ThreadDesignation.Read(thread).Value.Diameter)
            .PoundForceFeet.ShouldBe(poundForceFeet, 0.06);

    // Appendix B with FED-STD-H28 (formula and internal limits from memory, external metric limits of ISO 965 read); the lengths are the reference's own reckoning.
    [Theory]
    [InlineData("M12x1.25", 9.70, 7.8)]
    [InlineData("M12x1.5", 9.24, 6.2)]
    [InlineData("M14x1.5", 11.00, 7.3)]
    [InlineData("M20x1.5", 16.28, 10.9)]
    [InlineData("M22x1.5", 18.04, 12.0)]
    [InlineData("7/16-20", 8.81, 6.9)]
    [InlineData("1/2-20", 10.16, 8.0)]
    [InlineData("9/16-18", 11.43, 8.1)]
    public void Least_engagement_against_stripping(string thread, double millimetres, double turns)
    {
        var t = ThreadDesignation.Read(thread).Value;
        var least = LeastEngagement.AgainstStripping(t)!.Value;
        least.Millimetres.ShouldBe(millimetres, 0.02);
        (least / t.Pitch).ShouldBe(turns, 0.06);
    }

    [Fact]
    public void A_thread_whose_limits_of_size_are_not_carried_has_no_floor_of_its_own() =>
        LeastEngagement.AgainstStripping(ThreadDesignation.Read("M14x2").Value).ShouldBeNull();
}
