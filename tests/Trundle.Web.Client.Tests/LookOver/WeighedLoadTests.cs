using Bunit;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Tests.LookOver;

public sealed class WeighedLoadTests : BayContext
{
    [Fact]
    public void A_wheels_own_load_is_entered_at_the_wheel_and_counts_in_place_of_its_part_of_the_axles()
    {
        Browser.Enter(Sample.Fields(), Sample.Noon);
        var page = Page(Leg.LookOver, "1L");

        Control(page, "fitted.1L.load").Change("1900");

        Visit["fitted.1L.load"].ShouldBe("1900 kg");
        var finding = Visit.State.On(Leg.LookOver).Findings.Single(f => f.Rule == "load.axle" && f.Position == "1L");
        finding.Limit!.Amount.Value!.Value.ShouldBe(1900, 1e-9);
        finding.Limit.Source.Text.ShouldContain("as weighed");
    }
}
