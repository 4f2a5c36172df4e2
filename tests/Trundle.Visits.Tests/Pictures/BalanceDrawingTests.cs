using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Trundle.Measures;
using Trundle.Visits.Pictures;

namespace Trundle.Visits.Tests.Pictures;

/// <summary>Vectors, circles and error ellipses: whole SVG, told in words, and where they belong.</summary>
public sealed partial class BalanceDrawingTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static double At(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    [Fact]
    public void The_circles_of_trial_runs_meet_at_the_correction()
    {
        // Heavy place 20 g at 180 degrees, 0.4 a gram, trials of 15 g: the correction is 20 g at 0 degrees, met 6 out of 8.
        double[] amplitudes = [2, 12.166, 12.166];
        var view = new TrialView("Circles", 8, [.. amplitudes.Select((a, i) => new TrialCircle(i + 2, Angle.FromDegrees(i * 120), 8, a, i == 1))], (6, Angle.FromDegrees(0)), "20 g at 0°", "mm/s");
        var drawing = XElement.Parse(TrialCircles.Draw("t", view));
        var circles = drawing.Elements(Svg + "circle").Where(c => c.Attribute("fill")!.Value == "none").ToList();
        circles.Count.ShouldBe(4);
        var meet = drawing.Elements(Svg + "circle").Last();
        foreach (var circle in circles.Skip(1))
        {
            var distance = Math.Sqrt(Math.Pow(At(circle, "cx") - At(meet, "cx"), 2) + Math.Pow(At(circle, "cy") - At(meet, "cy"), 2));
            distance.ShouldBe(At(circle, "r"), 0.1);
        }

        circles.ShouldAllBe(c => At(c, "cx") - At(c, "r") > -0.1 && At(c, "cx") + At(c, "r") < 340.1 && At(c, "cy") - At(c, "r") > 10 && At(c, "cy") + At(c, "r") < 330);
        circles.Count(c => c.Attribute("stroke-dasharray") is not null).ShouldBe(1, "the run to repeat differs without colour");
        TrialCircles.Describe(view).ShouldContain("run 3 around the initial amplitude at 120°, radius 12.2 mm/s, passes by the others");
    }

    [Fact]
    public void An_error_ellipse_is_drawn_to_scale_or_beside_with_its_factor()
    {
        // 20 of 20 at the outer ring of 117: 4 are 23.4 along, a tenth of a radian is 11.7 across.
        var wide = XElement.Parse(VectorPolar.Draw("v", new VectorView("V", "index mark", "", [new NumberVector("amplitude", 20, Angle.FromDegrees(90), VectorLook.First) { Error = (4, Angle.FromRadians(0.1)) }])));
        var ellipse = wide.Element(Svg + "ellipse")!;
        At(ellipse, "ry").ShouldBe(23.4, 0.01);
        At(ellipse, "rx").ShouldBe(11.7, 0.01);
        At(ellipse, "cx").ShouldBe(134 + 117, 0.01);
        var narrow = XElement.Parse(VectorPolar.Draw("v", new VectorView("V", "index mark", "", [new NumberVector("amplitude", 20, Angle.FromDegrees(90), VectorLook.First) { Error = (0.04, Angle.FromRadians(0.001)) }])));
        var factor = double.Parse(Times().Match(narrow.Value).Groups[1].Value, CultureInfo.InvariantCulture);
        At(narrow.Element(Svg + "ellipse")!, "ry").ShouldBe(0.234 * factor, 0.01);
        VectorPolar.Describe(new VectorView("V", "index mark", "mm/s", [new NumberVector("run 1", 2, Angle.FromDegrees(-90), VectorLook.First)])).ShouldStartWith("run 1 2 mm/s at 270°");
    }

    [Fact]
    public void Marks_of_vectors_in_one_line_do_not_cover_each_other()
    {
        var drawing = XElement.Parse(VectorPolar.Draw("v", new VectorView("V", "0°", "", [.. new[] { 2.0, 3, 2.5 }.Select((size, i) => new NumberVector($"run {i + 1}", size, Angle.FromDegrees(90), i == 0 ? VectorLook.First : VectorLook.Between) { Mark = $"{i + 1}" })])));
        var marks = drawing.Elements(Svg + "text").Where(t => t.Value is "1" or "2" or "3").Select(t => (X: At(t, "x"), Y: At(t, "y"))).ToList();
        marks.Count.ShouldBe(3);
        marks.SelectMany((a, i) => marks.Skip(i + 1).Select(b => Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y))).ShouldAllBe(d => d > 15);
    }

    [Fact]
    public void The_heavy_place_of_a_plane_has_its_error_in_words_too()
    {
        var view = new PolarView("Inner plane", new PolarMark(Mass.FromGrams(35), WheelAngle.FromDegrees(210)) { Error = (Mass.FromGrams(0.13), Angle.FromDegrees(0.2)) }, null, null, "g");
        PolarGrid.Describe(view).ShouldContain("35 g at 210°, give or take 0.13 g and 0.2°");
        XElement.Parse(PolarGrid.Draw("p", view, Mass.FromGrams(40))).Elements(Svg + "ellipse").Count().ShouldBe(1);
    }

    [GeneratedRegex("error ×([0-9.]+)")]
    private static partial Regex Times();
}
