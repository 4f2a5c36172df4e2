using System.Globalization;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>The next thing to do at a wheel: one fixing at one stage.</summary>
/// <param name="Fixing">Number of the fixing, clockwise from 1.</param>
/// <param name="Stage">Which stage, from 0.</param>
/// <param name="Percent">The stage's share of the torque.</param>
public readonly record struct TighteningStep(int Fixing, int Stage, double Percent);

/// <summary>One stage as it was recorded: which fixings had it, in the order in which they were tightened.</summary>
/// <param name="Percent">The stage's share of the torque.</param>
/// <param name="Fixings">Numbers of the fixings, clockwise from 1.</param>
public sealed record RecordedStage(double Percent, IReadOnlyList<int> Fixings);

/// <summary>
/// How far the tightening of one wheel has come. All fixings are taken through one stage before the next begins. A wheel that was left before
/// its last stage was done starts again at the first stage with the first fixing, since nobody can know what the joint did meanwhile.
/// </summary>
/// <param name="Order">The order in use: the maker's own, else the computed one.</param>
/// <param name="Percents">The stages as shares of the torque, rising, the last 100.</param>
/// <param name="Done">How many steps are done since the start or the last interruption.</param>
/// <param name="Interruptions">How often it began anew.</param>
public sealed record TighteningProgress(IReadOnlyList<int> Order, IReadOnlyList<double> Percents, int Done, int Interruptions)
{
    /// <summary>A wheel with its fixings on by hand and none tightened.</summary>
    /// <source>common practice</source>
    public static TighteningProgress Start(IReadOnlyList<int> order, IReadOnlyList<double> percents)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(percents);
        return new TighteningProgress(order, percents, 0, 0);
    }

    /// <summary>
    /// Takes a wheel up again from what was recorded of it, as after a reload or on another device. Within its stages it is <see cref="Left"/>:
    /// a person says first whether anything was moved meanwhile.
    /// </summary>
    /// <param name="order">The order in use now.</param>
    /// <param name="percents">The stages in use now.</param>
    /// <param name="recorded">The stages from the first on; every one but the last is whole.</param>
    /// <param name="interruptions">How often it began anew.</param>
    /// <returns>The state, or a problem where the record does not follow the order and the stages in use: then only the first stage is left.</returns>
    /// <source>common practice</source>
    public static Reading<TighteningProgress> TakenUp(IReadOnlyList<int> order, IReadOnlyList<double> percents, IReadOnlyList<RecordedStage> recorded, int interruptions)
    {
        ArgumentNullException.ThrowIfNull(recorded);
        var progress = Start(order, percents) with { Interruptions = interruptions };
        for (var i = 0; i < recorded.Count; i++)
        {
            var stage = recorded[i];
            var follows = i < percents.Count && Math.Abs(stage.Percent - percents[i]) < 1e-6
                && stage.Fixings.SequenceEqual(order.Take(stage.Fixings.Count))
                && progress.Done == i * order.Count;
            if (!follows)
            {
                return Reading<TighteningProgress>.Failed("record-out-of-order", string.Create(CultureInfo.InvariantCulture, $"What is recorded of stage {i + 1} does not follow the order and the stages in use now: slacken all, begin again at the first stage."));
            }

            progress = progress with { Done = progress.Done + stage.Fixings.Count };
        }

        return Reading<TighteningProgress>.Of(progress with { Left = progress.Done > 0 && !progress.Finished });
    }

    /// <summary>
    /// True where the wheel was left within its stages and nobody has said yet whether anything was moved meanwhile. Until then no fixing is
    /// taken: it goes on only at a person's word, and begins again without one.
    /// </summary>
    public bool Left { get; init; }

    /// <summary>True where every fixing has had its last stage.</summary>
    public bool Finished => Done >= Order.Count * Percents.Count;

    /// <summary>What comes next, or null where the wheel is finished.</summary>
    public TighteningStep? Next => Finished ? null : StepAt(Done);

    /// <summary>The steps still to do, in order.</summary>
    public IEnumerable<TighteningStep> Remaining => Enumerable.Range(Done, (Order.Count * Percents.Count) - Done).Select(StepAt);

    /// <summary>Records that a fixing was tightened to the stage in hand.</summary>
    /// <param name="fixing">Its number; only the next one is taken.</param>
    /// <returns>The new state, or a problem: out of turn, or the wheel is finished already.</returns>
    public Reading<TighteningProgress> Tightened(int fixing)
    {
        if (Left)
        {
            return Reading<TighteningProgress>.Failed("wheel-left", "This wheel was left within its stages: begin again at the first stage, or say that nothing was moved.");
        }

        if (Next is not { } next)
        {
            return Reading<TighteningProgress>.Failed("wheel-finished", "Every fixing of this wheel has had its last stage.");
        }

        return fixing == next.Fixing
            ? Reading<TighteningProgress>.Of(this with { Done = Done + 1 })
            : Reading<TighteningProgress>.Failed("fixing-out-of-turn", string.Create(CultureInfo.InvariantCulture, $"Fixing {next.Fixing} is next at {next.Percent} %, not fixing {fixing}."));
    }

    /// <summary>The work was left: an unfinished wheel begins anew at the first stage; a finished or untouched one stays as it is.</summary>
    public TighteningProgress Interrupted() => Finished || Done == 0 ? this : BegunAgain();

    /// <summary>All fixings slackened, the first stage first: also a finished wheel, where a person wants it so.</summary>
    public TighteningProgress BegunAgain() => this with { Done = 0, Interruptions = Interruptions + 1, Left = false };

    /// <summary>A person says that nothing was moved since the wheel was left: it goes on where it was.</summary>
    public TighteningProgress GoneOn() => this with { Left = false };

    /// <summary>What to record of a stage, from 0: the fixings that have had it.</summary>
    public RecordedStage Record(int stage) =>
        new(Percents[stage], [.. Order.Take(Math.Clamp(Done - (stage * Order.Count), 0, Order.Count))]);

    private TighteningStep StepAt(int index)
    {
        var stage = index / Order.Count;
        return new TighteningStep(Order[index % Order.Count], stage, Percents[stage]);
    }
}
