using Trundle.Web.Client.Tools;

namespace Trundle.Web.Client.Tests.Tools;

/// <summary>What is still needed is said in the page's words.</summary>
public sealed class WantedTests
{
    [Theory]
    [InlineData("why", "spins.1.display.outer.mass", "what the outer plane showed at spin 2")]
    [InlineData("why", "spins.0.fittedAfter.2.angle", "the whole of weight 3 after spin 1: plane, mass, angle")]
    [InlineData("runout", "readings", "readings at three places at least")]
    [InlineData("runout", "mountings.1.turn", "how far the tyre is turned at mounting 2")]
    [InlineData("match", "mountings.0.assembly.highPoint", "how much and where at mounting 1")]
    [InlineData("trial", "runs.3.vibration", "what the meter showed in run 4")]
    [InlineData("trial", "runs.1.trial.mass", "the trial mass")]
    [InlineData("leak", "readings.1.temperature", "how warm the tyre was at reading 2")]
    [InlineData("leak", "readings.2.pressure", "what the gauge showed at reading 3")]
    [InlineData("calibrate", "planes.outer.axial", "where the outer known mass sits: radius and distance")]
    [InlineData("calibrate", "spins.2.added.0.mass", "the whole of known mass 1 of spin 3: plane, mass, angle")]
    [InlineData("calibrate", "spins.1.points", "what both transducers read in spin 2")]
    [InlineData("balancer", "planes.outer.radius", "where the weights sit in the outer plane: the radius")]
    [InlineData("balancer", "traverse.inner.shown", "the amounts shown at all twelve places")]
    [InlineData("balancer", "knownMass.spins.1.added.0.mass", "the whole of known mass 1 of spin 2: plane, mass, angle")]
    [InlineData("balancer", "index.spins.2.display.inner.mass", "what was shown at spin 3, in both planes")]
    public void A_field_has_words(string tool, string field, string words) => Wanted.Of(tool, field).ShouldBe(words);

    [Fact]
    public void A_field_without_words_has_none() => Wanted.Of("capture", "recording.csv").ShouldBeNull();
}
