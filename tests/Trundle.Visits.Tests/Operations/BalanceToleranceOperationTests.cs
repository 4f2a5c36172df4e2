using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public class BalanceToleranceOperationTests
{
    private static Reading<Answer> Run(string body) => BalanceToleranceOperation.Operation.Run(FileNode.Parse(body, "body").Value);

    [Theory]
    [InlineData("G 16")]
    [InlineData("G16")]
    [InlineData("16")]
    [InlineData("g 16,0")]
    public void A_grade_in_any_of_its_spellings(string grade)
    {
        var body = Run($$"""{"mass": "18 kg", "speed": "1112.4 r/min", "grade": "{{grade}}"}""").Value.Body;
        body["permissibleGramMillimetres"]!.GetValue<double>().ShouldBe(9549.296585513721 * 16 * 18 / 1112.4, 1e-6);
        body["perPlane"]!["inner"]!.GetValue<double>().ShouldBe(9549.296585513721 * 16 * 18 / 1112.4 / 2, 1e-6);
        body["perPlane"]!["outer"]!.GetValue<double>().ShouldBe(9549.296585513721 * 16 * 18 / 1112.4 / 2, 1e-6);
        body["status"]!.GetValue<string>().ShouldBe("from memory");
    }

    [Fact]
    public void A_road_speed_with_the_circumference()
    {
        var body = Run("""{"mass": 18, "speed": "130 km/h", "circumference": "1947.8 mm", "grade": "G 40"}""").Value.Body;
        body["speedRevolutionsPerMinute"]!.GetValue<double>().ShouldBe(130 / 3.6 / 1.9478 * 60, 1e-9);
        Run("""{"mass": 18, "speed": "80.78 mph", "circumference": "1.9478 m", "grade": "G 40"}""").IsRead.ShouldBeTrue();
    }

    [Theory]
    [InlineData("""{"speed": "300 r/min", "grade": "G 16"}""", "mass", "missing")]
    [InlineData("""{"mass": "18 kg", "grade": "G 16"}""", "speed", "missing")]
    [InlineData("""{"mass": "18 kg", "speed": "300 r/min"}""", "grade", "missing")]
    [InlineData("""{"mass": "18 kg", "speed": "120 km/h", "grade": "G 16"}""", "circumference", "missing")]
    [InlineData("""{"mass": "18 kg", "speed": "300", "grade": "G 16"}""", "speed", "unit-missing")]
    [InlineData("""{"mass": "18 kg", "speed": "0 r/min", "grade": "G 16"}""", "speed", "out-of-range")]
    [InlineData("""{"mass": "18 kg", "speed": "300 r/min", "grade": "fine"}""", "grade", "grade-unreadable")]
    [InlineData("""{"mass": "18 kg", "speed": "300 r/min", "grade": "G 0"}""", "grade", "out-of-range")]
    [InlineData("""{"mass": "18 km", "speed": "300 r/min", "grade": "G 16"}""", "mass", "unit-unknown")]
    [InlineData("""{"mass": "-1 kg", "speed": "300 r/min", "grade": "G 16"}""", "mass", "out-of-range")]
    public void Each_problem_names_its_place(string body, string where, string code)
    {
        var problem = Run(body).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe(where);
        problem.Code.ShouldBe(code);
    }

    [Fact]
    public void A_grade_outside_the_series_is_said_to_be()
    {
        Run("""{"mass": "18 kg", "speed": "300 r/min", "grade": "20"}""").Value.ForPeople.ShouldContain(l => l.Contains("not one of the published grades", StringComparison.Ordinal));
        Run("""{"mass": "18 kg", "speed": "300 r/min", "grade": "16"}""").Value.ForPeople.ShouldNotContain(l => l.Contains("not one of the published grades", StringComparison.Ordinal));
    }
}
