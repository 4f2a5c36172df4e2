using System.Text.RegularExpressions;
using Trundle.Engine.Balance.Spin;

namespace Trundle.Visits.Tests.Operations;

/// <summary>Every flag of a spin and of a calibration has its row in the guide, with what to do; and the guide names no other.</summary>
public sealed partial class SpinGuideTests
{
    [Fact]
    public void The_guide_names_every_flag_and_what_to_do()
    {
        var section = File.ReadAllText("spin-files.md").Split("\n## Flags")[1].Split("\n## ")[0];
        var rows = Row().Matches(section);
        rows.Select(r => r.Groups[1].Value).Order(StringComparer.Ordinal).ShouldBe(SpinFlags.All.Order(StringComparer.Ordinal));
        rows.ShouldAllBe(r => r.Groups[2].Value.Trim().Length > 10 && r.Groups[3].Value.Trim().Length > 10);
    }

    [GeneratedRegex(@"^\| `([a-z-]+)` \|([^|]*)\|([^|]*)\|\s*$", RegexOptions.Multiline)]
    private static partial Regex Row();
}
