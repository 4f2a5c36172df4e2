using System.Globalization;
using System.Xml.Linq;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Pictures;

/// <summary>The drawing of a loss of pressure: whole, told in words, and with the warning where line and band meet it.</summary>
public sealed class LossDrawingTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static XElement Draw(string file, string unit) => XDocument.Parse(LeakDrawing.Of(FileNode.Parse(file, "x").Value, unit).ShouldHaveSingleItem().Svg).Root!;

    private static string Sample(string name) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, name));

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    private static string[] Words(XElement svg) => [.. svg.Elements(Svg + "text").Select(t => t.Value)];

    [Theory]
    [InlineData("leak-slow-valve.json", "kPa")]
    [InlineData("leak-slow-valve.json", "bar")]
    [InlineData("leak-cold-snap.json", "psi")]
    public void It_is_whole_with_title_and_description(string sample, string unit)
    {
        var svg = Draw(Sample(sample), unit);
        svg.Element(Svg + "title")!.Value.ShouldBe("Pressure over time");
        svg.Element(Svg + "desc")!.Value.ShouldContain("brought to 20 °C");
        svg.ToString().ShouldNotContain("NaN");
        svg.ToString().ShouldNotContain("Infinity");
        Words(svg).ShouldContain(unit);
        foreach (var circle in svg.Elements(Svg + "circle"))
        {
            Number(circle, "cx").ShouldBeInRange(58, 606);
            Number(circle, "cy").ShouldBeInRange(22, 270);
        }
    }

    [Fact]
    public void The_day_of_the_warning_stands_where_the_answer_says_and_its_range_about_it()
    {
        // 68 days after 2026-02-02: 2026-04-11. The scale of time runs from the first reading at 58.
        var svg = Draw(Sample("leak-slow-valve.json"), "kPa");
        Words(svg).ShouldContain("warning 184 kPa");
        Words(svg).ShouldContain("2026-04-11");
        var dots = svg.Elements(Svg + "circle").Where(c => c.Attribute("stroke")!.Value == "none").Select(c => Number(c, "cx")).ToList();
        dots.Count.ShouldBe(5);
        dots[0].ShouldBe(58, 0.01);
        var day = (dots[4] - dots[0]) / 28;
        var upright = svg.Elements(Svg + "line").Single(l => l.Attribute("stroke-width")!.Value == "1.5" && Number(l, "x1") == Number(l, "x2"));
        ((Number(upright, "x1") - dots[4]) / day).ShouldBe(68, 0.6);
        var range = svg.Elements(Svg + "line").Single(l => l.Attribute("stroke-width")!.Value == "4");
        Number(range, "x1").ShouldBeLessThan(Number(upright, "x1"));
        Number(range, "x2").ShouldBeGreaterThan(Number(upright, "x1"));
    }

    [Fact]
    public void Air_let_in_begins_a_new_level_and_a_file_without_an_answer_draws_nothing()
    {
        var svg = Draw("""
            {"placard":{"cold":"230 kPa"},"rules":"uk","readings":[{"at":"2026-01-01","pressure":"230 kPa","temperature":"20 °C"},{"at":"2026-01-11","pressure":"220 kPa","temperature":"20 °C"},
            {"at":"2026-01-12","pressure":"230 kPa","temperature":"20 °C","filled":true},{"at":"2026-01-22","pressure":"220 kPa","temperature":"20 °C"}]}
            """, "kPa");
        svg.Elements(Svg + "path").Count(p => p.Attribute("stroke")!.Value.Contains("accent", StringComparison.Ordinal) && p.Attribute("stroke-dasharray") is null).ShouldBe(2);
        LeakDrawing.Of(FileNode.Parse("""{"readings":[]}""", "x").Value, "kPa").ShouldBeEmpty();
    }
}
