using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Machine;

/// <summary>What a test of a balancer says.</summary>
public enum MachineVerdict
{
    /// <summary>Within its limit.</summary>
    Passed,

    /// <summary>Too close to its limit, or too few spins, to say.</summary>
    Undecided,

    /// <summary>Beyond its limit.</summary>
    Failed,

    /// <summary>There is a figure, and nobody gave a limit to hold it against.</summary>
    NotJudged,
}

/// <summary>One test with its figure, its limit, and what to do next.</summary>
/// <param name="Name">traverse, reduction, index, repeat, empty-shaft, known-mass, five-spins or four-places.</param>
/// <param name="Plane">Which plane, or null where it is of both.</param>
/// <param name="Verdict">What it says.</param>
/// <param name="Measured">The figure.</param>
/// <param name="Limit">What it is held against, or null where nobody gave one.</param>
/// <param name="Source">Where the test comes from.</param>
/// <param name="NextStep">What to do.</param>
public sealed record MachineTest(string Name, PlaneSide? Plane, MachineVerdict Verdict, Amount Measured, Limit? Limit, Source Source, string NextStep);

/// <summary>The twelve amounts of a traverse test in one plane.</summary>
/// <param name="TestMass">The mass that was put at the twelve places.</param>
/// <param name="Shown">What was shown, in order of the places.</param>
public sealed record TraverseSpins(Mass TestMass, IReadOnlyList<Mass> Shown);

/// <summary>One spin with known masses.</summary>
/// <param name="Added">The unbalance that was added.</param>
/// <param name="Found">The unbalance that the machine found beyond that of its spin without.</param>
public sealed record KnownSpin(UnbalancePair Added, UnbalancePair Found);

/// <summary>The wheel-shop test of a vehicle maker, as far as it was done; unbalance as found.</summary>
public sealed record ShopSpins
{
    /// <summary>With nothing on the shaft.</summary>
    public UnbalancePair? Empty { get; init; }

    /// <summary>The mass that was put on a wheel balanced to nothing: its plane and unbalance.</summary>
    public (PlaneSide Plane, UnbalanceVector Unbalance)? Added { get; init; }

    /// <summary>What was found with it on.</summary>
    public UnbalancePair? Found { get; init; }

    /// <summary>Spins one after the other.</summary>
    public IReadOnlyList<UnbalancePair> Repeats { get; init; } = [];

    /// <summary>Spins with the wheel turned on the shaft by a quarter each.</summary>
    public IReadOnlyList<UnbalancePair> Quarters { get; init; } = [];
}

/// <summary>What was tried with a balancer: any of its tests.</summary>
public sealed record MachineSpins
{
    /// <summary>The radius at which masses sit in the inner plane.</summary>
    public required Length InnerRadius { get; init; }

    /// <summary>The same in the outer plane.</summary>
    public required Length OuterRadius { get; init; }

    /// <summary>Traverse tests by plane.</summary>
    public IReadOnlyDictionary<PlaneSide, TraverseSpins> Traverse { get; init; } = new Dictionary<PlaneSide, TraverseSpins>();

    /// <summary>Spins with known masses.</summary>
    public IReadOnlyList<KnownSpin> Known { get; init; } = [];

    /// <summary>The unbalance reduction ratio that the machine's maker states, in per cent, or null where nobody gave it.</summary>
    public double? ReductionPercent { get; init; }

    /// <summary>The wheel turned on the shaft, and the unbalance from the shaft's zero; empty where it was not tried.</summary>
    public IReadOnlyList<(Angle Turned, UnbalancePair Found)> Index { get; init; } = [];

    /// <summary>What the fixture may show, or null where nobody gave it.</summary>
    public Mass? FixtureLimit { get; init; }

    /// <summary>Spins of one assembly, one after the other.</summary>
    public IReadOnlyList<UnbalancePair> Repeats { get; init; } = [];

    /// <summary>The standard deviation that the maker states for a spin, or null where nobody gave it.</summary>
    public Mass? RepeatLimit { get; init; }

    /// <summary>What the machine's display rounds and hides; nothing of it where nobody told.</summary>
    public BalancerProfile Profile { get; init; } = new();

    /// <summary>The wheel-shop test.</summary>
    public ShopSpins? Shop { get; init; }

    /// <summary>The radius of a side.</summary>
    public Length RadiusOf(PlaneSide side) => side == PlaneSide.Inner ? InnerRadius : OuterRadius;
}

/// <summary>What the tests say of a balancer, all together.</summary>
public sealed record MachineOutcome
{
    /// <summary>Failed where any test failed; undecided where any is, or none was judged; else passed.</summary>
    public required MachineVerdict Verdict { get; init; }

    /// <summary>Every test.</summary>
    public required IReadOnlyList<MachineTest> Tests { get; init; }

    /// <summary>The least ratio over the spins with known masses, in per cent, or null where there were none.</summary>
    public required double? ReductionPercent { get; init; }

    /// <summary>The minimum achievable residual unbalance that the traverse tests passed at, the greater of the planes; null where none passed or one failed.</summary>
    public required Unbalance? MinimumAchievable { get; init; }

    /// <summary>Traverse tests.</summary>
    public required IReadOnlyDictionary<PlaneSide, TraverseResult> Traverse { get; init; }

    /// <summary>Index balancing by plane.</summary>
    public required IReadOnlyDictionary<PlaneSide, IndexResult> Index { get; init; }

    /// <summary>Repeat spins by plane.</summary>
    public required IReadOnlyDictionary<PlaneSide, RepeatResult> Repeat { get; init; }
}
