using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary>The answer of every operation that judges a whole vehicle: findings, the worst of them, what is needed, and whose rules were applied.</summary>
public static class CheckAnswer
{
    private const string NoRules = "No rules were chosen (us, uk or eu): only the rules of the trade are applied.";

    public static readonly OperationOption RulesOption = new("--rules", "rules", "Whose in-use rules: us, uk or eu; wins over the file's.");

    public static readonly OperationOption ShopRulesOption = new("--shop-rules", "shopRules", "A JSON file with the workshop's own stricter rules and its corrections; wins over the file's.") { IsFile = true, Refuses = WorkshopRules.Refused };

    /// <summary>Reads a visit's file and judges it.</summary>
    /// <param name="body">The file.</param>
    /// <param name="check">What judges it.</param>
    /// <param name="verdicts">What becomes of each part, where the operation tells the state of what is fitted: it then tells how each tread is worn too.</param>
    public static Reading<Answer> Of(FileNode body, Func<FittedVehicle, CheckResult> check, Func<FittedVehicle, CheckResult, IReadOnlyList<PartVerdict>>? verdicts = null)
    {
        var problems = new List<Problem>();
        var file = VisitFileReader.Read(body, problems);
        if (problems.Count == 0 && file.Subject.Fitted.Count == 0)
        {
            problems.Add(new Problem("fitted", "missing", "'fitted' is missing or empty: list each assembly with its position, for example {\"position\": \"1L\", \"tyre\": {\"marking\": \"195/65 R15 91H\"}}."));
        }

        if (problems.Count > 0)
        {
            return AnswerJson.Wrong(problems);
        }

        var result = check(file.Subject);
        var answer = Body(result, file.Subject);
        var parts = verdicts?.Invoke(file.Subject, result) ?? [];
        IReadOnlyList<string> wear = [];
        if (verdicts is not null)
        {
            answer["verdicts"] = VerdictAnswer.Of(parts);
            (answer["wear"], wear) = WearAnswer.Of(file.Subject);
        }

        return Reading<Answer>.Of(new Answer(AnswerJson.IsNo(result.Findings), answer, [.. Lines(result, file.Subject), .. VerdictAnswer.Lines(parts), .. wear]));
    }

    private static JsonObject Body(CheckResult result, FittedVehicle subject)
    {
        var body = AnswerJson.Findings(result.Findings);
        body["rules"] = Word(subject.Rules);
        body["needs"] = AnswerJson.List(result.Needs.Select(n => (JsonNode?)new JsonObject { ["position"] = n.Position, ["what"] = n.What, ["why"] = n.Why }));
        body["notes"] = AnswerJson.List(Notes(subject));
        return body;
    }

    private static IEnumerable<string> Notes(FittedVehicle subject) => new[] { subject.Rules is null ? NoRules : null, OfTheWorkshop(subject) }.OfType<string>().Concat(subject.InForce.Overtaken);

    private static string? OfTheWorkshop(FittedVehicle subject) => ReferenceEquals(subject.InForce, RulesInForce.Carried)
        ? null
        : string.Create(CultureInfo.InvariantCulture, $"With the workshop's own rules: {subject.InForce.Added.Count} added, {subject.InForce.Corrections.Count} put right.");

    private static string? Word(RuleSet? rules) => rules is { } set ? VisitFileReader.RuleWords.Single(w => w.Value == set).Word : null;

    /// <summary>Faults first, gravest first; then in one line each what was found in order; then what is needed.</summary>
    private static IEnumerable<string> Lines(CheckResult result, FittedVehicle subject)
    {
        yield return subject.Rules is null ? NoRules : $"Rules: {Word(subject.Rules)}. Worst: {result.Worst.Word()}.";
        if (OfTheWorkshop(subject) is { } own)
        {
            yield return own;
        }

        foreach (var overtaken in subject.InForce.Overtaken)
        {
            yield return $"Caution: {overtaken}";
        }

        foreach (var line in AnswerJson.Lines([.. result.Faults]))
        {
            yield return line;
        }

        foreach (var group in result.Findings.Where(f => f.Category == Category.None).GroupBy(f => f.Rule))
        {
            yield return $"none      {group.Key}: {string.Join(", ", group.Select(f => f.Position ?? "vehicle").Distinct())}";
        }

        foreach (var group in result.Needs.GroupBy(n => (n.What, n.Why)))
        {
            yield return $"needed    {string.Join(", ", group.Select(n => n.Position ?? "vehicle").Distinct())}: {group.Key.What} ({group.Key.Why})";
        }
    }
}
