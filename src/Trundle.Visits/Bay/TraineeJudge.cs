namespace Trundle.Visits.Bay;

/// <summary>What a step needs besides its check where a trainee recorded it.</summary>
public static class TraineeJudge
{
    /// <summary>Why a trainee may not do a hazardous act now, in words; null where the trainee may.</summary>
    /// <param name="work">What was recorded.</param>
    /// <param name="act">What is to be done.</param>
    /// <param name="trainee">The trainee's name.</param>
    /// <param name="at">When it was done, or null for now: what was permitted after it does not count.</param>
    public static string? WhyNot(VisitWork work, HazardousAct act, string trainee, DateTimeOffset? at = null)
    {
        ArgumentNullException.ThrowIfNull(work);
        var given = work.Permissions.Where(p => p.Act == act && string.Equals(p.For, trainee, StringComparison.Ordinal)).ToList();
        var before = given.Where(p => at is null || p.At is null || p.At <= at).ToList();
        return before.Any(p => p.Lacks is null) ? null
            : before.Count > 0 ? $"the permission for {act.ForPeople()} does not count: {before[^1].Lacks}"
            : given.Count > 0 ? $"the permission for {act.ForPeople()} was given after it was done"
            : $"no instructor permitted {act.ForPeople()} on this visit";
    }

    /// <summary>A step as it stands once it is asked who recorded it.</summary>
    /// <param name="state">The step by its own check.</param>
    /// <param name="work">What was recorded.</param>
    internal static StepState Judge(StepState state, VisitWork work)
    {
        if (state.Record is null || work.TraineeAt(state.At, state.Step.Id) is not { } trainee)
        {
            return state;
        }

        var signed = work.SignedOffAt(state.At, state.Step.Id) is { Counts: true } said && !(said.At < trainee.At) ? said : null;
        if (signed is { Satisfactory: false })
        {
            return state with { Standing = StepStanding.Failed, Why = $"{signed.By}, {signed.Role?.Word()}, looked at it: not yet.{(signed.Note is { } note ? $" {note.TrimEnd('.')}." : "")} It is done again, and recorded again." };
        }

        return signed is null && state.Step.Act is { } act && WhyNot(work, act, trainee.By, trainee.At) is { } why
            ? state with { Standing = StepStanding.Failed, Why = $"{trainee.By}, a trainee, recorded it, and {why}. Stop: an instructor looks at it and signs it off, or it is done again by somebody who may." }
            : state;
    }
}
