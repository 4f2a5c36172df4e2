namespace Trundle.Browser.Tests;

/// <summary>Sets in storage, tyres sold and the recall look-up at two sizes, in light and dark.</summary>
public sealed class SetPagesTests(Bay bay, Device device) : IClassFixture<Device>
{
    [Theory]
    [InlineData("/sets?out=yes", "sets")]
    [InlineData("/sets/new", "sets-new")]
    [InlineData("/sets/new?visit=(visit)", "sets-new-visit")]
    [InlineData("(set)", "set")]
    [InlineData("/registrations", "registrations")]
    [InlineData("(sale)", "registration")]
    [InlineData("/recall", "recall")]
    [InlineData("/recall?plant=1AB&code=&from=4021&to=2423", "recall-found")]
    [InlineData("/recall?plant=1ABC&code=&from=&to=", "recall-wrong")]
    public async Task A_page_has_no_fault(string address, string name)
    {
        device.Whole = true;
        await device.CheckAsync(
            address.Replace("(visit)", await bay.VisitAsync("Blue hatchback"), StringComparison.Ordinal).Replace("(set)", await bay.LinkAsync("/sets", "/sets/"), StringComparison.Ordinal)
                .Replace("(sale)", await bay.LinkAsync("/registrations", "/registrations/"), StringComparison.Ordinal),
            $"office-{name}", unfolded: name is not "set");
    }
}
