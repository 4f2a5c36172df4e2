namespace Trundle.Visits.Roll;

/// <summary>How an attempt was seen.</summary>
public enum AttemptMode
{
    /// <summary>The assessor stood beside it.</summary>
    Observed,

    /// <summary>On a practice wheel or in a drill.</summary>
    Simulated,

    /// <summary>Told by somebody else, with what ties the learner to the very wheels.</summary>
    ThirdParty,
}

/// <summary>What the assessor decided. A score decides nothing.</summary>
public enum AttemptDecision
{
    /// <summary>Nobody decided yet.</summary>
    Open,

    /// <summary>Satisfactory.</summary>
    Satisfactory,

    /// <summary>Not yet.</summary>
    NotYet,
}

/// <summary>A tool of an attempt.</summary>
/// <param name="Name">Its name in the workshop.</param>
/// <param name="Calibrated">When it was last calibrated, or null.</param>
public sealed record AttemptTool(string Name, DateOnly? Calibrated);

/// <summary>What was measured against what was required, as a person reads it.</summary>
public sealed record AttemptMeasure(string What, string Measured, string Required);

/// <summary>A criterion of an attempt.</summary>
public sealed record AttemptCriterion(string Words, bool Met);

/// <summary>An oral question, and whether it was answered.</summary>
public sealed record OralQuestion(string Asked, bool Answered);

/// <summary>A signature: who, and when it was given with that person's PIN.</summary>
public sealed record AttemptSignature(string By, DateTimeOffset At);

/// <summary>One attempt of one learner at one task. Rows are added and never changed: a row that puts another right names it.</summary>
public sealed record AttemptRow
{
    /// <summary>This row.</summary>
    public required Guid Id { get; init; }

    /// <summary>The learner.</summary>
    public required string Learner { get; init; }

    /// <summary>The task's key.</summary>
    public required string Task { get; init; }

    /// <summary>The edition of the task list that it was judged by.</summary>
    public required string Edition { get; init; }

    /// <summary>Which attempt of this learner at this task, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>When.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The vehicle and the wheel, or the practice wheel's level and seed.</summary>
    public required string On { get; init; }

    /// <summary>How it was seen.</summary>
    public required AttemptMode Mode { get; init; }

    /// <summary>The visit, where it was real work.</summary>
    public Guid? Visit { get; init; }

    /// <summary>The tools, with their calibration.</summary>
    public IReadOnlyList<AttemptTool> Tools { get; init; } = [];

    /// <summary>What was measured.</summary>
    public IReadOnlyList<AttemptMeasure> Measures { get; init; } = [];

    /// <summary>Each criterion.</summary>
    public IReadOnlyList<AttemptCriterion> Criteria { get; init; } = [];

    /// <summary>What was asked by word of mouth.</summary>
    public IReadOnlyList<OralQuestion> Questions { get; init; } = [];

    /// <summary>What ended it for safety, or null.</summary>
    public string? SafetyStop { get; init; }

    /// <summary>Who assesses, or null where nobody did yet.</summary>
    public string? Assessor { get; init; }

    /// <summary>What the assessor decided.</summary>
    public AttemptDecision Decision { get; init; }

    /// <summary>What to do differently.</summary>
    public string Feedback { get; init; } = "";

    /// <summary>The assessor's signature.</summary>
    public AttemptSignature? Signature { get; init; }

    /// <summary>The second signature that a task of lifting or inflating needs.</summary>
    public AttemptSignature? SecondSignature { get; init; }

    /// <summary>The points of an attempt in practice, out of 100; null elsewhere. They decide nothing.</summary>
    public int? Points { get; init; }

    /// <summary>The row of the same attempt that this one decides, or null where it is the attempt itself.</summary>
    public Guid? Decides { get; init; }

    /// <summary>The row of an earlier attempt that this one assesses again, or null.</summary>
    public Guid? Again { get; init; }
}
