using System.Globalization;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>The next thing to do at a wheel: one fixing at one stage.</summary>
/// <param name="Fixing">Number of the fixing, clockwise from 1.</param>
/// <param name="Stage">Which stage, from 0.</param>
/// <param name="Percent">The stage's share of the torque.</param>
public readonly record struct TighteningStep(int Fixing, int Stage, double Percent);

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
        if (Next is not { } next)
        {
            return Reading<TighteningProgress>.Failed("wheel-finished", "Every fixing of this wheel has had its last stage.");
        }

        return fixing == next.Fixing
            ? Reading<TighteningProgress>.Of(this with { Done = Done + 1 })
            : Reading<TighteningProgress>.Failed("fixing-out-of-turn", string.Create(CultureInfo.InvariantCulture, $"Fixing {next.Fixing} is next at {next.Percent} %, not fixing {fixing}."));
    }

    /// <summary>The work was left: an unfinished wheel begins anew at the first stage; a finished or untouched one stays as it is.</summary>
    public TighteningProgress Interrupted() => Finished || Done == 0 ? this : this with { Done = 0, Interruptions = Interruptions + 1 };

    private TighteningStep StepAt(int index)
    {
        var stage = index / Order.Count;
        return new TighteningStep(Order[index % Order.Count], stage, Percents[stage]);
    }
}
