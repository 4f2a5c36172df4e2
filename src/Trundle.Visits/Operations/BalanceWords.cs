using System.Globalization;
using Trundle.Engine.Balance;
using Trundle.Engine.Reference;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary>A choice of weights in a technician's words: what to fit, what it leaves, why this set, and the cautions.</summary>
public static class BalanceWords
{
    /// <summary>The cautions that stand with every balance.</summary>
    public static IReadOnlyList<string> Cautions => StepCautions.OfASpin;

    /// <summary>Everything, line by line.</summary>
    public static IEnumerable<string> Lines(BalanceFile file, BalanceOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(outcome);
        foreach (var side in new[] { PlaneSide.Inner, PlaneSide.Outer })
        {
            foreach (var line in PlaneLines(outcome, side))
            {
                yield return line;
            }
        }

        yield return string.Create(CultureInfo.InvariantCulture,
            $"In all: {Count(outcome.Pieces, "piece")}, {outcome.TotalMass.Text("g", 1)}; static {outcome.Residual.Static.Amount.Text("g·mm", 0)} and couple {outcome.Residual.Couple(outcome.Problem.Planes).Amount.Text("g·mm²", 0)} are left.");
        yield return outcome.LengthsBreakTolerance
            ? $"NOT within tolerance with the strips as long as they are: {Part(outcome.PartsWithLengths.MaxBy(p => p.Ratio)!, "keeps")} [{outcome.Problem.Tolerance.Source.ForPeople}]; as masses at one point {Worst(outcome)}."
            : outcome.WithinTolerance
            ? $"Within tolerance: {Worst(outcome)}."
            : $"NOT within tolerance: {Worst(outcome)}.";
        if (DisplayReckoning.Of(outcome, file.Profile) is { } open)
        {
            yield return BalanceDisplayWords.AtWorst(open);
        }

        yield return Why(outcome);
        foreach (var caution in CautionsOf(file, outcome))
        {
            yield return $"Caution: {caution}";
        }
    }

    /// <summary>Why this set and no other, in a sentence or two; and why it is not proven, where it is not.</summary>
    public static string Why(BalanceOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        return WhyThis(outcome) + outcome.Gap switch
        {
            ProofGap.None => "",
            ProofGap.WorkUsedUp when outcome.MostWork < BalanceSolve.MostWork => " Not proven: this device may do only a part of the work before a page would stand still; the visit's check by the command or the server looks at more sets.",
            ProofGap.WorkUsedUp => " Not proven: the work that a choice may take was used up before every set was looked at. Fewer kinds of weight, or a limit on pieces, leave less to look at.",
            ProofGap.HeavierStrips => $" Not proven: strips heavier than {(outcome.StripsTo is { } most ? Mass.FromGrams(Math.Floor(most.Grams)).Text("g", 0) : "those listed")} were not looked at. Heavy strips that pull against each other can come nearer still{(outcome.Problem.Aims.Contains(BalanceAim.Pieces) ? ", or do with fewer pieces" : "")}, and without a limit on mass there is no end of them: with maxMass of no more than that every set is looked at.",
            ProofGap.MorePieces => " Not proven: more pieces than were looked at can come nearer still, and without a limit there is no end of them: with maxPieces, or a count of what the drawer holds, every set is looked at.",
            ProofGap.Orders => " Not proven: pieces of different lengths can stand in more orders around the rim than are tried, or in a row that reaches half round it. A lower maxPieces, or fewer kinds of weight, leave less to try.",
        };
    }

    private static string WhyThis(BalanceOutcome outcome)
    {
        var sure = outcome.ProvenOptimal;
        var aims = outcome.Problem.Aims;
        if (!outcome.WithinTolerance && aims.Contains(BalanceAim.Tolerance))
        {
            var least = string.Create(CultureInfo.InvariantCulture, $"this leaves the least, {outcome.Score:0.00} times the tolerance");
            return sure
                ? $"Why this set: nothing that the drawer and the limits allow meets the tolerance (no set was left out); {least}."
                : $"Why this set: no set that meets the tolerance was found; of those looked at {least}.";
        }

        if (outcome.Pieces == 0)
        {
            return outcome.WithinTolerance
                ? "Why no weight: what is there already meets the tolerance, and a piece more would not serve the aims."
                : "Why no weight: no piece that the drawer and the limits allow serves the aims.";
        }

        var words = new List<string>();
        if (aims is [BalanceAim.Tolerance, BalanceAim.Pieces, ..])
        {
            words.Add(outcome.Pieces == 1
                ? $"1 piece is enough to meet the tolerance{(sure ? "" : " by what was looked at")}, and none is not"
                : $"{(sure ? "no" : "of what was looked at no")} set of fewer than {Count(outcome.Pieces, "piece")} meets the tolerance");
        }

        words.Add(aims.Contains(BalanceAim.Score) ? Weighed(outcome, words.Count > 0) : $"it serves the aims best in their order ({string.Join(", ", aims.Select(a => a.ToString().ToLowerInvariant()))})");
        return $"Why this set: {string.Join("; ", words)}.{Split(outcome)}";
    }

    /// <summary>What is left and what it weighs, as the score with the price of the mass.</summary>
    private static string Weighed(BalanceOutcome outcome, bool ofFewest)
    {
        var of = ofFewest ? $"of the sets of {Count(outcome.Pieces, "piece")}" : "of all sets";
        var price = outcome.Problem.MassPenaltyPerGram;
        var looked = outcome.ProvenOptimal ? "" : " looked at";
        return price > 0
            ? string.Create(CultureInfo.InvariantCulture,
                $"{of}{looked} this one is best by what is left and what it weighs, {outcome.Score:0.000} of the tolerance + {price:0.###} × {outcome.TotalMass.Grams:0.#} g = {outcome.Score + (price * outcome.TotalMass.Grams):0.000}")
            : string.Create(CultureInfo.InvariantCulture, $"{of}{looked} this one leaves the least, {outcome.Score:0.000} of the tolerance");
    }

    /// <summary>The cautions of one result.</summary>
    public static IReadOnlyList<string> CautionsOf(BalanceFile file, BalanceOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(outcome);
        var cautions = new List<string>(Cautions);
        foreach (var weight in outcome.Weights)
        {
            var acts = weight.ActsAs(outcome.Problem.Planes.At(weight.Plane).Radius);
            if (weight.Mass.Grams - acts.Grams >= 0.5)
            {
                cautions.Add($"The strip of {weight.Mass.Text("g", 1)} on the {Word(weight.Plane)} plane is {weight.Size!.Value.Text("mm", 0)} long: bent round the rim it acts as {acts.Text("g", 1)} at its middle. Expect the check spin to show the difference.");
            }
        }

        if (outcome.LengthsBreakTolerance)
        {
            cautions.Add(StripWords.Caution(outcome));
        }

        var much = Figures.Of("balance.muchInPlane");
        foreach (var plane in outcome.Weights.GroupBy(w => w.Plane).Where(g => g.Sum(w => w.Mass.Grams) > much.Value))
        {
            cautions.Add($"The {Word(plane.Key)} plane takes {Quantity.Number(plane.Sum(w => w.Mass.Grams), 1)} g. More than {Quantity.Number(much.Value, 0)} g is a lot [{much.Source.ForPeople}]: look for mud, a bead that is not seated or a bent rim, and think of turning the tyre on the rim first.");
        }

        cautions.AddRange(BalanceDisplayWords.Cautions(file, outcome));
        cautions.AddRange(Absurd(outcome, much.Value));
        return cautions;
    }

    /// <summary>Where nothing meets the tolerance, the set that leaves the least may be one that nobody should fit.</summary>
    private static IEnumerable<string> Absurd(BalanceOutcome outcome, double much)
    {
        foreach (var plane in outcome.Weights.GroupBy(w => w.Plane))
        {
            var (mass, needed) = (plane.Sum(w => w.Mass.Grams), outcome.Needed.At(plane.Key).MassAt(outcome.Problem.Planes.At(plane.Key).Radius));
            if (!outcome.WithinTolerance && mass > much && mass > 2 * needed.Grams)
            {
                yield return $"Do not fit these weights: {Quantity.Number(mass, 1)} g on the {Word(plane.Key)} plane, where {needed.Text("g", 1)} is needed, and the tolerance is still not met. Get the weights or the places that are lacking, or turn the tyre on the rim, and ask again.";
            }
        }
    }

    /// <summary>The plane in one word.</summary>
    public static string Word(PlaneSide side) => side switch
    {
        PlaneSide.Inner => "inner",
        PlaneSide.Outer => "outer",
    };

    /// <summary>The kind of weight in one word.</summary>
    public static string Word(WeightKind kind) => kind switch
    {
        WeightKind.Clip => "clip",
        WeightKind.Adhesive => "adhesive",
    };

    private static IEnumerable<string> PlaneLines(BalanceOutcome outcome, PlaneSide side)
    {
        var plane = side == PlaneSide.Inner ? outcome.Problem.Inner : outcome.Problem.Outer;
        var needed = outcome.Needed.At(side);
        var left = outcome.Residual.At(side);
        var radius = plane.Place.Radius;
        yield return $"{Capital(Word(side))} plane, {Word(plane.Kind)}: {needed.MassAt(radius).Text("g", 1)} at {needed.Place} is needed; {(left.MassAt(radius).Grams < 0.05 ? "leaves nothing" : $"leaves {left.MassAt(radius).Text("g", 1)} at {left.Place}")}{StripWords.Left(outcome, side)}.";
        var weights = outcome.Weights.Where(w => w.Plane == side).ToList();
        if (weights.Count == 0)
        {
            yield return "    fit nothing";
        }

        foreach (var weight in weights)
        {
            var made = weight.Segments.Count > 1 ? $" ({string.Join(" + ", weight.Segments.GroupBy(s => s).Select(g => g.Count() > 1 ? $"{g.Count()} × {g.Key.Text("g", 1)}" : g.Key.Text("g", 1)))})" : "";
            yield return $"    fit {weight.Mass.Text("g", 1)}{made} at {weight.Place}: at twelve when the valve stands at {ClockFace.ValveAt(weight.Place)}, seen from outside";
        }
    }

    private static string Worst(BalanceOutcome outcome) => $"{Part(outcome.Parts.MaxBy(p => p.Ratio)!, "keeps")} [{outcome.Problem.Tolerance.Source.ForPeople}]";

    /// <summary>A part in words: "the inner plane keeps 200 of 1000 g·mm".</summary>
    internal static string Part(TolerancePart part, string keeps)
    {
        var name = part.Name is "inner" or "outer" ? $"the {part.Name} plane" : $"the {part.Name} part";
        return string.Create(CultureInfo.InvariantCulture, $"{name} {keeps} {part.Left:0} of {part.Tolerance:0} {part.Unit}");
    }

    /// <summary>What a split costs in mass, where it costs any.</summary>
    private static string Split(BalanceOutcome outcome)
    {
        var words = "";
        foreach (var side in new[] { PlaneSide.Inner, PlaneSide.Outer })
        {
            if (outcome.SplitPriceOf(side) is not { Extra.Grams: >= 0.05 } price)
            {
                continue;
            }

            var plane = side == PlaneSide.Inner ? outcome.Problem.Inner : outcome.Problem.Outer;
            var added = outcome.Added.At(side);
            var mass = Mass.FromGrams(outcome.Weights.Where(w => w.Plane == side).Sum(w => w.Mass.Grams));
            var where = plane.BehindSpokes ? "Split behind the spokes" : "Spread over several places";
            words += string.Create(CultureInfo.InvariantCulture,
                $" {where}, the {Word(side)} plane's {mass.Text("g", 1)} act as {added.MassAt(plane.Place.Radius).Text("g", 1)} at {added.Place} would: the split costs {price.Extra.Text("g", 1)}, {price.Ratio:0.00} times one weight there.");
        }

        return words;
    }

    private static string Count(int number, string thing) => string.Create(CultureInfo.InvariantCulture, $"{number} {thing}{(number == 1 ? "" : "s")}");

    private static string Capital(string word) => string.Concat(word[..1].ToUpperInvariant(), word.AsSpan(1));
}
