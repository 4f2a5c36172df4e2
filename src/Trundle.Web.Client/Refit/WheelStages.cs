using Trundle.Engine.Fixings;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Refit;

/// <summary>
/// The stages at the wheels as this page has them in hand. Every fixing is an entry, so nothing is lost; but a page that was left, a reload and
/// another device cannot know what became of the joint meanwhile, so there the wheel asks first.
/// </summary>
public sealed class WheelStages(OpenVisit visit)
{
    private (string At, string Record)? _inHand;
    private int _stays;

    /// <summary>The hand has left the wheel.</summary>
    public void Leave()
    {
        _inHand = null;
        _stays++;
    }

    /// <summary>How far a wheel has come by this plan; a problem where its record does not follow the plan.</summary>
    public Reading<TighteningProgress> At(string at, FixingPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var record = Record(at);
        var read = plan.TakeUp(record.Stages, record.BegunAgain);
        return read.IsRead && _inHand == (at, Written(at)) ? Reading<TighteningProgress>.Of(read.Value.GoneOn()) : read;
    }

    /// <summary>The newest entry of the stages at a wheel: who tightened last, and when.</summary>
    public Entry? Last(string at) =>
        visit.Fields.Under(TighteningRecord.FieldAt(at)).Where(e => e.Field.Contains(".stage-", StringComparison.Ordinal)).MaxBy(e => e.At);

    /// <summary>Records that the fixing whose turn it is has had its stage: its torque, and with the stage's first fixing the wrench that is in the hand.</summary>
    public Task TightenedAsync(string at, TighteningProgress before, TighteningStep step, Torque? torque) => TightenedAsync(at, before, step, 1, torque);

    /// <summary>Records that the hand went round with the stage: every fixing that still wanted it has had it, in the order drawn, each with its torque.</summary>
    public Task RestOfStageAsync(string at, TighteningProgress before, Torque? torque)
    {
        ArgumentNullException.ThrowIfNull(before);
        return before.Next is { } step ? TightenedAsync(at, before, step, before.Order.Count, torque) : Task.CompletedTask;
    }

    private Task TightenedAsync(string at, TighteningProgress before, TighteningStep first, int most, Torque? torque)
    {
        ArgumentNullException.ThrowIfNull(before);
        var after = before;
        var entries = new List<(string, string)>();
        for (var n = 0; n < most && after.Next is { } step && step.Stage == first.Stage && after.Tightened(step.Fixing) is { IsRead: true } read; n++)
        {
            after = read.Value;
            if (torque is { } set)
            {
                entries.Add((TighteningRecord.TorqueAt(at, step.Stage, step.Fixing), FormattableString.Invariant($"{set.In(visit.Units.Torque):0.#} {visit.Units.Torque}")));
            }
        }

        if (ReferenceEquals(after, before))
        {
            return Task.CompletedTask;
        }

        entries.Insert(0, (TighteningRecord.FieldAt(at, first.Stage), TighteningRecord.Text(after.Record(first.Stage))));

        if (visit["work.instruments.torqueWrench"] is { } wrench && visit[TighteningRecord.WrenchAt(at, first.Stage)] != wrench)
        {
            entries.Add((TighteningRecord.WrenchAt(at, first.Stage), wrench));
        }

        return EnterAsync(at, [.. entries]);
    }

    /// <summary>Begins a wheel again at the first stage; where nothing was tightened yet there is nothing to begin again.</summary>
    public Task BeginAgainAsync(string at)
    {
        var stages = visit.Fields.Under(TighteningRecord.FieldAt(at)).Where(e => e.Field.Contains(".stage-", StringComparison.Ordinal)).Select(e => (e.Field, "")).ToList();
        return stages.Count == 0 ? Task.CompletedTask
            : EnterAsync(at, [.. stages, ($"{TighteningRecord.FieldAt(at)}.begunAgain", FormattableString.Invariant($"{Record(at).BegunAgain + 1}"))]);
    }

    /// <summary>Goes on where the wheel was left, at a person's word that nothing was moved.</summary>
    public Task GoOnAsync(string at, TighteningStep step) =>
        EnterAsync(at, ($"{TighteningRecord.FieldAt(at)}.wentOn", FormattableString.Invariant($"at stage {step.Stage + 1}, fixing {step.Fixing}: nothing was moved")));

    private async Task EnterAsync(string at, params (string Field, string Typed)[] entries)
    {
        var stay = _stays;
        await visit.EnterAsync(entries);
        if (stay == _stays)
        {
            _inHand = (at, Written(at));
        }
    }

    private TighteningRecord Record(string at) =>
        Trundle.Engine.Vehicles.Position.Read(at) is { IsRead: true } position ? visit.State.Work.Tightening.GetValueOrDefault(position.Value) ?? TighteningRecord.Empty : TighteningRecord.Empty;

    private string Written(string at) => string.Join('\n', visit.Fields.Under(TighteningRecord.FieldAt(at)).Select(e => $"{e.Field}={e.Typed}"));
}
