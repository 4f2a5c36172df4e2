using Trundle.Engine.Uniformity;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Pictures;

namespace Trundle.Visits.Operations;

/// <summary>The drawings that belong to the answer of <c>runout</c>: the readings around, and tyre and wheel parted where there are mountings.</summary>
public static class RunoutDrawing
{
    /// <summary>The drawings of a file, one or two a direction; none where the file cannot be answered.</summary>
    /// <param name="body">The file.</param>
    /// <param name="unit">The reader's unit of runout: <c>mm</c> or <c>in</c>.</param>
    public static IReadOnlyList<Drawing> Of(FileNode body, string unit)
    {
        ArgumentNullException.ThrowIfNull(body);
        if (RunoutFileReader.Read(body, []) is not { } file)
        {
            return [];
        }

        var drawings = new List<Drawing>();
        foreach (var trace in file.Traces)
        {
            var answer = RunoutAnswer.Of(file, trace);
            if (!answer.IsRead)
            {
                return [];
            }

            var (found, word) = (answer.Value, RunoutLimits.Word(trace.Direction));
            drawings.Add(new Drawing(word, RunoutCircle.Draw($"runout-{word}", new RunoutView($"{word} runout around", found.Found, Limit(found), unit))));
            if (found.Parts is { } parts && found.Best is { } best)
            {
                var now = parts.Tyre.Turned(trace.Mountings[^1].Turn);
                drawings.Add(new Drawing($"{word} match", MatchVectors.Draw($"match-{word}", new MatchView<Length>("Tyre and wheel before and after the turn", now, parts.Wheel, best.Turn, unit, unit == "in" ? 4 : 3))));
            }
        }

        return drawings;
    }

    private static Length? Limit(RunoutAnswer answer) =>
        answer.Verdict.Ruling is { Amount: { Value: { } value, Unit: "mm" } } ? Length.FromMillimetres(value) : null;
}
