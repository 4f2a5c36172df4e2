using System.Text;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Procedures;

/// <summary>
/// The procedure that the program carries: one part on which all stand, and a part for each circumstance in which the work is another. Each is a
/// data file in the form that a workshop's own has.
/// </summary>
public static class BuiltInProcedure
{
    /// <summary>The key of the part on which all stand.</summary>
    public const string BaseKey = "base";

    // In this order, since what stands behind one step stands in the order of the parts.
    private static readonly string[] Keys =
    [
        BaseKey, "sensor", "truck", "motorcycle", "air-suspension", "heavy-wheel", "low-profile-or-run-flat", "reversed-rim", "tube-type", "multi-piece-stop", "puncture-repair",
    ];

    /// <summary>Every part as its file has it.</summary>
    public static IReadOnlyList<PartFile> Files { get; } = [.. Keys.Select(Load)];

    /// <summary>The text of a part's file.</summary>
    public static string TextOf(string key)
    {
        using var stream = typeof(BuiltInProcedure).Assembly.GetManifestResourceStream($"{key}.procedure.json")
            ?? throw new InvalidOperationException($"The procedure '{key}' is not carried.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    /// <summary>Puts the parts together.</summary>
    internal static Procedure Compose()
    {
        var first = Files[0];
        var composition = new Composition(first.Steps.Select(s => Composition.Of(s, s.Leg!.Value, s.PerWheel!.Value)));
        foreach (var file in Files.Skip(1))
        {
            foreach (var step in file.Steps)
            {
                if (composition.Find(step.Id) is { } there)
                {
                    composition.Replace(Composition.With(there, step));
                }
                else
                {
                    composition.Insert(Composition.Of(step, step.Leg!.Value, step.PerWheel!.Value), step.After!);
                }
            }
        }

        return new Procedure([.. Files.Select(f => new ProcedurePart(f.Part!, f.Name!, f.Edition!, f.When))], composition.Steps, []);
    }

    private static PartFile Load(string key)
    {
        var name = $"{key}.procedure.json";
        var problems = new List<Problem>();
        var file = PartFileReader.Read(FileNode.Parse(TextOf(key), name).Value, problems);
        return problems.Count == 0 ? file : throw new InvalidOperationException($"{name}: {problems[0].Where}: {problems[0].Message}");
    }
}
