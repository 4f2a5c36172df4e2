using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fixings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Drills;

/// <summary>What is done to one fixing.</summary>
public enum TighteningDeed
{
    /// <summary>Started and run in by hand until its seat touches.</summary>
    ByHand,

    /// <summary>Tightened by a torque wrench to a stage.</summary>
    Wrench,

    /// <summary>Turned by a power tool.</summary>
    PowerTool,

    /// <summary>Oil on its thread.</summary>
    Oil,
}

/// <summary>One deed on the drawn stud circle.</summary>
/// <param name="Deed">What.</param>
/// <param name="Fixing">Its number, clockwise from 1.</param>
/// <param name="Stage">With a wrench: which stage, from 0.</param>
public readonly record struct TighteningAct(TighteningDeed Deed, int Fixing, int Stage = 0);

/// <summary>A stud circle to be tightened. Any valid sequence passes: a permutation, opposite or far enough in turn, and no partial set that pulls harder than one fixing.</summary>
public sealed record TighteningDrill
{
    private static readonly ThreadDesignation Stud = ThreadDesignation.Read("M12x1.5").Value;

    /// <summary>The seed that it was made from.</summary>
    public required ulong Seed { get; init; }

    /// <summary>How many fixings, 3 to 12.</summary>
    public required int Count { get; init; }

    /// <summary>The torque by the maker of this invented vehicle, threads dry.</summary>
    public required Torque Torque { get; init; }

    /// <summary>The stages as shares of the torque.</summary>
    public IReadOnlyList<double> Percents { get; } = [50, 100];

    /// <summary>A stud circle from a seed.</summary>
    /// <param name="seed">Any number.</param>
    public static TighteningDrill Of(ulong seed)
    {
        var stream = SeedStream.Of(seed, "tightening");
        return new TighteningDrill { Seed = seed, Count = stream.Between(3, 12), Torque = Torque.FromNewtonMetres(stream.Between(9, 15) * 10) };
    }

    /// <summary>What an attempt is judged by; shown beforehand.</summary>
    public IReadOnlyList<Criterion> Criteria { get; } =
    [
        new("permutation", "Every fixing has every stage, and each once.", 25, true),
        new("opposition", "Each second move goes to the opposite fixing; with an odd count no move is shorter than it must be.", 25, true),
        new("imbalance", "No fixings tightened so far pull harder to one side than one alone does.", 25, true),
        new("by-hand", "Every fixing was run in by hand first.", 25, true),
    ];

    /// <summary>The shortest move that an order of an odd count may have: as far as possible, or as the shortest of the order that pulls least.</summary>
    /// <param name="count">The count, odd.</param>
    public static int LeastMove(int count) => Math.Min((count - 1) / 2, TighteningSequence.Judge(TighteningSequence.For(count)).LeastMove);

    /// <summary>Judges what was done, in its order.</summary>
    /// <param name="acts">Every deed.</param>
    public PracticeResult Judge(IReadOnlyList<TighteningAct> acts)
    {
        ArgumentNullException.ThrowIfNull(acts);
        var stop = StopOf(acts);
        var stages = Percents.Select((_, s) => acts.Where(a => a.Deed == TighteningDeed.Wrench && a.Stage == s).Select(a => a.Fixing).ToList()).ToList();
        var whole = stages.All(o => o.Order().SequenceEqual(Enumerable.Range(1, Count)));
        var judged = whole ? stages.Select(TighteningSequence.Judge).ToList() : [];
        var odd = int.IsOddInteger(Count);
        var opposition = whole && judged.All(j => odd ? j.LeastMove >= LeastMove(Count) : j.OppositesAlternate);
        var greatest = whole ? judged.Max(j => j.GreatestImbalance) : double.NaN;
        var balanced = whole && judged.All(j => j.Balanced);
        var byHand = Enumerable.Range(1, Count).All(f => acts.Any(a => a.Deed == TighteningDeed.ByHand && a.Fixing == f));
        var good = string.Join(" ", TighteningSequence.For(Count).Select(f => f.ToString(CultureInfo.InvariantCulture)));
        var source = new Source("DVSA and industry, Careless Torque Costs Lives (2014); the imbalance is computed", SourceStatus.Read);
        return new PracticeResult(
        [
            new(Criteria[0], whole, null, null, whole ? "" : $"Not every one of the {Count} fixings had every stage once: all of them pass one stage before the next begins."),
            new(Criteria[1], opposition, whole && odd ? Amount.Number(judged.Min(j => j.LeastMove), "places", 0) : null, odd ? new Limit(Amount.Number(LeastMove(Count), "places", 0), source) : new Limit(Amount.Word("opposite in turn"), source),
                opposition ? "" : $"Go across the circle, not to a neighbour, so that the wheel is drawn flat on its hub. One good order: {good}."),
            new(Criteria[2], balanced, whole ? Amount.Number(greatest, "", 2) : null, new Limit(Amount.Number(1, "", 1), source),
                balanced ? "" : !whole ? "It can be told only of whole stages." : $"At the worst the fixings tightened pulled {Quantity.Number(greatest, 2)} times as hard to one side as one does: the wheel is drawn askew there. One good order: {good}."),
            new(Criteria[3], byHand, null, null, byHand ? "" : "A hand feels a crossed thread in half a turn; run every fixing in by hand before the first stage."),
        ], stop);
    }

    /// <summary>The first deed that ends it, or null.</summary>
    public SafetyStop? StopOf(IReadOnlyList<TighteningAct> acts)
    {
        ArgumentNullException.ThrowIfNull(acts);
        var run = new HashSet<int>();
        var done = Percents.Select(_ => new HashSet<int>()).ToList();
        foreach (var act in acts)
        {
            switch (act.Deed)
            {
                case TighteningDeed.ByHand:
                    run.Add(act.Fixing);
                    break;
                case TighteningDeed.Oil:
                    var (dry, oiled) = (Clamp(ThreadCondition.Dry), Clamp(ThreadCondition.Oiled));
                    return new SafetyStop("oil", $"Oil on a thread whose torque is for dry threads: at the same {Torque.Text("N·m", 0)} the clamp goes from about {dry.Text("kN", 1)} to {oiled.Text("kN", 1)} on {Stud.Text} with a cone seat. Clean it, or renew it.");
                case TighteningDeed.PowerTool when !run.Contains(act.Fixing):
                    return new SafetyStop("power-start", $"A power tool on fixing {act.Fixing} before it was run in by hand: a crossed thread feels tight to it and holds nothing.");
                case TighteningDeed.PowerTool:
                    return new SafetyStop("power", $"A power tool on fixing {act.Fixing} from the seat on: nobody knows the torque that it leaves. By hand and by wrench.");
                case TighteningDeed.Wrench when act.Stage > 0 && done[act.Stage - 1].Count < Count:
                    return new SafetyStop("stage", $"Fixing {act.Fixing} was taken to {Percents[act.Stage]:0} % while {Count - done[act.Stage - 1].Count} of {Count} had not had {Percents[act.Stage - 1]:0} %: the wheel is drawn onto one side. Slacken all, begin again at the first stage.");
                case TighteningDeed.Wrench:
                    done[act.Stage].Add(act.Fixing);
                    break;
            }
        }

        return null;
    }

    private Force Clamp(ThreadCondition condition)
    {
        var friction = ClampRange.Friction(condition);
        var shares = NutFactor.LongForm(Stud, SeatContact.Estimated(Stud, SeatShape.Cone), friction, friction);
        return shares.Clamp(Torque);
    }
}
