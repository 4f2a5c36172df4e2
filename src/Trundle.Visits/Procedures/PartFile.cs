using Trundle.Visits.Bay;

namespace Trundle.Visits.Procedures;

/// <summary>One step as a procedure's file gives it: a new one, or what is laid over one that stands. What the file leaves out is null or empty.</summary>
/// <param name="Path">Its place in the file.</param>
/// <param name="Id">Its name.</param>
public sealed record PartStep(string Path, string Id)
{
    /// <summary>The step behind which a new one stands, or null.</summary>
    public string? After { get; init; }

    /// <summary>On which leg, or null.</summary>
    public Leg? Leg { get; init; }

    /// <summary>At each wheel, or once for the vehicle; or null.</summary>
    public bool? PerWheel { get; init; }

    /// <summary>The least job, or null.</summary>
    public WheelJob? Job { get; init; }

    /// <summary>Where it is due; empty where nothing is said.</summary>
    public IReadOnlyList<Circumstance> When { get; init; } = [];

    /// <summary>A few words, or null.</summary>
    public string? Title { get; init; }

    /// <summary>What to do, or null.</summary>
    public string? Text { get; init; }

    /// <summary>What to do besides.</summary>
    public IReadOnlyList<StepSentence> Also { get; init; } = [];

    /// <summary>Why, or null.</summary>
    public string? Why { get; init; }

    /// <summary>With what.</summary>
    public IReadOnlyList<string> Tools { get; init; } = [];

    /// <summary>What can hurt.</summary>
    public IReadOnlyList<StepSentence> Cautions { get; init; } = [];

    /// <summary>True where the file says anything of cautions.</summary>
    public bool SaysCautions { get; init; }

    /// <summary>Done at the mounting machine, or null.</summary>
    public bool? AtMachine { get; init; }

    /// <summary>What to enter, or null.</summary>
    public StepEntry? Entry { get; init; }

    /// <summary>The words of a choice.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>Those that pass.</summary>
    public IReadOnlyList<string> Passing { get; init; } = [];

    /// <summary>What to do where it does not pass, or null.</summary>
    public string? Stop { get; init; }

    /// <summary>A hold point, or null.</summary>
    public bool? HoldPoint { get; init; }

    /// <summary>What it does that can maim, or null.</summary>
    public HazardousAct? Act { get; init; }
}

/// <summary>A procedure's file as read.</summary>
/// <param name="Name">Its name for people, or null.</param>
/// <param name="Edition">Its edition, or null.</param>
/// <param name="Part">Its key, or null.</param>
/// <param name="Of">The edition of the carried procedure for which it was written, or null.</param>
/// <param name="When">Where its steps are due; empty where always.</param>
/// <param name="Machines">The workshop's mounting machines.</param>
/// <param name="Steps">Its steps.</param>
public sealed record PartFile(
    string? Name, string? Edition, string? Part, string? Of, IReadOnlyList<Circumstance> When, IReadOnlyList<MountingMachine> Machines, IReadOnlyList<PartStep> Steps);
