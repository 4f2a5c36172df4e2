using System.Text.Json.Nodes;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Machine;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary><c>balance machine</c>: is the balancer itself right?</summary>
public static class BalanceMachineOperation
{
    private static readonly PlaneSide[] Sides = [PlaneSide.Inner, PlaneSide.Outer];

    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("balance machine", "Is the balancer itself right? Traverse test, known masses, index balancing, repeat spins, the wheel-shop test.", Run) { TakesFile = true };

    private static Reading<Answer> Run(FileNode body)
    {
        var problems = new List<Problem>();
        var file = MachineFileReader.Read(body, problems);
        if (file is null || problems.Count > 0)
        {
            return AnswerJson.Wrong(problems);
        }

        var outcome = MachineCheck.Of(file.Spins);
        List<string> cautions = [.. StepCautions.OfASpinWithTheShaft, .. Unasked(outcome)];
        return Reading<Answer>.Of(new Answer(outcome.Verdict != MachineVerdict.Passed, Json(file, outcome, cautions), [.. Lines(file, outcome, cautions)]));
    }

    private static IEnumerable<string> Unasked(MachineOutcome outcome) => outcome.Tests.Any(t => t.Verdict == MachineVerdict.NotJudged)
        ? ["Some figures could not be judged: the limit is the machine maker's to say, and was not given."]
        : [];

    private static JsonObject Json(MachineFile file, MachineOutcome outcome, List<string> cautions)
    {
        var sources = outcome.Tests.Select(t => t.Source).Distinct().ToList();
        return new JsonObject
        {
            ["verdict"] = Word(outcome.Verdict),
            ["unbalanceReductionRatioPercent"] = outcome.ReductionPercent,
            ["minimumAchievableGramMillimetres"] = outcome.MinimumAchievable?.GramMillimetres,
            ["source"] = string.Join("; ", sources.Select(s => s.Text)),
            ["status"] = sources.All(s => s.Status == SourceStatus.Read) ? "read" : "from memory",
            ["tests"] = AnswerJson.List(outcome.Tests.Select(t => (JsonNode?)new JsonObject
            {
                ["name"] = t.Name,
                ["plane"] = t.Plane is { } side ? BalanceWords.Word(side) : null,
                ["verdict"] = Word(t.Verdict),
                ["measured"] = AnswerJson.Of(t.Measured),
                ["limit"] = AnswerJson.Of(t.Limit),
                ["source"] = t.Source.Text,
                ["status"] = t.Source.StatusText,
                ["nextStep"] = t.NextStep,
            })),
            ["nextStep"] = NextStep(outcome),
            ["traverse"] = ByPlane(outcome.Traverse, (_, t) => new JsonObject
            {
                ["ratios"] = AnswerJson.List(t.Ratios.Select(r => (JsonNode?)JsonValue.Create(r))),
                ["meanGramMillimetres"] = t.Mean.GramMillimetres,
                ["leastRatio"] = t.LeastRatio,
                ["greatestRatio"] = t.GreatestRatio,
                ["testedGramMillimetres"] = t.Tested.GramMillimetres,
                ["wouldPassGramMillimetres"] = t.WouldPass.GramMillimetres,
                ["residualGramMillimetres"] = t.Residual.GramMillimetres,
                ["scatterGramMillimetres"] = t.Scatter.GramMillimetres,
            }),
            ["index"] = IndexJson(file, outcome),
            ["repeat"] = ByPlane(outcome.Repeat, (side, r) => new JsonObject
            {
                ["mean"] = Vector(r.Mean, file, side),
                ["standardDeviationGrams"] = r.IsKnown ? Grams(r.StandardDeviation, file, side) : null,
                ["lowGrams"] = Grams(r.Low, file, side),
                ["highGrams"] = r.IsKnown ? Grams(r.High, file, side) : null,
                ["intervalPercent"] = 95,
                ["greatestFromMeanGrams"] = Grams(r.GreatestFromMean, file, side),
                ["degreesOfFreedom"] = r.Freedom,
                ["noneDiffers"] = r.NoneDiffers,
            }),
            ["acceptance"] = AcceptanceJson(file, outcome),
            ["cautions"] = AnswerJson.List(cautions),
        };
    }

    private static JsonObject? IndexJson(MachineFile file, MachineOutcome outcome)
    {
        var json = ByPlane(outcome.Index, (side, i) => new JsonObject
        {
            ["fixture"] = Vector(i.Fixture, file, side),
            ["wheel"] = Vector(i.Wheel, file, side),
            ["scatterGrams"] = i.Scatter is { } s ? Grams(s, file, side) : null,
            ["fixtureStandardErrorGrams"] = i.FixtureStandardError is { } f ? Grams(f, file, side) : null,
            ["wheelStandardErrorGrams"] = i.WheelStandardError is { } w ? Grams(w, file, side) : null,
        });
        if (json is null)
        {
            return null;
        }

        var fixture = new UnbalancePair(outcome.Index[PlaneSide.Inner].Fixture, outcome.Index[PlaneSide.Outer].Fixture);
        json["fixtureStaticGramMillimetres"] = fixture.Static.Amount.GramMillimetres;
        json["eccentricityMillimetres"] = Eccentricity(file, outcome)?.Millimetres;
        json["dialMillimetres"] = 2 * Eccentricity(file, outcome)?.Millimetres;
        json["cockDegrees"] = Cock(file, fixture)?.Degrees;
        return json;
    }

    /// <summary>How far off centre the assembly would have to sit for its fixture's static part.</summary>
    private static Length? Eccentricity(MachineFile file, MachineOutcome outcome) => file.Assembly is { } mass && outcome.Index.Count > 0
        ? MountingError.EccentricityOf(mass, new UnbalancePair(outcome.Index[PlaneSide.Inner].Fixture, outcome.Index[PlaneSide.Outer].Fixture).Static.Amount)
        : null;

    /// <summary>How far askew it would have to sit for the fixture's couple.</summary>
    private static Angle? Cock(MachineFile file, UnbalancePair fixture)
    {
        if (file is not { InertiaDifference: { Si: not 0 } inertia, Apart: { } apart })
        {
            return null;
        }

        var planes = new PlanePair(new PlanePlace(file.Spins.InnerRadius, default), new PlanePlace(file.Spins.OuterRadius, apart));
        return MountingError.CockOf(inertia, fixture.Couple(planes).Amount);
    }

    private static JsonObject? AcceptanceJson(MachineFile file, MachineOutcome outcome)
    {
        if (file.Permissible is not { } permissible)
        {
            return null;
        }

        var json = ByPlane(outcome.Repeat, (side, r) =>
        {
            if (!r.IsKnown)
            {
                return new JsonObject { ["errorGrams"] = null, ["acceptUpToGrams"] = null, ["rejectAboveGrams"] = null };
            }

            var error = Error(r, file, side);
            return new JsonObject { ["errorGrams"] = error, ["acceptUpToGrams"] = Math.Max(0, permissible.Grams - error), ["rejectAboveGrams"] = permissible.Grams + error };
        });
        if (json is not null)
        {
            json["permissibleGrams"] = permissible.Grams;
            json["coverage"] = Figures.Of("machine.coverage").Value;
            json["source"] = "ISO 21940-14";
            json["status"] = "from memory";
        }

        return json;
    }

    private static double Error(RepeatResult repeat, MachineFile file, PlaneSide side) => Figures.Of("machine.coverage").Value * Grams(repeat.StandardDeviation, file, side);

    private static JsonObject? ByPlane<T>(IReadOnlyDictionary<PlaneSide, T> of, Func<PlaneSide, T, JsonObject> json)
    {
        if (of.Count == 0)
        {
            return null;
        }

        var both = new JsonObject();
        foreach (var side in Sides)
        {
            both[BalanceWords.Word(side)] = of.TryGetValue(side, out var one) ? json(side, one) : null;
        }

        return both;
    }

    private static JsonObject Vector(UnbalanceVector vector, MachineFile file, PlaneSide side) => new()
    {
        ["massGrams"] = vector.MassAt(file.Spins.RadiusOf(side)).Grams,
        ["angleDegrees"] = vector.Place.Degrees,
        ["gramMillimetres"] = vector.Amount.GramMillimetres,
    };

    private static double Grams(Unbalance unbalance, MachineFile file, PlaneSide side) => unbalance.GramMillimetres / file.Spins.RadiusOf(side).Millimetres;

    private static string Word(MachineVerdict verdict) => verdict switch
    {
        MachineVerdict.Passed => "passed",
        MachineVerdict.Undecided => "undecided",
        MachineVerdict.Failed => "failed",
        MachineVerdict.NotJudged => "not-judged",
    };

    private static string NextStep(MachineOutcome outcome) => outcome.Verdict switch
    {
        MachineVerdict.Passed => $"Write the figures into the machine's record, and repeat the wheel-shop test in {Quantity.Number(Figures.Of("machine.shopWeeks").Value, 0)} weeks.",
        MachineVerdict.Failed => $"Balance nothing more on this machine before this is right: {outcome.Tests.First(t => t.Verdict == MachineVerdict.Failed).NextStep}",
        _ => (outcome.Tests.FirstOrDefault(t => t.Verdict == MachineVerdict.Undecided) ?? outcome.Tests[0]).NextStep,
    };

    private static IEnumerable<string> Lines(MachineFile file, MachineOutcome outcome, List<string> cautions)
    {
        yield return outcome.Verdict switch
        {
            MachineVerdict.Passed => "The machine PASSED.",
            MachineVerdict.Failed => "The machine FAILED.",
            _ => "UNDECIDED: no test could say yes or no.",
        };
        foreach (var test in outcome.Tests)
        {
            var plane = test.Plane is { } side ? $", {BalanceWords.Word(side)} plane" : "";
            yield return $"{Word(test.Verdict),-10} {test.Name}{plane}: {test.Measured.Text}{(test.Limit is { } l ? $" (limit {l.Amount.Text})" : "")} [{test.Source.ForPeople}]";
            yield return $"           {test.NextStep}";
        }

        foreach (var (side, index) in outcome.Index)
        {
            var radius = file.Spins.RadiusOf(side);
            yield return $"Index, {BalanceWords.Word(side)} plane: the fixture's heavy place is {index.Fixture.MassAt(radius).Text("g", 1)} at {index.Fixture.Place} from the shaft's zero; the wheel's own {index.Wheel.MassAt(radius).Text("g", 1)} at {index.Wheel.Place}"
                + (index.Scatter is { } scatter ? $"; one spin scatters by {Quantity.Number(Grams(scatter, file, side), 2)} g." : "; two positions cannot show the scatter.");
        }

        if (Eccentricity(file, outcome) is { } off)
        {
            yield return $"The fixture's static part is as if the assembly sat {off.Text("mm", 3)} off centre: {(2 * off).Text("mm", 3)} on a dial.";
        }

        foreach (var (side, repeat) in outcome.Repeat)
        {
            if (file.Permissible is { } permissible && repeat.IsKnown)
            {
                var error = Error(repeat, file, side);
                yield return $"{(side == PlaneSide.Inner ? "Inner" : "Outer")} plane: with {permissible.Text("g", 1)} permitted, accept a wheel up to {Quantity.Number(Math.Max(0, permissible.Grams - error), 1)} g shown and reject it above {Quantity.Number(permissible.Grams + error, 1)} g; between, nobody can say [ISO 21940-14 (from memory, not checked against the text)].";
            }
        }

        yield return $"Next: {NextStep(outcome)}";
        foreach (var caution in cautions)
        {
            yield return $"Caution: {caution}";
        }
    }
}
