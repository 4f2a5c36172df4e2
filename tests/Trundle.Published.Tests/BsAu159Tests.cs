using Trundle.Engine.Condition;
using Trundle.Engine.Sidewall;

namespace Trundle.Published.Tests;

/// <summary>BS AU 159g, repair area T of car and light van tyres, as the summary of BTMA prints it, in whole millimetres (read).</summary>
public sealed class BsAu159Tests
{
    [Theory]
    [InlineData(145, 87)]
    [InlineData(155, 93)]
    [InlineData(165, 107)]
    [InlineData(175, 114)]
    [InlineData(185, 120)]
    [InlineData(195, 127)]
    public void The_repair_area_of_a_nominal_section_width(int sectionMillimetres, int areaMillimetres)
    {
        var size = MarkingReader.Read($"{sectionMillimetres}/65 R15").Value.Size;
        RepairArea.Of(size)!.Band.Millimetres.ShouldBe(areaMillimetres, 0.5);
    }

    [Fact]
    public void A_truck_tyre_is_not_of_this_standard() => RepairArea.Of(MarkingReader.Read("295/80 R22.5 152/148M").Value.Size).ShouldBeNull();
}
