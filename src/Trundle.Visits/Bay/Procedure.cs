using System.Text;
using Trundle.Visits.Files;

namespace Trundle.Visits.Bay;

/// <summary>How much is done to one wheel on a visit. Each includes the ones before it.</summary>
public enum WheelJob
{
    /// <summary>It stays on the vehicle.</summary>
    StaysOn,

    /// <summary>It comes off and goes on again.</summary>
    OffAndOn,

    /// <summary>Off, balanced, and on again.</summary>
    Balance,

    /// <summary>Off, tyre demounted and mounted, seated, balanced, and on again.</summary>
    Demount,
}

/// <summary>What a step wants entered.</summary>
public enum StepEntry
{
    /// <summary>That it was done.</summary>
    Confirm,

    /// <summary>One of the given words.</summary>
    Choice,

    /// <summary>A pressure.</summary>
    Pressure,

    /// <summary>A torque for every fixing.</summary>
    Torques,

    /// <summary>The balancer's display in both planes.</summary>
    Spin,

    /// <summary>A line of text.</summary>
    Text,
}

/// <summary>One step of the hand work, in our own words.</summary>
/// <param name="Id">Stable name; the field is <c>work.steps.(position or vehicle).(id)</c>.</param>
/// <param name="Leg">On which leg.</param>
/// <param name="PerWheel">Done at each wheel, else once for the vehicle.</param>
/// <param name="Job">The least job for which it is needed.</param>
/// <param name="Title">A few words.</param>
/// <param name="Text">What to do.</param>
/// <param name="Caution">What can hurt here, or null.</param>
/// <param name="Entry">What to enter.</param>
/// <param name="Choices">The words of a choice.</param>
/// <param name="Passing">The words of a choice that let the work go on.</param>
/// <param name="Stop">What to do where it does not pass, or null.</param>
/// <param name="HoldPoint">It may not be passed until its check is recorded.</param>
public sealed record ProcedureStep(
    string Id, Leg Leg, bool PerWheel, WheelJob Job, string Title, string Text, string? Caution, StepEntry Entry,
    IReadOnlyList<string> Choices, IReadOnlyList<string> Passing, string? Stop, bool HoldPoint)
{
    /// <summary>The word with which a step is confirmed.</summary>
    public const string Done = "done";

    /// <summary>The field in which the step is recorded.</summary>
    public string FieldAt(string positionOrVehicle) => $"work.steps.{positionOrVehicle}.{Id}";
}

/// <summary>A procedure with its edition.</summary>
public sealed record Procedure(string Name, string Edition, IReadOnlyList<ProcedureStep> Steps)
{
    /// <summary>An ordinary tubeless tyre on a steel or alloy wheel.</summary>
    public static Procedure Ordinary { get; } = Load("ordinary-tubeless.json");

    /// <summary>The steps of a leg in order.</summary>
    public IEnumerable<ProcedureStep> On(Leg leg) => Steps.Where(s => s.Leg == leg);

    /// <summary>The step of a name; throws where there is none.</summary>
    public ProcedureStep Step(string id) => Steps.First(s => s.Id == id);

    private static Procedure Load(string resource)
    {
        using var stream = typeof(Procedure).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"The procedure '{resource}' is not carried.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        var problems = new List<Measures.Problem>();
        var file = new FileObject(FileNode.Parse(reader.ReadToEnd(), resource).Value, problems);
        var procedure = new Procedure(
            file.Text("name")!,
            file.Text("edition")!,
            [.. file.Objects("steps").Select(Step)]);
        file.Done();
        return problems.Count == 0 ? procedure : throw new InvalidOperationException($"{resource}: {problems[0].Where}: {problems[0].Message}");

        static ProcedureStep Step(FileObject o)
        {
            var step = new ProcedureStep(
                o.Text("id")!,
                o.Word("leg", [.. LegWords.All.Select(l => (l.Key(), l))])!.Value,
                o.Word("at", ("wheel", true), ("vehicle", false))!.Value,
                o.Word("job", ("off", WheelJob.OffAndOn), ("balance", WheelJob.Balance), ("demount", WheelJob.Demount)) ?? WheelJob.OffAndOn,
                o.Text("title")!,
                o.Text("text")!,
                o.Text("caution"),
                o.Word("enter", ("confirm", StepEntry.Confirm), ("choice", StepEntry.Choice), ("pressure", StepEntry.Pressure), ("torques", StepEntry.Torques), ("spin", StepEntry.Spin), ("text", StepEntry.Text)) ?? StepEntry.Confirm,
                o.Texts("choices"),
                o.Texts("passing"),
                o.Text("stop"),
                o.Flag("hold") ?? false);
            o.Done();
            return step;
        }
    }
}
