using Trundle.Engine.Fixings;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>Torque wrenches with adapters: TM 9-254 fig. 45 (read) and NAVEDTRA 14315 figs 3-44 and 3-45 (read); one case of the reference's own at 30°.</summary>
public class TorqueWrenchManualTests
{
    [Fact]
    public void TM_9_254_figure_45_delivers_70()
    {
        var adapter = new WrenchAdapter(Length.FromInches(12), Length.FromInches(2), Angle.FromDegrees(0));
        adapter.Delivered(Torque.FromPoundForceInches(60)).PoundForceInches.ShouldBe(70, 1e-9);
    }

    [Fact]
    public void NAVEDTRA_14315_sets_66_7_for_100()
    {
        var adapter = new WrenchAdapter(Length.FromInches(12), Length.FromInches(6), Angle.FromDegrees(0));
        adapter.Setting(Torque.FromPoundForceFeet(100)).PoundForceFeet.ShouldBe(66.7, 0.05);
    }

    [Fact]
    public void An_adapter_at_30_degrees_counts_by_its_cosine()
    {
        var adapter = new WrenchAdapter(Length.FromMillimetres(500), Length.FromMillimetres(75), Angle.FromDegrees(30));
        adapter.Setting(Torque.FromNewtonMetres(150)).NewtonMetres.ShouldBe(132.75, 0.005);
    }
}
