using System.Globalization;
using System.Xml.Linq;
using Trundle.Measures;
using Trundle.Visits.Pictures;

namespace Trundle.Visits.Tests.Pictures;

/// <summary>Gauges that stand where they should, and a wheel that turns the right way.</summary>
public sealed class PracticeDrawingTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void The_verniers_line_of_the_tenths_meets_a_line_of_the_main_scale_and_no_other_does()
    {
        for (var tenths = 430; tenths <= 880; tenths++)
        {
            var drawing = XElement.Parse(MeasuringScale.Vernier("v", "bore", Length.FromMillimetres(tenths / 10.0)));
            var main = Lines(drawing).Where(l => l.Y1 == 64).Select(l => l.X).ToList();
            var vernier = Lines(drawing).Where(l => l.Y1 == 65).Select(l => l.X).ToList();
            vernier.Count.ShouldBe(11);
            var meets = Enumerable.Range(0, 10).Where(k => main.Any(m => Math.Abs(m - vernier[k]) < 0.06)).ToList();
            meets.ShouldBe([tenths % 10], $"{tenths / 10.0} mm");
            drawing.Element(Svg + "desc")!.Value.ShouldContain(string.Create(CultureInfo.InvariantCulture, $" {tenths / 10} mm of the main scale; its line {tenths % 10} meets"));
        }
    }

    [Fact]
    public void A_scale_shows_its_value_between_its_numbers_and_never_writes_it()
    {
        var view = new ScaleView("Rim distance", 77, 50, 100, 10, 10, "mm", "flange");
        var drawing = XElement.Parse(MeasuringScale.Draw("s", view));
        var words = drawing.Elements(Svg + "text").ToDictionary(t => t.Value, t => double.Parse(t.Attribute("x")!.Value, CultureInfo.InvariantCulture));
        words.Keys.ShouldBe(["50", "60", "70", "80", "90", "100", "mm", "flange"]);
        var edge = Lines(drawing).Last().X;
        edge.ShouldBe(words["70"] + (0.7 * (words["80"] - words["70"])), 0.02);
        drawing.Element(Svg + "desc")!.Value.ShouldContain("stands 7 marks past 70");
        MeasuringScale.Describe(view with { Value = 6.5, From = 4, To = 10, Parts = 8, NumberEvery = 1 }).ShouldContain("stands 4 marks past 6.");
    }

    [Fact]
    public void The_place_at_twelve_is_on_top_and_places_grow_clockwise()
    {
        var drawing = XElement.Parse(TurnedWheel.Draw("w", new TurnedWheelView("wheel", WheelAngle.FromDegrees(90), [], [new TurnedWeight("25 g", WheelAngle.FromDegrees(90), false)])));
        var numbers = drawing.Elements(Svg + "text").ToDictionary(t => t.Value, t => (X: Of(t, "x"), Y: Of(t, "y")));
        numbers["90"].X.ShouldBe(200, 0.1);
        numbers["90"].Y.ShouldBeLessThan(50);
        numbers["180"].X.ShouldBeGreaterThan(340);
        numbers["0"].X.ShouldBeLessThan(60);
        numbers["25 g"].X.ShouldBe(200, 0.1);
        numbers["25 g"].Y.ShouldBeLessThan(200);
        drawing.Element(Svg + "desc")!.Value.ShouldBe("Seen from outside, 90° from the valve at twelve. 25 g at 90°, outer side.");
    }

    [Fact]
    public void Every_damage_of_a_drill_is_drawn_and_told()
    {
        for (ulong seed = 0; seed < 60; seed++)
        {
            var drill = Trundle.Engine.Practice.Drills.DrillList.Of(Trundle.Engine.Practice.Drills.DrillKind.Damage, seed, new DateOnly(2026, 3, 2));
            var drawing = XElement.Parse(DamageSection.Draw("d", "damage", drill.Facts[^1].Text, (Trundle.Engine.Vehicles.Damage)drill.Drawn!));
            drawing.Element(Svg + "desc")!.Value.ShouldContain(drill.Facts[^1].Text);

            // The ring that shows the place, and a mark of its own besides.
            drawing.Elements().Count(e => e.Attribute("stroke")?.Value.StartsWith("var(--accent", StringComparison.Ordinal) == true).ShouldBe(2);
        }
    }

    private static IEnumerable<(double X, double Y1)> Lines(XElement drawing) => drawing.Elements(Svg + "line").Select(l => (Of(l, "x1"), Of(l, "y1")));

    private static double Of(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
