using Trundle.Visits.Bay;

namespace Trundle.Visits.Procedures;

/// <summary>Steps in order, into which further parts are put.</summary>
internal sealed class Composition
{
    private readonly List<ProcedureStep> _steps;
    private readonly Dictionary<string, string> _after = new(StringComparer.Ordinal);

    public Composition(IEnumerable<ProcedureStep> steps) => _steps = [.. steps];

    public IReadOnlyList<ProcedureStep> Steps => _steps;

    public ProcedureStep? Find(string id) => _steps.Find(s => s.Id == id);

    /// <summary>Puts a new step behind another, and behind all that was put behind that one before.</summary>
    public void Insert(ProcedureStep step, string after)
    {
        var at = _steps.FindIndex(s => s.Id == after) + 1;
        while (at < _steps.Count && Follows(_steps[at].Id, after))
        {
            at++;
        }

        _steps.Insert(at, step);
        _after[step.Id] = after;
    }

    /// <summary>Puts a step in the place of the one of its name.</summary>
    public void Replace(ProcedureStep step) => _steps[_steps.FindIndex(s => s.Id == step.Id)] = step;

    /// <summary>A new step of what a file gives, where it has what a step needs: title, text, leg and place.</summary>
    public static ProcedureStep Of(PartStep part, Leg leg, bool perWheel) => new()
    {
        Id = part.Id,
        Leg = leg,
        PerWheel = perWheel,
        Job = part.Job ?? WheelJob.OffAndOn,
        When = part.When,
        Title = part.Title!,
        Text = part.Text!,
        Also = Always(part.Also, part.When),
        Why = part.Why,
        Tools = part.Tools,
        Cautions = Always(part.Cautions, part.When),
        AtMachine = part.AtMachine ?? false,
        Entry = part.Entry ?? StepEntry.Confirm,
        Choices = part.Choices,
        Passing = part.Passing,
        Stop = part.Stop,
        HoldPoint = part.HoldPoint ?? false,
        Act = part.Act,
    };

    /// <summary>A step with what a file says besides.</summary>
    public static ProcedureStep With(ProcedureStep step, PartStep part) => step with
    {
        Also = [.. step.Also, .. part.Also.Where(s => step.Text != s.Text && !step.Also.Any(a => a.Text == s.Text))],
        Cautions = [.. step.Cautions, .. part.Cautions.Where(s => !step.Cautions.Any(c => c.Text == s.Text))],
    };

    /// <summary>What is said of a step that is due there only needs no word of where it holds.</summary>
    private static List<StepSentence> Always(IReadOnlyList<StepSentence> sentences, IReadOnlyList<Circumstance> when) =>
        [.. sentences.Select(s => s.When.SequenceEqual(when) ? s with { When = [] } : s)];

    private bool Follows(string id, string after)
    {
        for (var at = id; _after.TryGetValue(at, out var before); at = before)
        {
            if (before == after)
            {
                return true;
            }
        }

        return false;
    }
}
