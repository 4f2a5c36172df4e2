using System.Globalization;
using System.Xml.Linq;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Pictures;

namespace Trundle.Visits.Tests.Pictures;

/// <summary>The drawings: whole SVG, told in words, safe with any text, and to scale where they say so.</summary>
public sealed class DrawingTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static TreadView Tread(params double[] millimetres) => new(
        new TreadDepths([Length.FromMillimetres(millimetres[0])], [Length.FromMillimetres(millimetres[1])], [Length.FromMillimetres(millimetres[2])]),
        Length.FromMillimetres(1.6), "1.6 mm", d => Quantity.Number(d.Millimetres, 1), "mm");

    private static PlanView Plan(string name = "front left", IReadOnlyList<Length>? behind = null, Length? track = null) => new(
        "The vehicle from above",
        [
            new PlanWheel(Position.Read("1L").Value, name, true, ["225 kPa", "of 230"], Tread(1.4, 3.9, 4.2), Category.Major, "/a"),
            new PlanWheel(Position.Read("1R").Value, "front right", true, ["231 kPa"], Tread(4, 4, 4), Category.None, "/b"),
            new PlanWheel(Position.Read("2L").Value, "rear left", false, ["nothing entered yet"], null, null, "/c"),
            new PlanWheel(Position.Read("2R").Value, "rear right", false, ["nothing entered yet"], null, null, null),
        ],
        2, behind ?? [], track);

    private static readonly FaceView Face = new("Face", Length.FromInches(16), new Trundle.Engine.Balance.SpokePlaces(5, WheelAngle.FromDegrees(36)).Numbered, Length.FromMillimetres(57.1), new BoltCircle(5, Length.FromMillimetres(112)),
        [new FaceWeight("15 g", WheelAngle.FromDegrees(90), Length.FromMillimetres(150), null, true, false)]);

    private static StudView Stud(int count, params int[] order) => new("Fixings", count, order, new HashSet<int> { order[0] }, order[1], new BoltCircle(count, Length.FromMillimetres(112)), Length.FromMillimetres(57.1));

    public static TheoryData<string, string> Every() => new()
    {
        { "plan, wide", VehiclePlan.Wide("x", Plan()) },
        { "plan, upright", VehiclePlan.Upright("x", Plan()) },
        { "tread", TreadSection.Draw("x", "Tread", Tread(1.4, 3.9, 4.2)) },
        { "polar", PolarGrid.Draw("x", new PolarView("Inner plane", new PolarMark(Mass.FromGrams(35), WheelAngle.FromDegrees(295)), new PolarMark(Mass.FromGrams(1), default), Mass.FromGrams(5), "g"), Mass.FromGrams(40)) },
        { "face", WheelFace.Draw("x", Face) },
        { "stud", StudCircle.Draw("x", Stud(5, 1, 3, 5, 2, 4)) },
        { "moves", RotationMoves.Draw("x", "Moves", 2, [.. Plan().Wheels.Select(w => w.Position)], [new PictureMove(1, Position.Read("1L").Value, Position.Read("2L").Value, true)]) },
    };

    [Theory]
    [MemberData(nameof(Every))]
    public void Every_drawing_is_whole_and_has_a_title_and_a_description(string what, string drawing)
    {
        var svg = XDocument.Parse(drawing).Root!;
        svg.Name.LocalName.ShouldBe("svg", what);
        svg.Element(Svg + "title")!.Value.ShouldNotBeNullOrWhiteSpace(what);
        svg.Element(Svg + "desc")!.Value.ShouldNotBeNullOrWhiteSpace(what);
        svg.Attribute("aria-labelledby")!.Value.ShouldBe("x-title x-desc");
        drawing.ShouldNotContain("NaN");
        drawing.ShouldNotContain("Infinity");
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\"onload=\"x & 'y'")]
    public void A_text_with_marks_of_its_own_stays_text(string name)
    {
        foreach (var drawing in new[] { VehiclePlan.Wide("x", Plan(name)), VehiclePlan.Upright("x", Plan(name)) })
        {
            var svg = XDocument.Parse(drawing);
            svg.Descendants().ShouldAllBe(e => e.Name.Namespace == Svg && e.Name.LocalName != "script");
            svg.Descendants().Attributes().ShouldAllBe(a => !a.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_vector_points_clockwise_from_the_valve_on_top()
    {
        var svg = XDocument.Parse(PolarGrid.Draw("x", new PolarView("Inner plane", new PolarMark(Mass.FromGrams(20), WheelAngle.FromDegrees(90)), null, null, "g"), Mass.FromGrams(40)));
        var heavy = svg.Descendants(Svg + "line").Last();
        Number(heavy, "x2").ShouldBe(Number(heavy, "x1") + 58.5, 0.01);
        Number(heavy, "y2").ShouldBe(Number(heavy, "y1"), 0.01);
    }

    [Fact]
    public void The_stud_circle_counts_clockwise_from_the_top_and_names_the_turn_of_each()
    {
        var words = XDocument.Parse(StudCircle.Draw("x", Stud(5, 1, 3, 5, 2, 4))).Descendants(Svg + "text").ToList();
        var one = words.Single(w => w.Value == "1");
        var two = words.Single(w => w.Value == "2");
        Number(one, "x").ShouldBe(160, 0.01);
        Number(two, "x").ShouldBeGreaterThan(160);
        words.Select(w => w.Value).ShouldContain("2nd");
        words.Select(w => w.Value).ShouldContain("5 on 112 mm");
    }

    [Fact]
    public void The_plan_is_to_scale_where_wheelbase_and_track_are_known()
    {
        var wheelbase = Length.FromMillimetres(2600);
        var svg = XDocument.Parse(VehiclePlan.Wide("x", Plan(behind: [Length.FromMillimetres(0), wheelbase], track: Length.FromMillimetres(1560))));
        var axles = svg.Descendants(Svg + "line").Where(l => l.Attribute("stroke-width")!.Value == "2").ToList();
        axles.Count.ShouldBe(2);
        var across = Number(axles[0], "y2") - Number(axles[0], "y1");
        var along = Number(axles[1], "x1") - Number(axles[0], "x1");
        (across / along).ShouldBe(1560.0 / 2600.0, 0.01);
        svg.Descendants(Svg + "text").Select(t => t.Value).ShouldContain("2\u202f600 mm");
    }

    [Fact]
    public void A_depth_below_the_limit_is_said_in_words_too()
    {
        TreadSection.Describe(Tread(1.4, 3.9, 4.2)).ShouldBe("inner 1.4 mm, below the limit; centre 3.9 mm; outer 4.2 mm. Limit 1.6 mm.");
        TreadSection.Describe(Tread(1.6, 3.9, 4.2)).ShouldNotContain("below");
    }

    [Fact]
    public void Every_category_has_a_square_of_its_own()
    {
        var squares = Enum.GetValues<Category>().Select(CategorySquare.Draw).ToList();
        squares.Distinct().Count().ShouldBe(squares.Count);
        squares.ShouldAllBe(s => XDocument.Parse(s).Root!.Attribute("aria-hidden")!.Value == "true");
        CategorySquare.Words(Category.None).ShouldBe("no deficiency");
    }

    [Theory]
    [InlineData(new[] { 34.6, 21.8 }, 40)]
    [InlineData(new[] { 8.0 }, 10)]
    [InlineData(new double[0], 10)]
    [InlineData(new[] { 145.0, 20.0 }, 150)]
    public void Both_grids_of_a_wheel_share_the_next_round_mass(double[] grams, double full) =>
        PolarGrid.FullScale(grams.Select(Mass.FromGrams), "g").Grams.ShouldBe(full, 1e-9);

    private static double Number(XElement element, string attribute) => double.Parse(element.Attribute(attribute)!.Value, CultureInfo.InvariantCulture);
}
