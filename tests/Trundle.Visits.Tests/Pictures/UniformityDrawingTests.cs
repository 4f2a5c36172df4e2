using System.Globalization;
using System.Xml.Linq;
using Trundle.Engine.Uniformity;
using Trundle.Measures;
using Trundle.Visits.Pictures;

namespace Trundle.Visits.Tests.Pictures;

/// <summary>The drawings of runout and of match mounting: whole, told in words, and with every point where the numbers put it.</summary>
public sealed class UniformityDrawingTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static readonly double[] Pure = [.. Enumerable.Range(0, 12).Select(i => 0.5 * Math.Cos(double.DegreesToRadians((i * 30) - 90)))];

    private static RunoutOutcome.Found Found(params double[] millimetres) => RunoutAnalysis.Of(
        [.. millimetres.Select((v, i) => new DialReading(WheelAngle.FromDegrees(i * 360.0 / millimetres.Length), Length.FromMillimetres(v)))], null, null)
        .ShouldBeOfType<RunoutOutcome.Found>();

    private static XElement Runout(double? limit, params double[] millimetres) =>
        XDocument.Parse(RunoutCircle.Draw("x", new RunoutView("Radial runout", Found(millimetres), limit is { } l ? Length.FromMillimetres(l) : null, "mm"))).Root!;

    private static XElement Match(double turn) => XDocument.Parse(MatchVectors.Draw("x", View(turn))).Root!;

    private static MatchView<Force> View(double turn) => new("Tyre A on wheel 1", At(80, 130), At(60, 40), Angle.FromDegrees(turn), "N", 1);

    private static HarmonicVector<Force> At(double newtons, double degrees) => HarmonicVector<Force>.At(Force.FromNewtons(newtons), WheelAngle.FromDegrees(degrees));

    [Fact]
    public void Both_are_whole_with_title_and_description()
    {
        foreach (var svg in new[] { Runout(1.2, Pure), Runout(null, 0, 0, 0, 0, 0, 0, 0, 0), Match(90), Match(0), Match(270) })
        {
            svg.Element(Svg + "title")!.Value.ShouldNotBeNullOrWhiteSpace();
            svg.Element(Svg + "desc")!.Value.ShouldContain("clockwise as seen from outside");
            svg.Attribute("aria-labelledby")!.Value.ShouldBe("x-title x-desc");
            svg.Attribute("role")!.Value.ShouldBe("img");
            svg.ToString().ShouldNotContain("NaN");
            svg.ToString().ShouldNotContain("Infinity");
        }
    }

    [Fact]
    public void Readings_lie_between_the_inner_circle_and_the_limit_clockwise_from_the_valve()
    {
        // 1 mm peak-to-peak under a limit of 1 mm: the low spot on the inner circle, the high spot on the limit's.
        var svg = Runout(1.0, Pure);
        var limit = svg.Elements(Svg + "circle").Single(c => c.Attribute("stroke-dasharray") is not null);
        var inner = svg.Elements(Svg + "circle").First();
        var points = svg.Elements(Svg + "circle").Where(c => c.Attribute("r")!.Value == "3").ToList();
        points.Count.ShouldBe(12);
        Number(points[3], "cx").ShouldBe(Number(limit, "cx") + Number(limit, "r"), 0.01);
        Number(points[3], "cy").ShouldBe(Number(limit, "cy"), 0.01);
        Number(points[9], "cx").ShouldBe(Number(inner, "cx") - Number(inner, "r"), 0.01);
        svg.Elements(Svg + "text").Select(t => t.Value).ShouldContain("90°");
        svg.Elements(Svg + "text").Select(t => t.Value).ShouldContain("1.00 mm in all; limit 1.00 mm, dashed");
    }

    [Fact]
    public void What_it_shows_is_said_in_words()
    {
        RunoutCircle.Describe(new RunoutView("x", Found(Pure), Length.FromMillimetres(0.8), "mm"))
            .ShouldStartWith("12 readings, 1.00 mm peak-to-peak, above the limit of 0.80 mm. First harmonic 0.50 mm, high point at 90°.");
        RunoutCircle.Describe(new RunoutView("x", Found(Pure), null, "mm")).ShouldContain("no limit is known");
        MatchVectors.Describe(View(90)).ShouldStartWith("Before: tyre 80.0 N at 130°, wheel 60.0 N at 40°, together 100.0 N at 93°. After turning the tyre 90° clockwise: tyre at 220°, together 20.0 N at 220°.");
    }

    [Fact]
    public void A_reading_that_does_not_belong_is_crossed()
    {
        double[] spoiled = [.. Pure.Select((v, i) => v + (0.01 * (i % 2)))];
        spoiled[5] += 0.6;
        var svg = Runout(null, spoiled);
        svg.Elements(Svg + "circle").Count(c => c.Attribute("r")!.Value == "6").ShouldBe(1);
        svg.Elements(Svg + "circle").Count(c => c.Attribute("r")!.Value == "3").ShouldBe(11);
        svg.Element(Svg + "desc")!.Value.ShouldContain("does not belong");
    }

    [Fact]
    public void The_mark_and_the_vectors_stand_where_the_turn_puts_them()
    {
        var svg = Match(90);
        var marks = svg.Elements(Svg + "circle").Where(c => c.Attribute("stroke-width")!.Value == "2").ToList();
        marks.Count.ShouldBe(2);
        Number(marks[0], "cx").ShouldBe(140, 0.01);
        Number(marks[0], "cy").ShouldBe(50, 0.01);
        Number(marks[1], "cx").ShouldBe(420 + 96, 0.01);
        Number(marks[1], "cy").ShouldBe(146, 0.01);
        var tyre = svg.Elements(Svg + "line").Where(l => l.Attribute("stroke-width")!.Value == "3").Last();

        // 80 of 100 N at the outer ring, towards 220°.
        Number(tyre, "x2").ShouldBe(420 + (108 * 0.8 * Math.Sin(double.DegreesToRadians(220))), 0.01);
        Number(tyre, "y2").ShouldBe(146 - (108 * 0.8 * Math.Cos(double.DegreesToRadians(220))), 0.01);
        var words = svg.Elements(Svg + "text").Select(t => t.Value).ToList();
        words.ShouldContain("before: 100.0 N at 93°");
        words.ShouldContain("after: 20.0 N at 220°");
        words.Count(w => w == "tyre").ShouldBe(2);
        words.Count(w => w == "wheel").ShouldBe(2);
    }

    [Theory]
    [InlineData(100, 100)]
    [InlineData(100.1, 200)]
    [InlineData(0.35, 0.5)]
    [InlineData(7, 10)]
    [InlineData(0, 1)]
    public void The_outer_ring_is_the_next_round_amount(double greatest, double full) => MatchVectors.FullScale(greatest).ShouldBe(full, 1e-12);

    private static double Number(XElement element, string attribute) => double.Parse(element.Attribute(attribute)!.Value, CultureInfo.InvariantCulture);
}
