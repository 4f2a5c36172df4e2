using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using Trundle.Visits.Pictures;

namespace Trundle.Visits.Tests.Pictures;

/// <summary>The drawings of a balancer's own tests say and place what the answer says.</summary>
public sealed class MachineDrawingTests
{
    private const double CentreY = 146;
    private const double Centre = 134;
    private const double Radius = 117;

    private static readonly IReadOnlyList<Drawing> Worked = MachineDrawing.Of(FileNode.Parse(File.ReadAllText("balance-machine-worked.json"), "worked").Value, "g");

    private static XElement Of(string name) => XElement.Parse(Worked.Single(d => d.Name == name).Svg);

    private static string Description(string name) => Of(name).Elements().Single(e => e.Name.LocalName == "desc").Value;

    private static IEnumerable<XElement> All(XElement svg, string element) => svg.Elements().Where(e => e.Name.LocalName == element);

    private static double N(XElement element, string attribute) => double.Parse(element.Attribute(attribute)!.Value, CultureInfo.InvariantCulture);

    [Fact]
    public void Each_test_with_a_drawing_has_one_for_each_plane() => Worked.Select(d => d.Name).ShouldBe(
    [
        "traverse inner", "traverse outer", "reduction inner", "reduction left inner", "reduction outer", "reduction left outer", "index inner", "index outer", "repeat inner", "repeat outer",
    ]);

    [Fact]
    public void Twelve_amounts_stand_about_their_mean_within_the_band()
    {
        var svg = Of("traverse inner");
        var dots = All(svg, "circle").ToList();
        dots.Count.ShouldBe(12);

        // The sample's amounts go up and down once around: 10.40 g at 60 degrees is greatest, 9.60 g at 240 degrees least, about a mean of 120.08/12 g.
        dots.Select(d => N(d, "cy")).Min().ShouldBe(N(dots[2], "cy"));
        dots.Select(d => N(d, "cy")).Max().ShouldBe(N(dots[8], "cy"));
        var band = All(svg, "rect").ElementAt(1);
        var middle = N(band, "y") + (N(band, "height") / 2);
        (middle - N(dots[2], "cy")).ShouldBe(N(band, "height") / 2 * (((10.40 / (120.08 / 12)) - 1) / 0.12), 0.01);
        Description("traverse inner").ShouldContain("60° +3.9 %");
        Description("traverse inner").ShouldContain("The band is 12 % to either side.");
    }

    [Fact]
    public void An_amount_outside_the_band_is_a_square_with_its_figure()
    {
        var svg = XElement.Parse(TraverseBand.Draw("t", new TraverseView("t", [1, 1.2, 1, 1, 1, 1, 1, 1, 1, 1, 1, 0.8], "10 g", 12)));
        All(svg, "circle").Count().ShouldBe(10);
        All(svg, "rect").Count(r => N(r, "width") == 12).ShouldBe(2);
        All(svg, "text").Select(t => t.Value).ShouldContain("+20 %");
        All(svg, "text").Select(t => t.Value).ShouldContain("−20 %");
    }

    [Fact]
    public void What_a_correction_leaves_stands_in_per_cent_beside_the_circle_of_the_ratio()
    {
        // 97 g at 2 degrees for 100 g leaves 4.56 %; the maker's 95 % is a circle of 5 %.
        Description("reduction left inner").ShouldContain("spin 1 4.56 %");
        Description("reduction left inner").ShouldContain("the circle is 5 %");
        var svg = Of("reduction left inner");
        var circle = All(svg, "circle").Single(c => c.Attribute("stroke-dasharray")?.Value == "4 3");
        var end = All(svg, "circle").Single(c => N(c, "r") == 5.5);
        (Math.Sqrt(Math.Pow(N(end, "cx") - Centre, 2) + Math.Pow(N(end, "cy") - CentreY, 2)) / N(circle, "r")).ShouldBe(4.5627 / 5, 0.002);
        Description("reduction inner").ShouldContain("spin 1, on the wheel 100 g at 0°; spin 1, found 97 g at 2°");
    }

    [Fact]
    public void The_spins_of_the_index_go_round_the_end_of_the_fixtures_vector()
    {
        var svg = Of("index inner");
        var round = All(svg, "circle").Single(c => c.Attribute("stroke-dasharray")?.Value == "1 4");
        var spins = All(svg, "circle").Where(c => N(c, "r") == 4.5).ToList();
        spins.Count.ShouldBe(4);
        foreach (var spin in spins)
        {
            Math.Sqrt(Math.Pow(N(spin, "cx") - N(round, "cx"), 2) + Math.Pow(N(spin, "cy") - N(round, "cy"), 2)).ShouldBe(N(round, "r"), 0.5);
        }

        // 7.5 g at 75 degrees on rings of 20 g: up and to the right.
        N(round, "cx").ShouldBe(Centre + (7.5 / 20 * Radius * Math.Sin(75 * Math.PI / 180)), 0.3);
        N(round, "cy").ShouldBe(CentreY - (7.5 / 20 * Radius * Math.Cos(75 * Math.PI / 180)), 0.3);
        Description("index inner").ShouldContain("the fixture's 7.5 g at 75°, the wheel's own 11.0 g at 200°, each give or take");
    }

    [Fact]
    public void Spins_scatter_about_their_mean_with_an_ellipse_along_the_longer_way()
    {
        var svg = Of("repeat inner");
        var dots = All(svg, "circle").Where(c => N(c, "r") == 4.5).ToList();
        dots.Count.ShouldBe(10);
        dots.Average(d => N(d, "cx")).ShouldBe(Centre, 0.1);
        dots.Average(d => N(d, "cy")).ShouldBe(CentreY, 0.1);
        Description("repeat inner").ShouldContain("10 spins about their mean, a heavy place of 21.9 g at 140°");

        // Twice as far to the right and left as up and down: the longer axis points right, and the sums of squares over n − 1 are 8/3 and 2/3.
        var cross = XElement.Parse(SpinScatter.Draw("s", new ScatterView("s", [new(10, 2), new(10, -2), new(11, 0), new(9, 0)], null, "g")));
        var ellipse = All(cross, "ellipse").ShouldHaveSingleItem();
        ellipse.Attribute("transform")!.Value.ShouldMatch(@"^rotate\(-?90 134 146\)$");
        N(ellipse, "ry").ShouldBe(Radius / 2 * Math.Sqrt(8 / 3.0), 0.01);
        N(ellipse, "rx").ShouldBe(Radius / 2 * Math.Sqrt(2 / 3.0), 0.01);
    }

    [Fact]
    public void In_ounces_every_mass_is_in_ounces()
    {
        foreach (var drawing in MachineDrawing.Of(FileNode.Parse(File.ReadAllText("balance-machine-worked.json"), "worked").Value, "oz"))
        {
            Regex.IsMatch(drawing.Svg, @"\d g\b").ShouldBeFalse(drawing.Name);
        }
    }

    [Fact]
    public void A_file_that_cannot_be_answered_has_none() => MachineDrawing.Of(FileNode.Parse("{}", "body").Value, "g").ShouldBeEmpty();
}
