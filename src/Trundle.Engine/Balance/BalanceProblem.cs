using Trundle.Engine.Balance.Choice;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Balance;

/// <summary>How a weight holds.</summary>
public enum WeightKind
{
    /// <summary>A clip on the rim flange.</summary>
    Clip,

    /// <summary>An adhesive strip of one or more segments.</summary>
    Adhesive,
}

/// <summary>A correction plane of the wheel with what may be fixed there.</summary>
/// <param name="Kind">Clip or adhesive.</param>
/// <param name="Place">Radius and distance.</param>
/// <param name="BehindSpokes">Weights go only behind the spokes.</param>
public sealed record WeightPlane(WeightKind Kind, PlanePlace Place, bool BehindSpokes);

/// <summary>Where the spokes stand: so many, evenly, the first at an angle from the valve; or each at its own place (<see cref="At"/>).</summary>
public sealed record SpokePlaces(int Count, WheelAngle First)
{
    /// <summary>Spokes that are not even, as twin and Y spokes are: the place of each, growing from the valve.</summary>
    public static SpokePlaces At(IEnumerable<WheelAngle> places)
    {
        WheelAngle[] inOrder = [.. places.OrderBy(a => a.Degrees)];
        return new SpokePlaces(inOrder.Length, inOrder[0]) { Numbered = inOrder };
    }

    /// <summary>The place of each spoke by its number: clockwise from the first.</summary>
    public IReadOnlyList<WheelAngle> Numbered { get; private init; } = [.. Enumerable.Range(0, Count).Select(i => WheelAngle.FromDegrees(First.Degrees + (360.0 * i / Count)))];

    /// <summary>The place of each spoke, growing from the valve.</summary>
    public IReadOnlyList<WheelAngle> Places => [.. Numbered.OrderBy(a => a.Degrees)];
}

/// <summary>One kind of clip or one segment of a strip in the drawer.</summary>
/// <param name="Mass">Its mass, above nothing.</param>
/// <param name="Size">Its length along the rim, or null where nobody gave it; then it may touch and cover others in the reckoning.</param>
/// <param name="Count">How many there are, or null for no limit.</param>
public sealed record StockItem(Mass Mass, Length? Size, int? Count);

/// <summary>What the drawer holds.</summary>
public sealed record WeightStock(IReadOnlyList<StockItem> Clip, IReadOnlyList<StockItem> Adhesive)
{
    /// <summary>The items of a kind.</summary>
    public IReadOnlyList<StockItem> Of(WeightKind kind) => kind switch
    {
        WeightKind.Clip => Clip,
        WeightKind.Adhesive => Adhesive,
    };
}

/// <summary>An arc of a plane, clockwise from one place to another, where nothing may sit: the valve, a sensor. Its two ends are free.</summary>
public sealed record ForbiddenArc(PlaneSide Plane, WheelAngle From, WheelAngle To)
{
    /// <summary>True where arcs of one plane cover the whole circle between them, so that nothing can be fitted there. Two that only meet leave the place between them.</summary>
    /// <source>geometry; docs/theory/balance.md (choosing real weights)</source>
    public static bool LeaveNoPlace(IEnumerable<ForbiddenArc> arcs, PlaneSide plane) =>
        AllowedArcs.Without(arcs.Where(a => a.Plane == plane).Select(a => a.Radians), 0).Arcs.Count == 0;

    /// <summary>Where it begins and how long it is, in radians.</summary>
    internal (double From, double Length) Radians => (From.Radians, AllowedArcs.Turn(To.Radians - From.Radians));
}

/// <summary>What one plane may keep: grams at its own radius, or unbalance.</summary>
public sealed record PlaneTolerance
{
    private PlaneTolerance(Mass? mass, Unbalance? unbalance) => (Mass, Unbalance) = (mass, unbalance);

    /// <summary>Grams at the plane's radius, or null.</summary>
    public Mass? Mass { get; }

    /// <summary>Unbalance, or null.</summary>
    public Unbalance? Unbalance { get; }

    /// <summary>So many grams at the plane's radius.</summary>
    /// <source>common practice</source>
    public static PlaneTolerance Of(Mass mass) => new(mass, null);

    /// <summary>So much unbalance.</summary>
    /// <source>ISO 21940-11 (from memory)</source>
    public static PlaneTolerance Of(Unbalance unbalance) => new(null, unbalance);

    /// <summary>The tolerance as unbalance at a radius.</summary>
    public Unbalance At(Length radius) => Unbalance ?? Measures.Unbalance.FromGramMillimetres(Mass!.Value.Grams * radius.Millimetres);
}

/// <summary>How much may be left. At least one part is given.</summary>
public sealed record BalanceTolerance
{
    /// <summary>Of the static part.</summary>
    public Unbalance? Static { get; init; }

    /// <summary>Of the couple about the mid-plane of the planes that carry the weights.</summary>
    public CoupleUnbalance? Couple { get; init; }

    /// <summary>Of the inner plane; of the plane that was read where readings were taken in other planes.</summary>
    public PlaneTolerance? Inner { get; init; }

    /// <summary>Of the outer plane, likewise.</summary>
    public PlaneTolerance? Outer { get; init; }

    /// <summary>Where the tolerance comes from.</summary>
    public required Source Source { get; init; }

    /// <summary>The tolerance where nobody gave one: 5 g a plane.</summary>
    public static BalanceTolerance WhereNoneGiven
    {
        get
        {
            var figure = Figures.Of("balance.perPlane");
            var plane = PlaneTolerance.Of(figure.As<Mass>());
            return new BalanceTolerance { Inner = plane, Outer = plane, Source = figure.Source };
        }
    }

    /// <summary>The same for a person to read.</summary>
    public static string WhereNoneGivenText => $"{Figures.Of("balance.perPlane").Limit(0).Amount.Text} a plane";

    /// <summary>The tolerance of a balance quality grade: half the permissible unbalance for each plane.</summary>
    /// <source>ISO 21940-11 (from memory)</source>
    public static BalanceTolerance OfGrade(BalanceGrade grade, Mass assembly, RotationalSpeed speed)
    {
        var half = PlaneTolerance.Of(PermissibleUnbalance.PerPlane(PermissibleUnbalance.Of(grade, assembly, speed)));
        return new BalanceTolerance { Inner = half, Outer = half, Source = new Source($"ISO 21940-11: {grade}, half for each plane", SourceStatus.FromMemory) };
    }
}

/// <summary>What a choice of weights is for, one aim after another.</summary>
public enum BalanceAim
{
    /// <summary>Meet the tolerance.</summary>
    Tolerance,

    /// <summary>Fewest pieces.</summary>
    Pieces,

    /// <summary>Least score plus the price of the mass.</summary>
    Score,

    /// <summary>Least mass in all.</summary>
    Mass,
}

/// <summary>Everything that a choice of weights is made from.</summary>
public sealed record BalanceProblem
{
    /// <summary>What may be fixed in the inner plane.</summary>
    public required WeightPlane Inner { get; init; }

    /// <summary>What may be fixed in the outer plane.</summary>
    public required WeightPlane Outer { get; init; }

    /// <summary>The planes that the readings were taken in, or null where they are those of the weights.</summary>
    public PlanePair? ReadingPlanes { get; init; }

    /// <summary>What the balancer shows: in each reading plane what to add and where.</summary>
    public required UnbalancePair Readings { get; init; }

    /// <summary>The spokes, where a plane's weights go behind them.</summary>
    public SpokePlaces? Spokes { get; init; }

    /// <summary>The drawer.</summary>
    public required WeightStock Stock { get; init; }

    /// <summary>What may be left.</summary>
    public required BalanceTolerance Tolerance { get; init; }

    /// <summary>The aims in their order.</summary>
    public IReadOnlyList<BalanceAim> Aims { get; init; } = UsualAims;

    /// <summary>What a gram of fitted mass costs in the score.</summary>
    public double MassPenaltyPerGram { get; init; } = Figures.Of("balance.massPenalty").Value;

    /// <summary>The most pieces on the whole wheel, or null.</summary>
    public int? MaxPieces { get; init; }

    /// <summary>The most mass on the whole wheel, or null.</summary>
    public Mass? MaxMass { get; init; }

    /// <summary>Places on a grid of so many degrees from the valve; null for any angle. Places behind spokes are the spokes'.</summary>
    public Angle? AngleStep { get; init; }

    /// <summary>Arcs where nothing may sit.</summary>
    public IReadOnlyList<ForbiddenArc> Forbidden { get; init; } = [];

    /// <summary>Meet the tolerance; then fewest pieces; then least score with the price of the mass.</summary>
    public static IReadOnlyList<BalanceAim> UsualAims { get; } = [BalanceAim.Tolerance, BalanceAim.Pieces, BalanceAim.Score];

    /// <summary>The planes that carry the weights.</summary>
    public PlanePair Planes => new(Inner.Place, Outer.Place);

    /// <summary>What has to be added in the planes that carry the weights.</summary>
    public UnbalancePair Needed => ReadingPlanes is { } read ? Readings.MovedTo(read, Planes) : Readings;
}
