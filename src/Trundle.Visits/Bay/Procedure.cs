using Trundle.Visits.Procedures;

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

    /// <summary>What was found of a puncture from inside, and with what it is repaired.</summary>
    Repair,

    /// <summary>Nothing: the step stops the work here, and nothing that is entered at it lifts that.</summary>
    Nothing,
}

/// <summary>A sentence of a step that holds at every wheel, or only where one of some things is so of it.</summary>
/// <param name="Text">The sentence.</param>
/// <param name="When">Where it holds: any of these; empty where it holds always.</param>
public sealed record StepSentence(string Text, IReadOnlyList<Circumstance> When)
{
    /// <summary>The workshop added it: it is shown as its own, beneath the carried ones.</summary>
    public bool OfTheWorkshop { get; init; }
}

/// <summary>One step of the hand work, in our own words.</summary>
public sealed record ProcedureStep
{
    /// <summary>The word with which a step is confirmed.</summary>
    public const string Done = "done";

    /// <summary>Stable name; the field is <c>work.steps.(position or vehicle).(id)</c>.</summary>
    public required string Id { get; init; }

    /// <summary>On which leg.</summary>
    public required Leg Leg { get; init; }

    /// <summary>Done at each wheel, else once for the vehicle.</summary>
    public required bool PerWheel { get; init; }

    /// <summary>The least job for which it is needed.</summary>
    public required WheelJob Job { get; init; }

    /// <summary>Where it is due at all: any of these; empty where it is due always.</summary>
    public IReadOnlyList<Circumstance> When { get; init; } = [];

    /// <summary>A few words.</summary>
    public required string Title { get; init; }

    /// <summary>What to do.</summary>
    public required string Text { get; init; }

    /// <summary>What to do besides.</summary>
    public IReadOnlyList<StepSentence> Also { get; init; } = [];

    /// <summary>Why it is done, or null.</summary>
    public string? Why { get; init; }

    /// <summary>With what.</summary>
    public IReadOnlyList<string> Tools { get; init; } = [];

    /// <summary>What can hurt here.</summary>
    public IReadOnlyList<StepSentence> Cautions { get; init; } = [];

    /// <summary>Done at the mounting machine, so that its maker's own instruction comes first.</summary>
    public bool AtMachine { get; init; }

    /// <summary>What to enter.</summary>
    public required StepEntry Entry { get; init; }

    /// <summary>The words of a choice.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>The words of a choice that let the work go on.</summary>
    public IReadOnlyList<string> Passing { get; init; } = [];

    /// <summary>What to do where it does not pass, or null.</summary>
    public string? Stop { get; init; }

    /// <summary>It may not be passed until its check is recorded.</summary>
    public bool HoldPoint { get; init; }

    /// <summary>What it does that can maim, or null: a trainee needs an instructor's permission before it.</summary>
    public HazardousAct? Act { get; init; }

    /// <summary>The workshop added or changed it.</summary>
    public bool OfTheWorkshop { get; init; }

    /// <summary>The field in which the step is recorded.</summary>
    public string FieldAt(string positionOrVehicle) => $"work.steps.{positionOrVehicle}.{Id}";

    /// <summary>What to do in the carried procedure's words, where it has this step and the workshop only added to them or left them; else the workshop's own.</summary>
    public string CarriedText => Procedure.BuiltIn.Find(Id)?.Text is { } carried && (carried == Text || SafetyWords.AddsTo(carried, Text)) ? carried : Text;

    /// <summary>True where what to do is told in the workshop's words and not in the carried procedure's.</summary>
    public bool IsInOwnWords => OfTheWorkshop && Procedure.BuiltIn.Find(Id)?.Text != CarriedText;

    /// <summary>What the workshop says at this step besides, each with whether it is a caution; shown beneath the carried words as its own.</summary>
    public IReadOnlyList<(string Words, bool IsCaution)> OwnWords =>
    [
        .. CarriedText.Length < Text.Length ? [(Text[CarriedText.Length..].Trim(), false)] : Array.Empty<(string, bool)>(),
        .. Also.Where(s => s.OfTheWorkshop).Select(s => (s.Text, false)),
        .. Cautions.Where(s => s.OfTheWorkshop).Select(s => (s.Text, true)),
    ];

    private static string NotKnown(StepSentence sentence, Circumstances here) =>
        $"Nobody has said whether it is so here, {string.Join(" or ", sentence.When.Where(here.May).Select(w => w.ForPeople()))}: {sentence.Text}";

    /// <summary>The step as it is at one wheel, with the sentences that hold there; null where it is not due. A caution is given also where nobody knows.</summary>
    public ProcedureStep? Where(Circumstances here)
    {
        ArgumentNullException.ThrowIfNull(here);
        return When.Count > 0 && !When.Any(here.Does) ? null
            : this with
            {
                Also = [.. Also.Where(s => s.When.Count == 0 || s.When.Any(here.Does))],
                Cautions = [.. Cautions.Where(s => s.When.Count == 0 || s.When.Any(here.May)).Select(s => s.When.Count == 0 || s.When.Any(here.Does) ? s : s with { Text = NotKnown(s, here) })],
            };
    }
}

/// <summary>A mounting machine of the workshop, with what its maker says. That comes first.</summary>
/// <param name="Name">What the workshop calls it.</param>
/// <param name="Instruction">Its maker's own instruction, as entered: where it stands, or its words in short.</param>
public sealed record MountingMachine(string Name, string Instruction);

/// <summary>One part of a procedure: the one on which all stand, what comes beside it in some circumstances, or what the workshop laid over both.</summary>
/// <param name="Key">Its name in files.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Edition">Its edition.</param>
/// <param name="When">Where its steps are due; empty where always.</param>
public sealed record ProcedurePart(string Key, string Name, string Edition, IReadOnlyList<Circumstance> When);

/// <summary>A procedure: its parts with their editions, and every step in order, those too that are due in some circumstances only.</summary>
/// <param name="Parts">What it is put together from.</param>
/// <param name="Steps">Every step in order.</param>
/// <param name="Machines">The workshop's mounting machines.</param>
public sealed record Procedure(IReadOnlyList<ProcedurePart> Parts, IReadOnlyList<ProcedureStep> Steps, IReadOnlyList<MountingMachine> Machines)
{
    private readonly Dictionary<string, ProcedureStep> _byId = Steps.ToDictionary(s => s.Id, StringComparer.Ordinal);

    /// <summary>The procedure that the program carries.</summary>
    public static Procedure BuiltIn { get; } = BuiltInProcedure.Compose();

    /// <summary>What was left out of the workshop's own, since it stood against a safety word; a sentence each.</summary>
    public IReadOnlyList<string> LeftOut { get; init; } = [];

    /// <summary>The name of the part on which all stand.</summary>
    public string Name => Parts[0].Name;

    /// <summary>The edition of the carried procedure.</summary>
    public string Edition => Parts[0].Edition;

    /// <summary>What the workshop laid over it, or null.</summary>
    public ProcedurePart? Workshop => Parts.FirstOrDefault(p => p.Key == WorkshopProcedure.Key);

    /// <summary>The edition in words: the carried one, and the workshop's where it has its own.</summary>
    public string EditionText => $"edition {Edition}{(Workshop is { } own ? $", with the workshop's own of edition {own.Edition}" : "")}";

    /// <summary>The steps of a leg in order.</summary>
    public IEnumerable<ProcedureStep> On(Leg leg) => Steps.Where(s => s.Leg == leg);

    /// <summary>The step of a name; throws where there is none.</summary>
    public ProcedureStep Step(string id) => _byId[id];

    /// <summary>The step of a name, or null.</summary>
    public ProcedureStep? Find(string id) => _byId.GetValueOrDefault(id);
}
