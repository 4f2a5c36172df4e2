using System.Globalization;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Rotation;

/// <summary>What is done in one step at the lift.</summary>
public enum LiftAction
{
    /// <summary>Take it off (or the spare out); it waits on a stand.</summary>
    Off,

    /// <summary>Take it off and put it on its new place at once.</summary>
    Move,

    /// <summary>Put the one that waits on its new place.</summary>
    On,
}

/// <summary>One step at the lift.</summary>
/// <param name="Action">What is done.</param>
/// <param name="From">The assembly, by where it sat at the start.</param>
/// <param name="To">Where it goes; for <see cref="LiftAction.Off"/> where it will go in the end.</param>
/// <param name="Remount">Its tyre is turned round on its wheel before it goes on.</param>
/// <param name="Waiting">The assembly that waits on the stand after this step, by where it sat at the start; null where none does.</param>
/// <param name="Words">The step in a sentence.</param>
public sealed record LiftStep(LiftAction Action, Position From, Position To, bool Remount, Position? Waiting, string Words);

/// <summary>Puts the moves of a rotation in an order in which never more than one assembly waits.</summary>
public static class LiftOrder
{
    /// <summary>
    /// Each closed chain of moves is opened at one place: its assembly comes off and waits, the chain is walked backwards so that each next one
    /// goes straight to the free hub, and at the end the waiting one goes on. A chain with the spare opens at the spare, which is not on a hub.
    /// </summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="moves">Its moves with those that need remounting.</param>
    /// <param name="axles">How many axles the vehicle has, for the words.</param>
    /// <returns>For each chain of n assemblies n + 1 steps.</returns>
    /// <source>cycle notation of permutations; calculated</source>
    public static IReadOnlyList<LiftStep> Of(RotationPattern pattern, IReadOnlyList<RotationMove> moves, int axles)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentNullException.ThrowIfNull(moves);
        var byFrom = moves.ToDictionary(m => m.From);
        var steps = new List<LiftStep>();
        foreach (var cycle in pattern.Cycles)
        {
            var first = cycle[0];
            steps.Add(new LiftStep(LiftAction.Off, first, byFrom[first].To, false, first, first.IsSpare
                ? "Take the spare out; it waits on the stand."
                : $"Take off {Name(first)}; it waits on the stand."));
            for (var i = cycle.Count - 1; i > 0; i--)
            {
                var (from, to, remount) = (cycle[i], byFrom[cycle[i]].To, byFrom[cycle[i]].Remount);
                steps.Add(new LiftStep(LiftAction.Move, from, to, remount, first,
                    $"Take off {Name(from)}{(remount ? ", turn its tyre round on the wheel, balance it" : "")} and {(to.IsSpare ? "stow it as the spare" : $"put it on {Name(to)}")}, which is free. {(from.IsSpare ? "" : $"{Capital(Name(from))} is free now; ")}{Waits(first)}"));
            }

            var last = byFrom[first];
            steps.Add(new LiftStep(LiftAction.On, first, last.To, last.Remount, null,
                last.Remount
                    ? $"Turn round the tyre of the one that waits (from {Name(first)}) on its wheel, balance it, and put it on {Name(last.To)}. Nothing waits."
                    : $"Put the one that waits (from {Name(first)}) on {Name(last.To)}. Nothing waits."));
        }

        return steps;

        string Name(Position position) => string.Create(CultureInfo.InvariantCulture, $"{position.InWords(axles)} ({position})");

        string Waits(Position position) => position.IsSpare ? "the spare waits." : $"the one from {Name(position)} waits.";
    }

    private static string Capital(string text) => string.Concat(text[..1].ToUpperInvariant(), text.AsSpan(1));
}
