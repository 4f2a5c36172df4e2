using Trundle.Engine.Fixings;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// VDI 2230 (2001), fine-thread table of assembly preload and tightening torque at 90 % of yield, as reprinted by a fastener distributor, p. 685
/// (read). Bearing faces: ISO 273 medium holes and ISO 4014 heads. Clamp within 0.21 %, torque within 0.55 % as recomputed for the reference,
/// plus half a unit of the printed last digit.
/// </summary>
public class Vdi2230Tests
{
    public static TheoryData<string, double, double, double, string, double, double> Table => new()
    {
        { "M12x1.25", 16.63, 13.5, 0.10, "8.8", 49.1, 79 }, { "M12x1.25", 16.63, 13.5, 0.10, "10.9", 72.1, 116 }, { "M12x1.25", 16.63, 13.5, 0.10, "12.9", 84.4, 135 },
        { "M12x1.25", 16.63, 13.5, 0.12, "8.8", 48.0, 90 }, { "M12x1.25", 16.63, 13.5, 0.12, "10.9", 70.5, 133 }, { "M12x1.25", 16.63, 13.5, 0.12, "12.9", 82.5, 155 },
        { "M12x1.25", 16.63, 13.5, 0.14, "8.8", 46.8, 101 }, { "M12x1.25", 16.63, 13.5, 0.14, "10.9", 68.7, 149 }, { "M12x1.25", 16.63, 13.5, 0.14, "12.9", 80.4, 174 },
        { "M20x1.5", 28.19, 22, 0.10, "8.8", 151, 392 }, { "M20x1.5", 28.19, 22, 0.10, "10.9", 215, 558 }, { "M20x1.5", 28.19, 22, 0.10, "12.9", 252, 653 },
        { "M20x1.5", 28.19, 22, 0.12, "8.8", 148, 454 }, { "M20x1.5", 28.19, 22, 0.12, "10.9", 211, 646 }, { "M20x1.5", 28.19, 22, 0.12, "12.9", 246, 756 },
        { "M20x1.5", 28.19, 22, 0.14, "8.8", 144, 511 }, { "M20x1.5", 28.19, 22, 0.14, "10.9", 206, 728 }, { "M20x1.5", 28.19, 22, 0.14, "12.9", 241, 852 },
    };

    [Theory]
    [MemberData(nameof(Table))]
    public void Assembly_preload_and_torque(string thread, double faceMm, double holeMm, double friction, string propertyClass, double kilonewtons, double newtonMetres)
    {
        var seat = SeatContact.FlatAtMeanRadius(Length.FromMillimetres(faceMm), Length.FromMillimetres(holeMm));
        var (clamp, torque) = AssemblyPreload.AtYieldShare(ThreadDesignation.Read(thread).Value, PropertyClass.Read(propertyClass).Value, seat, friction);
        var halfDigit = kilonewtons >= 100 ? 0.5 : 0.05;
        clamp.Kilonewtons.ShouldBe(kilonewtons, (0.0021 * kilonewtons) + halfDigit);
        torque.NewtonMetres.ShouldBe(newtonMetres, (0.0055 * newtonMetres) + 0.5);
    }
}
