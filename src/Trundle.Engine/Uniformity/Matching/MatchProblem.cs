using Trundle.Measures;

namespace Trundle.Engine.Uniformity.Matching;

/// <summary>What a matching aims at.</summary>
public enum MatchAim
{
    /// <summary>The worst pair as small as can be; of those choices, the least sum.</summary>
    WorstThenSum,

    /// <summary>The least sum over the pairs.</summary>
    Sum,
}

/// <summary>One tyre or one wheel of a set.</summary>
/// <param name="Name">The workshop's name for it.</param>
/// <param name="Planes">Its first harmonic; of an unbalance in two planes one vector for each, inner first.</param>
/// <param name="PlaceKnown">False where only sizes were measured: then turns cannot be told, only what the best turn would leave.</param>
/// <typeparam name="T">The quantity.</typeparam>
public sealed record MatchPart<T>(string Name, IReadOnlyList<HarmonicVector<T>> Planes, bool PlaceKnown) where T : struct, IQuantity<T>
{
    /// <summary>Of a tyre: the wheel that it sits on now, by its place in the list; its angles are then from that wheel's valve. Null where it lies loose.</summary>
    public int? SitsOn { get; init; }

    /// <summary>Of a tyre: the wheels that it may go on, or null for any.</summary>
    public IReadOnlyList<int>? MayGoOn { get; init; }
}

/// <summary>Tyres and wheels to be matched.</summary>
/// <typeparam name="T">The quantity.</typeparam>
public sealed record MatchProblem<T> where T : struct, IQuantity<T>
{
    /// <summary>The tyres; every part has as many planes as every other.</summary>
    public required IReadOnlyList<MatchPart<T>> Tyres { get; init; }

    /// <summary>The wheels.</summary>
    public required IReadOnlyList<MatchPart<T>> Wheels { get; init; }

    /// <summary>The aim.</summary>
    public MatchAim Aim { get; init; }

    /// <summary>Turns come in steps of this from mark at valve, or null where any turn can be made.</summary>
    public Angle? TurnStep { get; init; }

    /// <summary>What a turn or a change of wheel must gain to be worth the work: each is charged this. Null charges nothing.</summary>
    public T? KeepUnlessGain { get; init; }
}

/// <summary>One tyre on one wheel.</summary>
/// <param name="Tyre">The tyre's place in the list.</param>
/// <param name="Wheel">The wheel's place in the list.</param>
/// <param name="Turn">How far the tyre is turned from mark at valve, clockwise as seen from outside, 0 ≤ turn &lt; 360°; null where places are not known.</param>
/// <param name="Kept">The tyre stays as it sits.</param>
/// <param name="Before">What there is now: of the assembly that the tyre sits in, else of this pair with mark at valve; null where places are not known.</param>
/// <param name="After">What the pair has with the turn: of two planes the greater.</param>
/// <param name="AfterPlanes">The same as vectors, from the wheel's valve; null where places are not known.</param>
/// <typeparam name="T">The quantity.</typeparam>
public sealed record MatchedPair<T>(int Tyre, int Wheel, Angle? Turn, bool Kept, T? Before, T After, IReadOnlyList<HarmonicVector<T>>? AfterPlanes)
    where T : struct, IQuantity<T>;

/// <summary>What a matching gives.</summary>
/// <typeparam name="T">The quantity.</typeparam>
public abstract record MatchOutcome<T> where T : struct, IQuantity<T>
{
    private MatchOutcome()
    {
    }

    /// <summary>Every tyre or every wheel, whichever are fewer, has its partner.</summary>
    /// <param name="Pairs">In the order of the tyres.</param>
    /// <param name="TyresLeftOut">Tyres without a wheel.</param>
    /// <param name="WheelsLeftOut">Wheels without a tyre.</param>
    /// <param name="Worst">The greatest of what is left.</param>
    /// <param name="Sum">The sum of what is left.</param>
    /// <param name="ProvenOptimal">A certificate was found and checked: no other choice serves the aim better.</param>
    public sealed record Matched(IReadOnlyList<MatchedPair<T>> Pairs, IReadOnlyList<int> TyresLeftOut, IReadOnlyList<int> WheelsLeftOut, T Worst, T Sum, bool ProvenOptimal) : MatchOutcome<T>;

    /// <summary>What may go on what leaves some without a partner.</summary>
    /// <param name="Most">The most pairs that can be made.</param>
    public sealed record NoCompletePairing(int Most) : MatchOutcome<T>;

    /// <summary>Goes on with one of the two cases.</summary>
    public TResult Match<TResult>(Func<Matched, TResult> matched, Func<NoCompletePairing, TResult> noCompletePairing)
    {
        ArgumentNullException.ThrowIfNull(matched);
        ArgumentNullException.ThrowIfNull(noCompletePairing);
        return this is Matched m ? matched(m) : noCompletePairing((NoCompletePairing)this);
    }
}
