using System.Text.Json.Nodes;
using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary><c>balance tolerance</c>: what a balance quality grade leaves, in all and in each of two planes.</summary>
public static class BalanceToleranceOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("balance tolerance", "The unbalance that a balance quality grade permits, in all and half and half in two planes.", Run)
    {
        Options =
        [
            new("--mass", "mass", "Mass of the whole assembly, for example \"18 kg\"."),
            new("--speed", "speed", "Greatest speed in service: \"1100 r/min\", or a road speed such as \"130 km/h\" with --circumference."),
            new("--grade", "grade", "Balance quality grade: \"G 16\" or 16."),
            new("--circumference", "circumference", "Distance rolled in one turn, for example \"1.95 m\"; needed with a road speed."),
        ],
    };

    private static Reading<Answer> Run(FileNode body)
    {
        var problems = new List<Problem>();
        var o = new FileObject(body, problems);
        Mass? mass = o.Require("mass", "give the mass of the whole assembly, for example \"18 kg\"")
            ? o.Quantity<Mass>("mass", "kg", Mass.FromGrams(1), Mass.FromKilograms(1_000_000))
            : null;
        BalanceGrade? grade = o.Require("grade", "give the balance quality grade, for example \"G 16\"") ? o.Value("grade", BalanceGrade.Read) : null;
        var speed = BalanceSpeedReader.Read(o, "circumference");
        o.Done();
        if (problems.Count > 0 || mass is null || grade is null || speed is null)
        {
            return AnswerJson.Wrong(problems);
        }

        var whole = PermissibleUnbalance.Of(grade.Value, mass.Value, speed.Value);
        var half = PermissibleUnbalance.PerPlane(whole);
        var eccentricity = PermissibleUnbalance.Eccentricity(grade.Value, speed.Value);
        var wheels = Figures.Of("balance.carWheelGrade");
        var source = new Source("ISO 21940-11: U = G·m/ω", SourceStatus.FromMemory);
        List<string> notes =
        [
            $"Passenger-car wheels and rims are listed under G {Quantity.Number(wheels.Value, 0)} [{wheels.Source.ForPeople}]; workshops balance finer than that. The vehicle maker's figure comes first.",
        ];
        if (!grade.Value.IsListed)
        {
            notes.Insert(0, $"{grade} is not one of the published grades; it was computed as given.");
        }

        var json = new JsonObject
        {
            ["permissibleGramMillimetres"] = whole.GramMillimetres,
            ["perPlane"] = new JsonObject { ["inner"] = half.GramMillimetres, ["outer"] = half.GramMillimetres },
            ["eccentricityMicrometres"] = eccentricity.In("µm"),
            ["grade"] = grade.Value.ToString(),
            ["massKilograms"] = mass.Value.Kilograms,
            ["speedRevolutionsPerMinute"] = speed.Value.RevolutionsPerMinute,
            ["source"] = source.Text,
            ["status"] = source.StatusText,
            ["notes"] = AnswerJson.List(notes),
        };
        List<string> lines =
        [
            $"{grade} for {mass.Value.Text("kg", 3)} at {speed.Value.Text("r/min", 1)}: {whole.Text("g·mm", 1)} may be left in all, {half.Text("g·mm", 1)} in each plane [{source.ForPeople}].",
            $"The centre of mass may lie {eccentricity.Text("µm", 2)} off the axis.",
            .. notes,
        ];
        return Reading<Answer>.Of(new Answer(false, json, lines));
    }
}
