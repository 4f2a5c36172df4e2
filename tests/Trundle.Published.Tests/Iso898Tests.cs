using Trundle.Engine.Fixings;

namespace Trundle.Published.Tests;

/// <summary>
/// ISO 898-1, stress areas and proof loads. Read in two reprints: the coarse rows; from memory: the fine rows. The engine computes from the exact
/// area, the standard rounds the area first: areas agree within 0.5 %, proof loads within 0.7 %.
/// </summary>
public class Iso898Tests
{
    [Theory]
    [InlineData("M12x1.75", 84.3)] // read
    [InlineData("M14x2", 115)] // read
    [InlineData("M20x2.5", 245)] // read
    [InlineData("M22x2.5", 303)] // read
    [InlineData("M12x1.25", 92.1)] // from memory
    [InlineData("M12x1.5", 88.1)] // from memory
    [InlineData("M14x1.5", 125)] // from memory
    [InlineData("M20x1.5", 272)] // from memory
    [InlineData("M22x1.5", 333)] // from memory
    public void Stress_areas(string thread, double squareMillimetres) =>
        ThreadDesignation.Read(thread).Value.StressArea().SquareMillimetres.ShouldBe(squareMillimetres, 0.005 * squareMillimetres);

    [Theory]
    [InlineData("M12x1.75", 48.9, 70.0, 81.8)] // read
    [InlineData("M14x2", 66.7, 95.5, 112)] // read
    [InlineData("M20x2.5", 147, 203, 238)] // read
    [InlineData("M22x2.5", 182, 252, 294)] // read
    [InlineData("M12x1.25", 53.4, 76.4, 89.3)] // from memory
    [InlineData("M12x1.5", 51.1, 73.1, 85.5)] // from memory
    [InlineData("M14x1.5", 72.5, 104, 121)] // from memory
    [InlineData("M20x1.5", 163, 226, 264)] // from memory
    [InlineData("M22x1.5", 200, 276, 323)] // from memory
    public void Proof_loads(string thread, double class88, double class109, double class129)
    {
        var t = ThreadDesignation.Read(thread).Value;
        foreach (var (name, kilonewtons) in new[] { ("8.8", class88), ("10.9", class109), ("12.9", class129) })
        {
            PropertyClass.Read(name).Value.ProofLoad(t).Load.Kilonewtons.ShouldBe(kilonewtons, 0.007 * kilonewtons, $"{thread} {name}");
        }
    }

    // ISO 724 diameters, computed in the reference notes from the same coefficients (from memory) to three decimals.
    [Theory]
    [InlineData("M12x1.25", 11.188, 10.466, 10.647, 2.037)]
    [InlineData("M12x1.5", 11.026, 10.160, 10.376, 2.480)]
    [InlineData("M14x1.5", 13.026, 12.160, 12.376, 2.099)]
    [InlineData("M22x1.5", 21.026, 20.160, 20.376, 1.301)]
    public void Diameters_and_lead(string thread, double pitchDiameter, double minor, double nutMinor, double leadDegrees)
    {
        var t = ThreadDesignation.Read(thread).Value;
        t.PitchDiameter().Millimetres.ShouldBe(pitchDiameter, 0.0006);
        t.MinorDiameter().Millimetres.ShouldBe(minor, 0.0006);
        t.NutMinorDiameter().Millimetres.ShouldBe(nutMinor, 0.0006);
        t.LeadAngle().Degrees.ShouldBe(leadDegrees, 0.0006);
    }
}
