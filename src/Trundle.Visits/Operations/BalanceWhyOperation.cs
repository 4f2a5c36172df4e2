using System.Text.Json.Nodes;
using Trundle.Engine.Balance.Why;
using Trundle.Engine.Findings;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary><c>balance why</c>: why a wheel does not come to zero, the causes weighed by all displays.</summary>
public static class BalanceWhyOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("balance why", "Why a wheel does not come to zero: the causes weighed, with the next step that parts them.", Run) { TakesFile = true };

    private static Reading<Answer> Run(FileNode body)
    {
        var problems = new List<Problem>();
        var problem = BalanceWhyReader.Read(body, problems);
        if (problem is null || problems.Count > 0)
        {
            return AnswerJson.Wrong(problems);
        }

        var outcome = BalanceWhy.Run(problem);

        // A likely cause is a hint, not a finding: nothing here is a 'no'.
        return Reading<Answer>.Of(new Answer(false, Json(problem, outcome), [.. BalanceWhyWords.Lines(problem, outcome)]));
    }

    private static JsonObject Json(WhyProblem problem, WhyOutcome outcome) => new()
    {
        ["explanations"] = AnswerJson.List(outcome.Explanations.Select(e => (JsonNode?)new JsonObject
        {
            ["cause"] = e.Cause.Word(),
            ["estimate"] = Estimate(e.Estimate),
            ["probability"] = e.Probability,
            ["evidence"] = BalanceWhyWords.Evidence(problem, outcome, e),
            ["nextStep"] = BalanceWhyWords.NextStep(problem, outcome, e),
            ["prior"] = e.Prior,
            ["evidenceLogRatio"] = double.IsFinite(e.EvidenceLogRatio) ? e.EvidenceLogRatio : null,
            ["misfitGrams"] = e.Misfit.Grams,
            ["directionDegrees"] = e.Direction is { } d ? (e.Cause == WhyCause.ReSeated ? WheelAngle.FromDegrees(d.Degrees).Degrees : d.Degrees) : null,
            ["weights"] = AnswerJson.List(e.Subject.Weights.Select(w => (JsonNode?)new JsonObject
            {
                ["afterSpin"] = w.AfterSpin,
                ["plane"] = BalanceWords.Word(w.Weight.Plane),
                ["massGrams"] = w.Weight.Mass.Grams,
                ["angleDegrees"] = w.Weight.Place.Degrees,
            })),
            ["afterSpin"] = e.Subject.AfterSpin,
            ["transducer"] = e.Subject.Transducer,
            ["partedFrom"] = e.PartedFrom.Word(),
        })),
        ["repeatabilityGrams"] = problem.Repeatability.Grams,
        ["displayStepGrams"] = problem.Profile.DisplayStep?.Grams,
        ["displayStepFrom"] = problem.Profile.DisplayStep is null ? null : problem.DisplayStepFrom switch
        {
            DisplayStepFrom.Told => "told",
            DisplayStepFrom.Digits => "digits",
            DisplayStepFrom.Values => "values",
        },
        ["misfitWithoutCauseGrams"] = outcome.MisfitWithoutCause.Grams,
        ["misfitExpectedGrams"] = outcome.MisfitExpected.Grams,
        ["cautions"] = AnswerJson.List(BalanceWhyWords.Cautions(problem, outcome)),
    };

    private static JsonObject? Estimate(WhyEstimate? estimate) => estimate is null ? null : new JsonObject
    {
        ["value"] = estimate.Value.Value, ["unit"] = estimate.Value.Unit, ["low"] = estimate.Low.Value, ["high"] = estimate.High.Value, ["text"] = Text(estimate.Value),
    };

    private static string Text(Amount amount) => amount.Text;
}
