using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Procedures;

/// <summary>Reads a procedure's file strictly: an instructor writes it, so each problem names its place and what would be right.</summary>
public static class PartFileReader
{
    /// <summary>The words of what is entered.</summary>
    public static IReadOnlyList<(string Word, StepEntry Value)> EntryWords { get; } =
    [
        ("confirm", StepEntry.Confirm), ("choice", StepEntry.Choice), ("pressure", StepEntry.Pressure), ("torques", StepEntry.Torques),
        ("spin", StepEntry.Spin), ("text", StepEntry.Text), ("repair", StepEntry.Repair), ("nothing", StepEntry.Nothing),
    ];

    /// <summary>The words of the least job.</summary>
    public static IReadOnlyList<(string Word, WheelJob Value)> JobWords { get; } = [("off", WheelJob.OffAndOn), ("balance", WheelJob.Balance), ("demount", WheelJob.Demount)];

    private static readonly (string, Leg)[] Legs = [.. new[] { Leg.OffTheCar, Leg.Refit, Leg.Prove }.Select(l => (l.Key(), l))];

    private static readonly (string, Circumstance)[] Whens = [.. CircumstanceWords.All.Select(c => (c.Key(), c))];

    /// <summary>Reads a file.</summary>
    /// <param name="root">The file's root.</param>
    /// <param name="problems">Gathers every problem.</param>
    public static PartFile Read(FileNode root, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(root);
        ArgumentNullException.ThrowIfNull(problems);
        var file = new FileObject(root, problems);
        var when = ReadWhen(file);
        var read = new PartFile(file.Text("name"), file.Text("edition"), file.Text("part"), file.Text("of"), when, [.. file.Objects("machines").Select(ReadMachine).OfType<MountingMachine>()],
            [.. file.Objects("steps").Select(o => ReadStep(o, when)).OfType<PartStep>()]);
        file.Done();
        var twice = read.Steps.GroupBy(s => s.Id, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1);
        if (twice is not null)
        {
            problems.Add(new Problem($"{twice.Last().Path}.id", "step-twice", $"The step '{NumberText.Shown(twice.Key)}' stands twice in this file; write all that is said of it in one place."));
        }

        return read;
    }

    private static MountingMachine? ReadMachine(FileObject o)
    {
        var whole = o.Require("name", "say what the workshop calls the machine") & o.Require("instruction", "say what its maker's instruction is, or where it stands");
        var machine = whole && o.Text("name") is { } name && o.Text("instruction") is { } instruction ? new MountingMachine(name, instruction) : null;
        o.Done();
        return machine;
    }

    private static PartStep? ReadStep(FileObject o, IReadOnlyList<Circumstance> ofTheFile)
    {
        var id = o.Require("id", "name the step") ? o.Text("id") : null;
        if (id is not null && !(id.Length <= 40 && id.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-') && char.IsAsciiLetterLower(id[0])))
        {
            o.Wrong("id", "id-unreadable", $"'{NumberText.Shown(id)}' is not a step's name: write small letters, digits and '-', beginning with a letter, such as rim-check.");
            id = null;
        }

        var own = ReadWhen(o);
        var when = own.Count > 0 ? own : ofTheFile;
        var step = new PartStep(o.Path, id ?? "")
        {
            After = o.Text("after"),
            Leg = o.Word("leg", Legs),
            PerWheel = o.Word("at", ("wheel", true), ("vehicle", false)),
            Job = o.Word("job", [.. JobWords]),
            When = when,
            Title = o.Text("title"),
            Text = o.Text("text"),
            Also = Sentences(o, "also", when),
            Why = o.Text("why"),
            Tools = o.Texts("tools"),
            Cautions = Sentences(o, "cautions", when),
            SaysCautions = o.Has("cautions"),
            AtMachine = o.Flag("machine"),
            Entry = o.Word("enter", [.. EntryWords]),
            Choices = o.Texts("choices"),
            Passing = o.Texts("passing"),
            Stop = o.Text("stop"),
            HoldPoint = o.Flag("hold"),
            Act = o.Word("act", [.. HazardousActWords.All.Select(a => (a.Key(), a))]),
        };
        if (step.Entry is { } entry && (entry == StepEntry.Choice) != (step.Choices.Count > 0))
        {
            o.Wrong("choices", "choices-and-entry", entry == StepEntry.Choice ? "A choice needs its words: give 'choices', and in 'passing' those that let the work go on." : "Words to choose from belong to a choice: write \"enter\": \"choice\".");
        }

        foreach (var (word, index) in step.Passing.Select((p, i) => (p, i)).Where(p => step.Choices.Count > 0 && !step.Choices.Contains(p.p)))
        {
            o.Problems.Add(new Problem($"{o.PathOf("passing")}[{index.ToString(System.Globalization.CultureInfo.InvariantCulture)}]", "word-unknown", $"'{NumberText.Shown(word)}' is none of the choices; write {ChoiceText.Of(step.Choices)}."));
        }

        if (step.Choices.Count > 0 && step.Passing.Count == 0)
        {
            o.Wrong("passing", "missing", "'passing' is missing: name the choices that let the work go on, or nothing ever passes this step.");
        }

        o.Done();
        return id is null ? null : step;
    }

    /// <summary>A sentence, or an object with a sentence and where it holds.</summary>
    private static List<StepSentence> Sentences(FileObject o, string key, IReadOnlyList<Circumstance> when)
    {
        var sentences = new List<StepSentence>();
        foreach (var item in o.Items(key))
        {
            if (item.Kind == NodeKind.Text)
            {
                if (string.IsNullOrWhiteSpace(item.Text))
                {
                    o.Problems.Add(new Problem(item.Path, "empty", "Here should stand a sentence; leave the place out where there is none."));
                    continue;
                }

                sentences.Add(new StepSentence(item.Text.Trim(), when));
                continue;
            }

            var sentence = new FileObject(item, o.Problems);
            if (sentence.Require("text", "give the sentence") && sentence.Text("text") is { } text)
            {
                var own = ReadWhen(sentence);
                sentences.Add(new StepSentence(text, own.Count > 0 ? own : when));
            }

            sentence.Knows("when");
            sentence.Done();
        }

        return sentences;
    }

    private static List<Circumstance> ReadWhen(FileObject o)
    {
        var list = new List<Circumstance>();
        foreach (var item in o.Items("when"))
        {
            var word = item.Text.Trim();
            var at = Array.FindIndex(Whens, w => string.Equals(w.Item1, word, StringComparison.OrdinalIgnoreCase));
            if (item.Kind == NodeKind.Text && at >= 0)
            {
                list.Add(Whens[at].Item2);
            }
            else
            {
                var nearest = FileObject.Nearest(word, Whens.Select(w => w.Item1));
                o.Problems.Add(new Problem(item.Path, "word-unknown", $"'{NumberText.Shown(word)}' is not a circumstance{(nearest is null ? "" : $"; did you mean '{nearest}'?")}; write {ChoiceText.Of(Whens.Select(w => w.Item1))}."));
            }
        }

        return list;
    }
}
