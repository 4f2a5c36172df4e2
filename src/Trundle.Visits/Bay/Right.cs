namespace Trundle.Visits.Bay;

/// <summary>What somebody of the workshop may do beyond reading. Who has which right is one table, <see cref="Rights"/>.</summary>
public enum Right
{
    /// <summary>Enter what was measured, found and done, and keep the registers.</summary>
    Enter,

    /// <summary>Decide a 'refer' or a major finding.</summary>
    Decide,

    /// <summary>Hand a vehicle back, with a signature.</summary>
    HandBack,

    /// <summary>Let a vehicle go with a leak or a dangerous finding, and only with the customer's signed refusal.</summary>
    LetGo,

    /// <summary>Take back that a tyre or a wheel was condemned, or that a rim is of several pieces.</summary>
    TakeBackStop,

    /// <summary>Take a rule of the workshop off one visit.</summary>
    TakeRuleOff,

    /// <summary>Permit a trainee a hazardous act on a visit, and sign off a trainee's work or decide an attempt.</summary>
    PermitTrainee,

    /// <summary>Change the workshop's own procedure.</summary>
    ChangeProcedure,

    /// <summary>Say that the workshop registers the tyres that it sells, and take a purchaser's name out.</summary>
    AnswerForRegistration,

    /// <summary>Erase whom to call.</summary>
    EraseContact,

    /// <summary>Take everything that the workshop owns out as files.</summary>
    TakeOut,

    /// <summary>Let trainees in: add them, give them a code, say that they left.</summary>
    LetTraineesIn,

    /// <summary>Let anybody in, in any role.</summary>
    LetIn,
}

/// <summary>Who may do what.</summary>
public static class Rights
{
    private static readonly Role[] Everybody = [Role.Desk, Role.Technician, Role.Instructor, Role.Trainee, Role.Owner];
    private static readonly Role[] Skilled = [Role.Technician, Role.Instructor, Role.Owner];
    private static readonly Role[] Answering = [Role.Instructor, Role.Owner];

    /// <summary>Every right with its words and the roles that have it.</summary>
    public static IReadOnlyList<(Right Right, string Words, IReadOnlyList<Role> Roles)> All { get; } =
    [
        (Right.Enter, "enter what was measured, found and done, and keep instruments, stock, scrap and stored sets", Everybody),
        (Right.Decide, "decide a 'refer' or a major finding", Skilled),
        (Right.HandBack, "hand a vehicle back, with a signature", Skilled),
        (Right.LetGo, "let a vehicle go with a leak or a dangerous finding, and only with the customer's signed refusal", Answering),
        (Right.TakeBackStop, "take back that a tyre or a wheel was condemned, or that a rim is of several pieces", Answering),
        (Right.TakeRuleOff, "take a rule of the workshop off one visit", Answering),
        (Right.PermitTrainee, "permit a trainee to lift, to demount or to inflate on a visit, and sign off a trainee's work or decide an attempt", Answering),
        (Right.ChangeProcedure, "change the workshop's own procedure", Answering),
        (Right.AnswerForRegistration, "say that the workshop registers the tyres that it sells, and take a purchaser's name out", Answering),
        (Right.EraseContact, "erase whom to call", [Role.Desk, .. Skilled]),
        (Right.TakeOut, "take everything that the workshop owns out as files", [Role.Owner]),
        (Right.LetTraineesIn, "let trainees in: add them, give them a code, say that they left", Answering),
        (Right.LetIn, "let anybody in, in any role", [Role.Owner]),
    ];

    /// <summary>True where a role has a right.</summary>
    public static bool May(this Role role, Right right)
    {
        foreach (var row in All)
        {
            if (row.Right == right)
            {
                return row.Roles.Contains(role);
            }
        }

        return false;
    }
}
