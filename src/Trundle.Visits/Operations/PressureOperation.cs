using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Pressure;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary><c>pressure FILE</c>: cold pressure with every limit, at another temperature and height, warning threshold, seating ceiling.</summary>
public static class PressureOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new(
        "pressure",
        "Cold pressure with every limit, elsewhere, the warning's threshold and the ceiling for seating beads.",
        Run)
    {
        TakesFile = true,
        Options = [CheckAnswer.RulesOption],
    };

    /// <summary>Reads a body and answers.</summary>
    public static Reading<Answer> Run(FileNode body)
    {
        var problems = new List<Problem>();
        var (subject, conditions, oneTyre) = PressureFileReader.Read(body, problems);
        if (problems.Count > 0)
        {
            return AnswerJson.Wrong(problems);
        }

        var plan = PressurePlan.For(subject, conditions);
        // Where nothing is fitted the placard's own size stands in: it too may be too slow for the vehicle.
        var fitment = FitmentCheck.Run(PressurePlan.StandingIn(subject));
        plan = new PressurePlan(
            [.. plan.Positions.Select(p => p with { Cautions = [.. p.Cautions, .. fitment.Needs.Where(n => n.Position == p.Position.ToString() && n.Why.EndsWith("the vehicle's top speed", StringComparison.Ordinal)).Select(n => $"Needed: {n.What}, since {n.Why}.")] })],
            [.. plan.Findings, .. fitment.Findings.Where(f => IsOfSpeed(f) || (f is { Rule: "spare.in-use", Category: > Category.None } && f.Position is not null))]);
        return plan.Positions.Count == 0
            ? Reading<Answer>.Failed(new Problem("fitted", "missing", "There is nothing to answer for: 'fitted' is empty and the vehicle has no axles."))
            : Reading<Answer>.Of(Of(plan, subject.Vehicle, oneTyre));
    }

    /// <summary>True where a tyre is too slow for the vehicle or for its placard, or carries too little at top speed: no pressure makes up for that, so it stands with every pressure.</summary>
    private static bool IsOfSpeed(Finding finding) =>
        finding.Category > Category.None && (finding.Rule == "load.high-speed" || finding.Rule.StartsWith("speed.", StringComparison.Ordinal));

    /// <summary>The answer of a plan.</summary>
    public static Answer Of(PressurePlan plan, Vehicle vehicle, bool oneTyre)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(vehicle);
        var first = plan.Positions[0];
        var body = One(first);
        body["cautions"] = AnswerJson.List(Cautions(first).Distinct(StringComparer.Ordinal));
        if (!oneTyre)
        {
            body["positions"] = AnswerJson.List(plan.Positions.Select(p =>
            {
                var json = new JsonObject { ["position"] = p.Position.ToString() };
                foreach (var (key, value) in One(p).ToList())
                {
                    json[key] = value?.DeepClone();
                }

                json["cautions"] = AnswerJson.List(Cautions(p).Distinct(StringComparer.Ordinal));
                return (JsonNode?)json;
            }));
        }

        body["findings"] = AnswerJson.List(plan.Findings.Select(f => (JsonNode?)AnswerJson.Of(f)));
        body["worst"] = FindingSet.Worst(plan.Findings).Word();
        return new Answer(AnswerJson.IsNo(plan.Findings), body, [.. Lines(plan, vehicle, oneTyre)]);
    }

    private static JsonObject One(PositionPressure p) => new()
    {
        ["cold"] = Of(p.Cold.Pressure),
        ["atTemperature"] = Of(p.AtTemperature),
        ["warning"] = Of(p.Warning.Ruling),
        ["seatingLimit"] = p.Seating is { } seating ? Seating(seating) : null,
        ["case"] = Word(p.Cold.Case),
        ["considered"] = Considered(p.Cold.Considered),
        ["setHere"] = Of(p.SetHere),
        ["warningConsidered"] = Considered(p.Warning.Considered),
        ["loadKilograms"] = p.Load?.Kilograms,
        ["reading"] = p.Reading is { } r ? Of(r) : null,
    };

    private static JsonObject Seating(SeatingCeiling seating)
    {
        var json = Of(seating.Ruling)!;
        json["case"] = seating.Match(_ => "makerValueGiven", _ => "makerValueNotGiven");
        json["considered"] = Considered(seating.Considered);
        return json;
    }

    /// <summary><c>{kilopascals, source, status}</c>, or null.</summary>
    internal static JsonObject? Of(SourcedPressure? pressure) => pressure is null
        ? null
        : new JsonObject { ["kilopascals"] = pressure.Pressure.Kilopascals, ["source"] = pressure.Source.Text, ["status"] = pressure.Source.StatusText };

    private static JsonObject Of(JudgedReading reading) => new()
    {
        ["pressureKilopascals"] = reading.Found.Value.Kilopascals,
        ["hot"] = reading.Found.Hot,
        ["verdict"] = reading.Verdict switch
        {
            ReadingVerdict.NothingToCompare => "nothingToCompare",
            ReadingVerdict.OnTarget => "onTarget",
            ReadingVerdict.Low => "low",
            ReadingVerdict.RunLow => "runLow",
            ReadingVerdict.High => "high",
            ReadingVerdict.HotLeave => "hotLeave",
            ReadingVerdict.HotLow => "hotLow",
        },
        ["coldEquivalentKilopascals"] = reading.ColdEquivalent?.Kilopascals,
        ["advice"] = reading.Advice,
    };

    private static JsonArray Considered(IReadOnlyList<ConsideredLimit> limits) => AnswerJson.List(limits.Select(l => (JsonNode?)new JsonObject
    {
        ["name"] = l.Name,
        ["bound"] = l.Bound switch { LimitBound.Least => "least", LimitBound.Most => "most" },
        ["kilopascals"] = l.Pressure?.Kilopascals,
        ["source"] = l.Source.Text,
        ["status"] = l.Pressure is null ? null : l.Source.StatusText,
        ["ruled"] = l.Ruled,
    }));

    private static string Word(ColdPressureCase value) => value switch
    {
        ColdPressureCase.Set => "set",
        ColdPressureCase.Overloaded => "overloaded",
        ColdPressureCase.LimitsConflict => "limitsConflict",
        ColdPressureCase.NotKnown => "notKnown",
    };

    private static IEnumerable<string> Cautions(PositionPressure p) => p.Cautions.Concat(p.Warning.Cautions).Concat(p.Seating?.Cautions ?? []);

    private static IEnumerable<string> Lines(PressurePlan plan, Vehicle vehicle, bool oneTyre)
    {
        foreach (var p in plan.Positions)
        {
            yield return oneTyre ? "This tyre" : $"{p.Position}  {vehicle.InWords(p.Position)}";
            if (p.Stop is { } stop)
            {
                yield return $"  {stop.Cautions[0]}";
            }

            yield return $"  cold           {Text(p.Cold.Pressure)}";
            yield return $"  elsewhere      {Text(p.AtTemperature)}";
            if (p.SetHere is not null)
            {
                yield return $"  set here       {Text(p.SetHere)}";
            }

            yield return $"  warning below  {Text(p.Warning.Ruling)}";
            yield return $"  seating, most  {(p.Seating is { } seating ? Text(seating.Ruling) : "not told for a rim that is or may be of several pieces")}";
            foreach (var l in p.Cold.Considered)
            {
                yield return string.Create(CultureInfo.InvariantCulture, $"    {(l.Ruled ? "ruled " : "      ")}{(l.Bound == LimitBound.Least ? "at least" : "at most "),-8} {l.Pressure?.Text("kPa", 1) ?? "not given",12}  {l.Name}");
            }

            if (p.Reading is { } reading)
            {
                yield return $"  found          {reading.Found.Value.Text("kPa", 0)}{(reading.Found.Hot ? ", hot" : "")}: {reading.Advice}";
            }
        }

        foreach (var caution in plan.Positions.SelectMany(Cautions).Distinct(StringComparer.Ordinal))
        {
            yield return $"Caution: {caution}";
        }

        foreach (var f in plan.Findings.Where(f => f.Category >= Category.Refer || IsOfSpeed(f)))
        {
            yield return $"{f.Category.Word()}: {f.Position} {f.Action}";
        }
    }

    private static string Text(SourcedPressure? p) => p is null
        ? "not known"
        : $"{p.Pressure.Text("kPa", 0)} ({p.Pressure.Text("psi", 1)}) [{p.Source.ForPeople}]";
}
