using System.Text.Json.Nodes;
using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary>A choice of weights in the contract's keys.</summary>
internal static class BalanceJson
{
    public static JsonObject Of(BalanceFile file, BalanceOutcome outcome)
    {
        var problem = outcome.Problem;
        var planes = problem.Planes;
        return new JsonObject
        {
            ["weights"] = AnswerJson.List(outcome.Weights.Select(w => (JsonNode?)Weight(w, outcome.Problem.Planes.At(w.Plane).Radius))),
            ["residual"] = Residual(outcome.Residual, planes),
            ["withinTolerance"] = outcome.WithinTolerance,
            ["totalMassGrams"] = Grams(outcome.TotalMass),
            ["pieces"] = outcome.Pieces,
            ["provenOptimal"] = outcome.ProvenOptimal,
            ["leftWithLengths"] = outcome.LengthsBreakTolerance ? LeftWithLengths(outcome) : null,
            ["displayUncertainty"] = DisplayReckoning.Of(outcome, file.Profile) is { } open ? Display(open) : null,
            ["score"] = outcome.Score,
            ["scoreBefore"] = outcome.ScoreBefore,
            ["parts"] = Parts(outcome.Parts),
            ["needed"] = Vectors(outcome.Needed, planes),
            ["before"] = Residual(outcome.Before, planes),
            ["residualInReadingPlanes"] = problem.ReadingPlanes is { } read ? Vectors(outcome.ResidualJudged, read) : null,
            ["planes"] = new JsonObject
            {
                ["inner"] = Plane(problem.Inner), ["outer"] = Plane(problem.Outer),
            },
            ["tolerance"] = Tolerance(file, problem),
            ["aims"] = AnswerJson.List(problem.Aims.Select(a => a.ToString().ToLowerInvariant())),
            ["massPenalty"] = problem.MassPenaltyPerGram,
            ["why"] = BalanceWords.Why(outcome),
            ["splitPrice"] = Split(outcome),
            ["cautions"] = AnswerJson.List(BalanceWords.CautionsOf(file, outcome)),
        };
    }

    /// <summary>What is left with the strips as they act, and the parts of the tolerance that it breaks.</summary>
    private static JsonObject LeftWithLengths(BalanceOutcome outcome)
    {
        var json = Residual(outcome.ResidualWithLengths, outcome.Problem.Planes);
        json["parts"] = Parts(outcome.PartsWithLengths);
        return json;
    }

    private static JsonArray Parts(IEnumerable<TolerancePart> parts) => AnswerJson.List(parts.Select(p => (JsonNode?)new JsonObject
    {
        ["name"] = p.Name, ["left"] = p.Left, ["tolerance"] = p.Tolerance, ["unit"] = p.Unit, ["ratio"] = p.Ratio,
    }));

    private static JsonObject Display(DisplayUncertainty open) => new()
    {
        ["perPlaneGrams"] = new JsonObject { ["inner"] = open.OffInner.Grams, ["outer"] = open.OffOuter.Grams },
        ["worstPerPlaneGrams"] = new JsonObject { ["inner"] = open.WorstInner.Grams, ["outer"] = open.WorstOuter.Grams },
        ["worstStaticGramMillimetres"] = open.WorstStatic.GramMillimetres,
        ["worstCoupleGramSquareMillimetres"] = open.WorstCouple.GramSquareMillimetres,
        ["worstParts"] = Parts(open.WorstParts),
        ["withinToleranceAtWorst"] = open.WithinToleranceAtWorst,
        ["hiddenParts"] = Parts(open.HiddenParts),
        ["toleranceFinerThanDisplay"] = open.ToleranceFinerThanDisplay,
        ["readings"] = new JsonObject { ["inner"] = Shown(open.Inner), ["outer"] = Shown(open.Outer) },
    };

    private static JsonObject Shown(ShownMass shown) => new()
    {
        ["shownGrams"] = Grams(shown.Shown), ["leastGrams"] = Grams(shown.Least), ["mostGrams"] = Grams(shown.Most), ["anyAngle"] = shown.ShowsNothing,
    };

    /// <summary>What a split costs, both planes together and each; null where no plane is split.</summary>
    private static JsonObject? Split(BalanceOutcome outcome)
    {
        var json = One(outcome.SplitPrice);
        if (json is not null)
        {
            json["inner"] = One(outcome.SplitPriceOf(PlaneSide.Inner));
            json["outer"] = One(outcome.SplitPriceOf(PlaneSide.Outer));
        }

        return json;

        static JsonObject? One(SplitPrice? price) => price is null ? null : new JsonObject { ["extraGrams"] = price.Extra.Grams, ["ratio"] = price.Ratio };
    }

    private static JsonObject Weight(FittedWeight weight, Length radius) => new()
    {
        ["plane"] = BalanceWords.Word(weight.Plane),
        ["kind"] = BalanceWords.Word(weight.Kind),
        ["massGrams"] = Grams(weight.Mass),
        ["actsAsGrams"] = weight.ActsAs(radius).Grams,
        ["angleDegrees"] = weight.Place.Degrees,
        ["pieces"] = 1,
        ["segmentsGrams"] = AnswerJson.List(weight.Segments.Select(s => (JsonNode?)JsonValue.Create(Grams(s)))),
        ["lengthMillimetres"] = weight.Size?.Millimetres,
        ["valveAt"] = ClockFace.ValveAt(weight.Place),
    };

    private static JsonObject Residual(UnbalancePair pair, PlanePair planes)
    {
        var json = Vectors(pair, planes);
        var couple = pair.Couple(planes);
        json["staticGramMillimetres"] = pair.Static.Amount.GramMillimetres;
        json["coupleGramSquareMillimetres"] = couple.Amount.GramSquareMillimetres;
        json["staticAngleDegrees"] = pair.Static.Place.Degrees;
        json["coupleAngleDegrees"] = couple.Place.Degrees;
        return json;
    }

    private static JsonObject Vectors(UnbalancePair pair, PlanePair planes) => new()
    {
        ["inner"] = Vector(pair.Inner, planes.Inner), ["outer"] = Vector(pair.Outer, planes.Outer),
    };

    private static JsonObject Vector(UnbalanceVector vector, PlanePlace plane) => new()
    {
        ["massGrams"] = vector.MassAt(plane.Radius).Grams,
        ["angleDegrees"] = vector.Place.Degrees,
        ["gramMillimetres"] = vector.Amount.GramMillimetres,
    };

    public static JsonObject Place(PlanePlace place) => new()
    {
        ["radiusMillimetres"] = place.Radius.Millimetres, ["axialMillimetres"] = place.Axial.Millimetres,
    };

    private static JsonObject Plane(WeightPlane plane)
    {
        var json = Place(plane.Place);
        json["kind"] = BalanceWords.Word(plane.Kind);
        json["places"] = plane.BehindSpokes ? "behindSpokes" : "anywhere";
        return json;
    }

    private static JsonObject Tolerance(BalanceFile file, BalanceProblem problem)
    {
        var tolerance = problem.Tolerance;
        return new JsonObject
        {
            ["static"] = AnswerJson.Of(tolerance.Static is { } s ? new Limit(Amount.Of(s, "g·mm", 0), tolerance.Source) : null),
            ["couple"] = AnswerJson.Of(tolerance.Couple is { } c ? new Limit(Amount.Of(c, "g·mm²", 0), tolerance.Source) : null),
            ["perPlane"] = AnswerJson.Of(file.PerPlane is { } p ? new Limit(p, tolerance.Source) : null),
            ["judgedIn"] = problem.ReadingPlanes is null ? "planes" : "readingPlanes",
            ["source"] = tolerance.Source.Text,
            ["status"] = tolerance.Source.StatusText,
        };
    }

    /// <summary>A mass of the drawer as it was typed: the way through kilograms leaves a last digit that nobody wrote.</summary>
    private static double Grams(Mass mass) => Math.Round(mass.Grams, 9);
}
