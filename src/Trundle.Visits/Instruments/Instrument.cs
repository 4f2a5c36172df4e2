using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Engine.Instruments;

namespace Trundle.Visits.Instruments;

/// <summary>How an instrument stands on a day.</summary>
public enum InstrumentStanding
{
    /// <summary>Its last check was good, and none is due.</summary>
    InOrder,

    /// <summary>Nothing is known of how good it is.</summary>
    NeverChecked,

    /// <summary>Its next check is due and was not recorded.</summary>
    Overdue,

    /// <summary>Its last judged check was not passed.</summary>
    NotPassed,

    /// <summary>Not in use.</summary>
    OutOfUse,
}

/// <summary>A check of an instrument that counts.</summary>
/// <param name="On">The day.</param>
/// <param name="Verdict">What it said.</param>
/// <param name="Due">When the next is due, or null where nobody said.</param>
public sealed record InstrumentCheck(DateOnly On, InstrumentVerdict Verdict, DateOnly? Due)
{
    /// <summary>What it found at its points: shown less reference, in per cent of the reference. Empty where it had none.</summary>
    public IReadOnlyList<double> Deviations { get; init; } = [];
}

/// <summary>An instrument of the workshop, as the bay needs it.</summary>
/// <param name="Id">Its identifier.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Name">What the shop calls it.</param>
/// <param name="Identification">Its serial number or mark, or null.</param>
/// <param name="InUseFrom">Since when it is in use.</param>
/// <param name="OutOfUseFrom">Since when it is not, or null.</param>
/// <param name="Profile">A balancer's profile in the form of the key <c>balancer</c>, or null.</param>
public sealed record Instrument(
    Guid Id, InstrumentKind Kind, string Name, string? Identification, DateOnly InUseFrom, DateOnly? OutOfUseFrom, JsonObject? Profile)
{
    /// <summary>The checks that count, oldest first: none that a later record stands in place of.</summary>
    public IReadOnlyList<InstrumentCheck> Checks { get; init; } = [];

    /// <summary>A balancer's repeatability by its last repeat-spin study, or null.</summary>
    public InstrumentRepeatability? Repeatability { get; init; }

    /// <summary>The last check, or null.</summary>
    public InstrumentCheck? Last => Checks.Count == 0 ? null : Checks[^1];

    /// <summary>The last check with a verdict: one that judges nothing takes no verdict away.</summary>
    public InstrumentCheck? LastJudged => Checks.LastOrDefault(c => c.Verdict != InstrumentVerdict.NotJudged);

    /// <summary>When the next check is due: as the last check that names a day says.</summary>
    public DateOnly? Due => Checks.LastOrDefault(c => c.Due is not null)?.Due;

    /// <summary>How it stands on a day.</summary>
    public InstrumentStanding StandingOn(DateOnly day) =>
        day < InUseFrom || day >= OutOfUseFrom ? InstrumentStanding.OutOfUse
        : LastJudged is { Verdict: not InstrumentVerdict.Passed } ? InstrumentStanding.NotPassed
        : Due < day ? InstrumentStanding.Overdue
        : LastJudged is null ? InstrumentStanding.NeverChecked
        : InstrumentStanding.InOrder;

    /// <summary>The caution for whoever has it in the hand on a day, or null where it is in order.</summary>
    public string? CautionOn(DateOnly day) => StandingOn(day) switch
    {
        InstrumentStanding.InOrder => null,
        InstrumentStanding.NeverChecked => $"No check of {Name} is recorded: nobody knows how far it is off. Have it checked, or take another.",
        InstrumentStanding.Overdue => $"The check of {Name} was due on {Day(Due!.Value)}. Take another, or have it checked; a value that it gave since then stands on an instrument nobody vouches for.",
        InstrumentStanding.NotPassed => LastJudged!.Verdict == InstrumentVerdict.Failed
            ? $"{Name} did not pass its check of {Day(LastJudged.On)}. Do not use it: take another."
            : $"The check of {Name} of {Day(LastJudged.On)} could not say whether it is right. Take another, or have it checked.",
        InstrumentStanding.OutOfUse => $"{Name} is not in use. Take another.",
    };

    /// <summary>How it stands, in a word or two.</summary>
    public static string Word(InstrumentStanding standing) => standing switch
    {
        InstrumentStanding.InOrder => "in order",
        InstrumentStanding.NeverChecked => "never judged",
        InstrumentStanding.Overdue => "overdue",
        InstrumentStanding.NotPassed => "not passed",
        InstrumentStanding.OutOfUse => "out of use",
    };

    /// <summary>The square beside that word, on the scale of the findings' squares.</summary>
    public static Category Square(InstrumentStanding standing) => standing switch
    {
        InstrumentStanding.InOrder or InstrumentStanding.OutOfUse => Category.None,
        InstrumentStanding.NeverChecked => Category.Refer,
        InstrumentStanding.Overdue => Category.Major,
        InstrumentStanding.NotPassed => Category.Dangerous,
    };

    /// <summary>A day for a person.</summary>
    public static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
